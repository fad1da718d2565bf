/** Foundation piecing: each patch is sewn along one straight line against all before it. This finds that line. */

import type { Unit } from '../quilt/quilt.ts';
import { sayStepFault } from './say-step-fault.ts';
import { stepOnto } from './sewing-step.ts';
import { sewingUnit, usualTolerance } from './sewing-unit.ts';

export interface SewnSide {
  /** Index of the patch's edge that is sewn first; null for the first patch, or where none is to be sewn straight. */
  readonly edge: number | null;
  /** What keeps the patch from being sewn in its place in the order, in words for a person; null when nothing does. */
  readonly fault: string | null;
  /** Whether it meets another patch of its unit along a curve, so that it must be cut to its own outline. */
  readonly curved: boolean;
}

/** For each patch of a paper unit, in sewing order, the edge that is sewn against the patches before it. */
export function sewnSides(unit: Unit): readonly SewnSide[] {
  const outlines = unit.patches.map((patch) => patch.outline);
  const ready = sewingUnit(outlines, usualTolerance(outlines));
  const names = unit.patches.map((patch) => `${unit.id}${patch.number}`);
  const before = unit.patches.map(() => false);
  return unit.patches.map((_, index) => {
    const step = index === 0 ? null : stepOnto(ready, index, before);
    before[index] = true;
    const curved = ready.patches[index]!.shared.some((run) => run.curved);
    if (step === null) {
      return { edge: null, fault: null, curved };
    }
    if ('seam' in step) {
      return { edge: step.seam.edge, fault: null, curved };
    }
    const { fault } = step;
    const edge = fault.kind === 'lines' || fault.kind === 'across' ? fault.edge : null;
    return { edge, fault: `${names[index]} ${sayStepFault(fault, names)}`, curved };
  });
}
