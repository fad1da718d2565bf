/**
 * The least length of strips that holds a demand, by trying every way to share the blanks out among strips. Knows nothing of
 * how blanks lie in a strip: that is what `lowest` says.
 */
import { vectors } from '../numbers.ts';

export interface Strips<Row> {
  readonly length: number;
  readonly rows: readonly Row[];
}

/** @returns the lowest strip that holds so many of each kind, null when none does */
export type Lowest<Row> = (counts: readonly number[]) => Row | null;

/** By counts joined with commas: the strips of least total height for every part of the demand, the whole of it last. */
export function leastLengths<Row extends { readonly height: number }>(
  demand: readonly number[],
  lowest: Lowest<Row>,
): ReadonlyMap<string, Strips<Row>> {
  const strips = new Map<string, Row | null>();
  const least = new Map<string, Strips<Row>>([[demand.map(() => 0).join(), { length: 0, rows: [] }]]);
  for (const counts of vectors(demand)) {
    // Some strip holds one of the first kind that is wanted at all; it may as well be the strip named next.
    const first = counts.findIndex((n) => n > 0);
    if (first < 0) continue;
    strips.set(counts.join(), lowest(counts));
    let best: Strips<Row> = { length: Infinity, rows: [] };
    for (const held of vectors(counts)) {
      const row = held[first] === 0 ? null : strips.get(held.join())!;
      if (!row) continue;
      const rest = least.get(counts.map((n, i) => n - held[i]!).join())!;
      if (row.height + rest.length < best.length)
        best = { length: row.height + rest.length, rows: [row, ...rest.rows] };
    }
    least.set(counts.join(), best);
  }
  return least;
}

/** What a length costs: by length, or in whole steps. */
export const priceOf = (length: number, step?: number): number =>
  step === undefined || length === Infinity ? length : Math.ceil(length / step - 1e-6) * step;
