/** In which order a unit's patches can be sewn on a foundation, or the proof that there is none. Why it is a proof: take-off.ts. */

import type { Outline } from '../shape/outline.ts';
import { type Blocked, blockedBy } from './blocking-patches.ts';
import { ordersByStart } from './orders-by-start.ts';
import { type Seam, stepOnto } from './sewing-step.ts';
import { type SewingUnit, sewingUnit, usualTolerance } from './sewing-unit.ts';
import { wayToSew } from './take-off.ts';
import { type UnitCut, unitCuts, unitsOfUnit } from './unit-cuts.ts';

export type SewingOrder = Sewable | NotSewable;

export interface Sewable {
  /** Indices of the outlines in sewing order: that whose seams cross the least length of earlier seams, then the drawn order. */
  readonly order: readonly number[];
  /** The seam of each step, as in `order`; null for the first. Within a unit it is pressed toward the patch just added (practice). */
  readonly seams: readonly (Seam | null)[];
  /** Other orders, one for each other patch that she could begin with, the better ones first. */
  readonly others: readonly (readonly number[])[];
}

export interface NotSewable {
  readonly blocked: Blocked;
  /** Where one cut into two units would mend it, the most sensible first; empty where none does. */
  readonly cuts: readonly UnitCut[];
  /** A way to part it in units that can be sewn, by index, cut along seams again and again; null where none was found. */
  readonly units: readonly (readonly number[])[] | null;
}

export const isSewable = (found: SewingOrder): found is Sewable => 'order' in found;

/**
 * @param outlines one unit's patches in drawn order, arcs and all; each must be sound (outlineFault is null)
 * @param tolerance how far apart two edges may lie and still be joined, in the outlines' unit; default by the longest edge
 */
export function findSewingOrder(outlines: readonly Outline[], tolerance = usualTolerance(outlines)): SewingOrder {
  const unit = sewingUnit(outlines, tolerance);
  const { order, proved, first } = wayToSew(unit);
  if (order === null) {
    return { blocked: blockedBy(unit, first, proved), cuts: unitCuts(unit), units: unitsOfUnit(unit) };
  }
  const [best = order, ...others] = ordersByStart(unit, order);
  return { order: best, seams: seamsOf(unit, best), others };
}

/** The seams of an order that can be sewn. */
function seamsOf(unit: SewingUnit, order: readonly number[]): readonly (Seam | null)[] {
  const before = unit.patches.map(() => false);
  return order.map((index) => {
    const step = stepOnto(unit, index, before);
    before[index] = true;
    return 'seam' in step ? step.seam : null;
  });
}
