/**
 * The slants that subcuts may have: square to the strip, along an edge of a blank where that blank lies with some edge along or
 * square to the strip or at a turn asked for, and the 30, 45 and 60 degrees that rulers carry. A slope is how far a cut moves along the
 * strip for each unit of height; 0 is square.
 */
import { cosAndSin } from '../../src/shape/angle.ts';
import type { Variant } from './variant.ts';

const SAME = 1e-9;

/** Slopes from the least to the greatest. Boxes alone are cut square: then 0 is the only one. */
export function cutSlopes(variants: readonly Variant[], span: number): Float64Array {
  const found: number[] = [];
  for (const v of variants) {
    if (!v.levelled) continue;
    v.hull.forEach((p, i) => {
      const q = v.hull[(i + 1) % v.hull.length]!;
      const rise = q[1] - p[1];
      if (Math.abs(rise) > SAME) found.push((q[0] - p[0]) / rise);
    });
  }
  const slanted = found.some((s) => Math.abs(s) > SAME);
  if (slanted)
    for (const degrees of [30, 45, 60])
      for (const sign of [-1, 1]) {
        const [cosine, sine] = cosAndSin(degrees);
        found.push((sign * cosine) / sine);
      }
  // No cut runs further along the strip than the strip is long.
  const lowest = variants.reduce((least, v) => Math.min(least, v.height), Infinity);
  const usable = found.filter((s) => Math.abs(s) * lowest <= span && Math.abs(s) > SAME);
  const sorted = [0, ...usable].sort((a, b) => a - b);
  return Float64Array.from(sorted.filter((s, i) => i === 0 || s - sorted[i - 1]! > SAME));
}

/** How far a variant reaches to the right (left) of a cut of each slope through its lowest left corner. */
export interface Reach {
  /** right[v * slopes + s] = greatest of x − slope × y over the variant's outline. */
  readonly right: Float64Array;
  readonly left: Float64Array;
}

export function reachOf(variants: readonly Variant[], slopes: Float64Array): Reach {
  const m = slopes.length;
  const right = new Float64Array(variants.length * m).fill(-Infinity);
  const left = new Float64Array(variants.length * m).fill(Infinity);
  variants.forEach((variant, v) => {
    for (let s = 0; s < m; s++) {
      for (const [x, y] of variant.hull) {
        const along = x - slopes[s]! * y;
        if (along > right[v * m + s]!) right[v * m + s] = along;
        if (along < left[v * m + s]!) left[v * m + s] = along;
      }
    }
  });
  return { right, left };
}
