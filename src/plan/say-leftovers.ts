/** What goes back on the shelf, in words. */
import { formatNumber } from '../quilt/format-length.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import type { Leftover } from './leftovers.ts';

/**
 * "40 × 13 1/2 in; 3 of 9 × 7 in": width across the cloth by length along it, rounded down, those of a size together.
 * @param scale from the leftovers' unit to the one written
 */
export function sayLeftovers(leftovers: readonly Leftover[], unit: LengthUnit, scale = 1): string {
  const parts = unit === 'in' ? 8 : 10;
  const down = (value: number) =>
    formatNumber(Math.floor(value * scale * parts + 1e-6) / parts, unit, { denominator: 8, decimals: 1 });
  const counts = new Map<string, number>();
  for (const { width, length, count } of leftovers) {
    const size = `${down(width)} × ${down(length)} ${unit}`;
    counts.set(size, (counts.get(size) ?? 0) + count);
  }
  return [...counts].map(([size, count]) => (count === 1 ? size : `${count} of ${size}`)).join('; ');
}
