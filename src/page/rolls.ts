/** From a plan to the lengths of cloth that are shown, cloth by cloth. */
import type { Group } from '../cutting/cut-list.ts';
import { type ClothLengthDrawn, unroll } from '../draw/unroll.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { makeCutSteps } from '../plan/make-cut-steps.ts';

/** One cloth as it is planned: its group, and its own lengths among the group's. */
export interface Roll {
  readonly cloth: string;
  readonly group: Group;
  readonly lengths: readonly ClothLengthDrawn[];
  readonly steps: readonly StripSteps[];
}

/** Layouts keep their identity from one tick of the planning to the next, so what is told of them is told once. */
const told = new WeakMap<object, { readonly group: Group; readonly rolls: readonly Roll[] }>();

export function rollsOf(group: Group, answer: LayoutAnswer): readonly Roll[] {
  const known = told.get(answer.layouts);
  if (known?.group === group) {
    return known.rolls;
  }
  const lengths = unroll(group, answer);
  const steps = makeCutSteps(group.job, answer);
  const rolls = group.cloths.map((cloth) => {
    const own = lengths.filter((length) => length.cloth === cloth);
    return { cloth, group, lengths: own, steps };
  });
  told.set(answer.layouts, { group, rolls });
  return rolls;
}
