/** How close two blanks may lie in a row. */
import type { Chain, Variant } from './variant.ts';

/**
 * The least distance by which `b` must lie further along than `a` (leftmost point to leftmost point) when b sits `rise`
 * higher in the strip than a, so that they touch at most. −Infinity when they share no height.
 */
export function advance(a: Variant, b: Variant, rise: number): number {
  return chainAdvance(a.right, b.left, rise);
}

/** The same for a right side and a left side: the greatest overlap over the heights that both have. */
export function chainAdvance(right: Chain, left: Chain, rise: number): number {
  const ry = right.y, rx = right.x, ly = left.y, lx = left.x;
  const low = Math.max(ry[0]!, ly[0]! + rise);
  const high = Math.min(ry[ry.length - 1]!, ly[ly.length - 1]! + rise);
  if (high - low <= 1e-9) return -Infinity;
  let best = Math.max(reach(ry, rx, low) - reach(ly, lx, low - rise), reach(ry, rx, high) - reach(ly, lx, high - rise));
  for (let i = 0; i < ry.length; i++) {
    const y = ry[i]!;
    if (y > low && y < high) best = Math.max(best, rx[i]! - reach(ly, lx, y - rise));
  }
  for (let i = 0; i < ly.length; i++) {
    const y = ly[i]! + rise;
    if (y > low && y < high) best = Math.max(best, reach(ry, rx, y) - lx[i]!);
  }
  return best;
}

function reach(ys: Float64Array, xs: Float64Array, y: number): number {
  const last = ys.length - 1;
  if (y <= ys[0]!) return xs[0]!;
  if (y >= ys[last]!) return xs[last]!;
  let i = 1;
  while (ys[i]! < y) i++;
  const t = (y - ys[i - 1]!) / (ys[i]! - ys[i - 1]!);
  return xs[i - 1]! + t * (xs[i]! - xs[i - 1]!);
}
