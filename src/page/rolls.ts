/** From a plan to the lengths of cloth that are shown, cloth by cloth. */
import type { Group } from '../cutting/cut-list.ts';
import { type ClothLengthDrawn, unroll } from '../draw/unroll.ts';
import { type BagsOfStrip, bagStrips } from '../plan/bagged-strips.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { type LookAlike, lookAlikes } from '../plan/look-alikes.ts';
import { makeCutSteps } from '../plan/make-cut-steps.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import type { Plan } from './plan-state.ts';

/** One cloth as it is planned: its group, and its own lengths among the group's. */
export interface Roll {
  readonly cloth: string;
  readonly group: Group;
  readonly lengths: readonly ClothLengthDrawn[];
  readonly steps: readonly StripSteps[];
  /** Blanks of the cloth that are easily taken for each other. */
  readonly alike: readonly LookAlike[];
}

/** Layouts keep their identity from one tick of the planning to the next, so what is told of them is told once. */
const told = new WeakMap<object, { readonly group: Group; readonly rolls: readonly Roll[] }>();

/** The rolls of a group as they are cut, in the order of cutting. @param unit the quilt's */
export function rollsOf(group: Group, answer: LayoutAnswer, unit: LengthUnit): readonly Roll[] {
  const known = told.get(answer.layouts);
  if (known?.group === group) {
    return known.rolls;
  }
  const inOrder = inCuttingOrder(group, answer);
  const lengths = unroll(group, inOrder);
  const steps = makeCutSteps(group.job, inOrder);
  const alike = lookAlikes(group, inOrder, unit);
  const rolls = group.cloths.map((cloth) => {
    const own = lengths.filter((length) => length.cloth === cloth);
    return { cloth, group, lengths: own, steps, alike: alike.filter((each) => each.cloth === cloth) };
  });
  told.set(answer.layouts, { group, rolls });
  return rolls;
}

/** The bags of a whole plan are filled when they are first asked for: tables stay folded for long. */
const filled = new WeakMap<Plan, BagsOfStrip>();

export function bagsOfPlan(plan: Plan): BagsOfStrip {
  const known = filled.get(plan);
  if (known !== undefined) {
    return known;
  }
  const { quilt, cutList, answers } = plan;
  const inOrder = cutList.groups.map((group, i) => inCuttingOrder(group, answers[i]!));
  const steps = cutList.groups.map((group, i) => rollsOf(group, answers[i]!, quilt.unit)[0]?.steps ?? []);
  const bags = bagStrips(quilt, cutList, inOrder, steps);
  filled.set(plan, bags);
  return bags;
}
