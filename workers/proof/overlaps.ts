/** Finds blanks that lie on each other. */
import type { Polygon } from '../../src/shape/point.ts';
import type { Box } from './box.ts';
import { gap } from './convex.ts';
import type { Fault } from './fault.ts';

/** Something that takes up cloth: convex parts, anticlockwise, inside their box. */
export interface Solid {
  readonly where: string;
  readonly box: Box;
  readonly parts: readonly Polygon[];
}

/** A layout gone wrong altogether would list every pair of thousands; this many tell enough. */
const ENOUGH = 100;

/**
 * Every pair of solids that overlap by more than `touch`. Sweeps along the longer side of what they cover and compares
 * only those whose boxes meet, so ten thousand blanks in rows take a moment.
 */
export function overlapFaults(solids: readonly Solid[], touch: number): readonly Fault[] {
  const faults: Fault[] = [];
  const spread = (low: (box: Box) => number, high: (box: Box) => number) =>
    solids.reduce((most, solid) => Math.max(most, high(solid.box)), -Infinity) -
    solids.reduce((least, solid) => Math.min(least, low(solid.box)), Infinity);
  const upright =
    spread(
      (box) => box.bottom,
      (box) => box.top,
    ) >
    spread(
      (box) => box.left,
      (box) => box.right,
    );
  const start = (solid: Solid) => (upright ? solid.box.bottom : solid.box.left);
  const end = (solid: Solid) => (upright ? solid.box.top : solid.box.right);
  const sorted = [...solids].sort((a, b) => start(a) - start(b));
  let open: Solid[] = [];
  for (const solid of sorted) {
    open = open.filter((before) => end(before) > start(solid) + touch);
    for (const before of open) {
      if (!boxesOverlap(before.box, solid.box, touch)) continue;
      const depth = depthOf(before, solid);
      if (depth <= touch) continue;
      faults.push({ what: 'overlap', where: before.where, howMuch: `${depth} deep with ${solid.where}` });
      if (faults.length >= ENOUGH) return faults;
    }
    open.push(solid);
  }
  return faults;
}

function boxesOverlap(a: Box, b: Box, touch: number): boolean {
  return (
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > touch &&
    Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom) > touch
  );
}

function depthOf(a: Solid, b: Solid): number {
  let deepest = 0;
  for (const p of a.parts) for (const q of b.parts) deepest = Math.max(deepest, -gap(p, q));
  return deepest;
}
