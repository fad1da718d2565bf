/** What is shown of each cloth: of the plan wanted now where there is one, else of the last whole plan, marked as former. */
import type { Problem } from '../cutting/cut-list.ts';
import type { Cloth } from '../quilt/quilt.ts';
import type { GroupState, Plan, PlannerState } from './plan-state.ts';
import { rollWords } from './progress-words.ts';
import { type Roll, rollsOf } from './rolls.ts';

export interface ShownRoll {
  /** As it is wanted now, for its fields. */
  readonly cloth: Cloth;
  readonly roll: Roll | null;
  readonly problems: readonly Problem[];
  readonly status: string;
  readonly former: boolean;
  /** The whole plan that the roll is of; null while its group is ahead of the plan. */
  readonly plan: Plan | null;
  /** Nothing is shown of it yet, but something will be. */
  readonly coming: boolean;
}

export interface ShownRolls {
  /** The cloths that the scheme uses, in the quilt's order. */
  readonly rolls: readonly ShownRoll[];
  /** The cloths that it does not use. */
  readonly others: readonly Cloth[];
  /** The rolls that have something on them, for what is lit. */
  readonly lit: readonly Roll[];
  /** Problems of cloths that the scheme does not use. */
  readonly otherProblems: readonly Problem[];
  /** Problems that belong to no role and to no cloth. */
  readonly homeless: readonly Problem[];
}

/** One and the same empty list, so that a roll without problems is not rendered anew for nothing. */
const NO_PROBLEMS: readonly Problem[] = [];

export function shownRolls(state: PlannerState): ShownRolls {
  const { quilt, cutList, plan, current } = state;
  if (quilt === null) {
    return { rolls: [], others: [], lit: [], otherProblems: NO_PROBLEMS, homeless: NO_PROBLEMS };
  }
  const problems = cutList?.problems ?? NO_PROBLEMS;
  const former = plan === null || current ? [] : rollsOfPlan(plan);
  const scheme = quilt.schemes.find((one) => one.id === quilt.scheme);
  const inScheme = new Set(Object.values(scheme?.cloths ?? {}).flat());
  const [used, others] = [true, false].map((is) => quilt.cloths.filter((cloth) => inScheme.has(cloth.id) === is));
  const rolls = used!.map((cloth): ShownRoll => {
    const group = state.groups.find((one) => one.group.cloths.includes(cloth.id));
    const roll = group === undefined ? null : rollOf(state, group, cloth.id);
    const old = former.find((one) => one.cloth === cloth.id) ?? null;
    const own = problems.filter((problem) => problem.cloth === cloth.id);
    return {
      cloth,
      roll: roll ?? old,
      problems: own.length === 0 ? NO_PROBLEMS : own,
      status: group === undefined ? '' : rollWords(group, proofOf(state, cloth.id)),
      former: roll === null && old !== null,
      plan: roll === null || isOfPlan(plan, group) ? plan : null,
      coming: roll === null && old === null && state.busy,
    };
  });
  const ids = new Set(quilt.cloths.map(({ id }) => id));
  return {
    rolls,
    others: others!,
    lit: rolls.flatMap(({ roll }) => (roll === null ? [] : [roll])),
    otherProblems: problems.filter(({ cloth }) => others!.some(({ id }) => id === cloth)),
    homeless: problems.filter(({ cloth, role }) => (cloth === undefined ? role === undefined : !ids.has(cloth))),
  };
}

/**
 * What the group's best answer so far cuts from a cloth. Before there is any whole plan nothing is shown, so that the table
 * is laid once and not roll by roll.
 */
function rollOf(state: PlannerState, { group, answer }: GroupState, cloth: string): Roll | null {
  if (answer === null || (state.plan === null && state.busy)) {
    return null;
  }
  return rollsOf(group, answer, state.quilt?.unit ?? 'in').find((one) => one.cloth === cloth) ?? null;
}

/** Whether what is shown of a group is what the plan has. */
function isOfPlan(plan: Plan | null, state: GroupState | undefined): boolean {
  if (plan === null || state === undefined) {
    return false;
  }
  const index = plan.cutList.groups.indexOf(state.group);
  return index >= 0 && plan.answers[index]?.layouts === state.answer?.layouts;
}

function proofOf({ plan, current }: PlannerState, cloth: string) {
  return (current ? plan?.tally.cloths.find((one) => one.cloth === cloth)?.proof.state : undefined) ?? null;
}

const rollsOfPlan = (plan: Plan): readonly Roll[] =>
  plan.cutList.groups.flatMap((group, index) => rollsOf(group, plan.answers[index]!, plan.quilt.unit));
