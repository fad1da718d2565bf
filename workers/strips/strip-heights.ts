/** Heights that strips of a family may usefully have. */
import { type Family, gainsByRaising } from './family.ts';

/**
 * Ascending. Where something slants, every multiple of the ruler from the lowest blank's to where a strip may as well be two:
 * from twice the tallest blank's height on, one strip with the blanks that lie low and one with those that lie high, parted by the
 * same cuts, hold as much. Else those that blanks ask for.
 */
export function usefulHeights(family: Family): readonly number[] {
  const { heights, ruler, stack } = family;
  if (heights.length === 0 || !gainsByRaising(family)) return heights;
  const asked = new Map(heights.map((h) => [Math.round(h / ruler!), h]));
  const first = Math.round(heights[0]! / ruler!);
  const last = 2 * Math.round(heights.at(-1)! / ruler!) - 1;
  return Array.from({ length: last - first + 1 }, (_, i) => asked.get(first + i) ?? (first + i) * ruler!).filter(
    (h) => h <= (stack ?? Infinity) * (1 + 1e-9),
  );
}

/**
 * Heights up to this one in ranges between which no more blanks fit in, highest first: a strip may hold more than any taller one, so
 * whoever asks what one may hold, or a lower one in its place, asks all of them.
 */
export function rangesUpTo({ heights, ruler }: Family, height: number): readonly { low: number; high: number }[] {
  const able = heights.filter((h) => h <= height + 1e-9);
  return able
    .map((low, k) => {
      const high = ruler === null ? low : k + 1 < able.length ? able[k + 1]! - ruler : height;
      return { low, high: high > low + 1e-9 ? high : low };
    })
    .reverse();
}
