/**
 * One unit from all its copies: each corner is the mean of where the copies have it. Neighbours share their corners, so what a
 * drawing program has rounded evens out, and the copies then close the round exactly.
 */
import { isArc, moveOutline } from '../shape/outline.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { add, distance, type Point, scale, turn } from '../shape/point.ts';
import { type FoundPatch, type Motion, movePlace } from './found-patch.ts';

export interface UnitCopy {
  readonly unit: readonly FoundPatch[];
  /** Brings the unit as drawn first onto this copy. */
  readonly motion: Motion;
}

/** @param within how far a copy's corner may lie from the first one's, once moved back */
export function meanPatches(
  patches: readonly FoundPatch[],
  copies: readonly UnitCopy[],
  within: number,
): readonly FoundPatch[] {
  return patches.map((patch) => {
    const corners = patch.outline.filter((entry) => !isArc(entry)) as Point[];
    const sums = corners.map(() => ({ sum: [0, 0] as Point, count: 0 }));
    for (const { unit, motion } of copies) {
      const middle = movePlace(patch.middle, motion);
      const twin = unit.reduce((best, each) =>
        distance(each.middle, middle) < distance(best.middle, middle) ? each : best,
      );
      for (const corner of twin.outline) {
        if (isArc(corner)) continue;
        const back = movedBack(corner, motion);
        const index = nearest(corners, back);
        if (distance(corners[index]!, back) > within) continue;
        sums[index] = { sum: add(sums[index]!.sum, back), count: sums[index]!.count + 1 };
      }
    }
    let index = 0;
    const outline = moveOutline(patch.outline, (corner) => {
      const { sum, count } = sums[index++]!;
      return count === 0 ? corner : scale(sum, 1 / count);
    });
    return { ...patch, outline, middle: outlineCentroid(outline) };
  });
}

function movedBack(place: Point, { mirrored, degrees }: Motion): Point {
  const [x, y] = turn(place, -degrees);
  return [mirrored ? -x : x, y];
}

const nearest = (corners: readonly Point[], place: Point): number =>
  corners.reduce((best, corner, i) => (distance(corner, place) < distance(corners[best]!, place) ? i : best), 0);
