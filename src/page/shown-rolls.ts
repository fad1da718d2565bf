/** What is shown of each cloth: of the plan wanted now where there is one, else of the last whole plan, marked as former. */
import type { Problem } from '../cutting/cut-list.ts';
import type { Cloth } from '../quilt/quilt.ts';
import type { Plan, PlannerState } from './plan-state.ts';
import { rollWords } from './progress-words.ts';
import { type Roll, rollsOf } from './rolls.ts';

export interface ShownRoll {
  /** As it is wanted now, for its fields. */
  readonly cloth: Cloth;
  readonly roll: Roll | null;
  readonly problems: readonly Problem[];
  readonly status: string;
  readonly former: boolean;
}

export interface ShownRolls {
  readonly rolls: readonly ShownRoll[];
  /** The rolls that have something on them, for what is lit. */
  readonly lit: readonly Roll[];
  /** Problems that belong to no role and to none of the cloths shown. */
  readonly homeless: readonly Problem[];
}

/** One and the same empty list, so that a roll without problems is not rendered anew for nothing. */
const NO_PROBLEMS: readonly Problem[] = [];

export function shownRolls(state: PlannerState): ShownRolls {
  const { quilt, cutList, plan, current } = state;
  const problems = cutList?.problems ?? [];
  const former = plan === null || current ? [] : rollsOfPlan(plan);
  const proofs = new Map(current ? plan?.tally.cloths.map(({ cloth, proof }) => [cloth, proof.state] as const) : []);
  const wanted = state.groups.flatMap((group) => {
    const own = group.answer === null ? [] : rollsOf(group.group, group.answer);
    return group.group.cloths.map((id) => {
      const roll = own.find((one) => one.cloth === id) ?? null;
      const old = former.find((one) => one.cloth === id) ?? null;
      return {
        id,
        roll: roll ?? old,
        status: rollWords(group, proofs.get(id) ?? null),
        former: roll === null && old !== null,
      };
    });
  });
  // A quilt that cannot be planned at all leaves the last plan on the table.
  const listed = cutList === null ? former.map((roll) => ({ id: roll.cloth, roll, status: '', former: true })) : wanted;
  const rolls = listed.flatMap(({ id, roll, status, former }): readonly ShownRoll[] => {
    const cloth = quilt?.cloths.find((one) => one.id === id) ?? plan?.quilt.cloths.find((one) => one.id === id);
    if (cloth === undefined) {
      return [];
    }
    const own = problems.filter((problem) => problem.cloth === id);
    return [{ cloth, roll, problems: own.length === 0 ? NO_PROBLEMS : own, status, former }];
  });
  const shownIds = new Set(rolls.map((roll) => roll.cloth.id));
  return {
    rolls,
    lit: rolls.flatMap(({ roll }) => (roll === null ? [] : [roll])),
    homeless: problems.filter((problem) =>
      problem.cloth === undefined ? problem.role === undefined : !shownIds.has(problem.cloth),
    ),
  };
}

const rollsOfPlan = (plan: Plan): readonly Roll[] =>
  plan.cutList.groups.flatMap((group, index) => rollsOf(group, plan.answers[index]!));
