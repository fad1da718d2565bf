/** Heights of strips that are worth asking about where blanks may be stacked. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Family } from './family.ts';
import { boxesForStacks, gridFor } from './stack-table.ts';

const known = new WeakMap<Family, readonly number[]>();

/**
 * The heights that strips may have and that are asked one by one, ascending. On a ruler, a strip of boxes and stacks is as tall as
 * the tallest of them, rounded up: a sum of heights within demand. Where cuts slant, rows beside the stacks may gain by any height.
 */
export function stackHeights(family: Family, job: LayoutJob): readonly number[] {
  const found = known.get(family) ?? findHeights(family, job);
  known.set(family, found);
  return found;
}

function findHeights(family: Family, job: LayoutJob): readonly number[] {
  const { ruler, stacks, heights, stack, slopes } = family;
  if (!stacks || heights.length === 0) return [];
  if (ruler === null)
    return stacks.heights.filter((h) => h <= (stack ?? Infinity) * (1 + 1e-7) && h >= heights[0]! - 1e-9);
  const first = Math.round(heights[0]! / ruler);
  const last = Math.floor(stacks.top / ruler + 1e-6);
  const all = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * ruler);
  if (slopes.length > 1) return all;
  const isSum = sumsOf(family, job, stacks.top);
  return all.filter((height) => isSum(height, ruler));
}

/** Whether blanks one above the other can need a strip of just this height. */
function sumsOf(family: Family, job: LayoutJob, top: number): (height: number, ruler: number) => boolean {
  const boxes = boxesForStacks(family);
  const { cell, exact } = gridFor(
    boxes.map((v) => v.height),
    top,
    family.ruler,
  );
  if (!exact) return () => true;
  const end = Math.floor(top / cell + 1e-6);
  const reached = new Uint8Array(end + 1);
  reached[0] = 1;
  for (const { blank, height } of boxes) {
    const size = Math.round(height / cell);
    const { demand } = job.blanks[blank]!;
    // By cell, how many of this box the sum there takes at least; none where it was reached without it.
    const taken = new Int32Array(end + 1);
    for (let c = size; c <= end; c++) {
      if (reached[c] || !reached[c - size] || taken[c - size]! >= demand) continue;
      reached[c] = 1;
      taken[c] = taken[c - size]! + 1;
    }
  }
  return (height, ruler) => {
    const to = Math.round(height / cell);
    for (let c = to - Math.round(ruler / cell) + 1; c <= to; c++) if (reached[c]) return true;
    return false;
  };
}
