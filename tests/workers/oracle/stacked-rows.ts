/**
 * The lowest strip for a handful of slanted blanks in three stages: every way to share them out among segments, each of which is the
 * shortest row of listed cuts, or the narrowest stack, whichever takes less of the strip.
 */
import { vectors } from '../numbers.ts';
import type { Lowest } from './least-length.ts';
import { shortestListed } from './listed-rows.ts';
import type { FoundRow, Lying, StripsAsked } from './slanted-rows.ts';

interface Laid {
  readonly width: number;
  readonly pieces: FoundRow['pieces'];
}

/** By counts, the lowest strip that holds them; the tables of a height are made when it is first asked about. */
export function segmentsFor(
  { ways, heights, width }: StripsAsked,
  slants: readonly number[],
  demand: readonly number[],
): Lowest<FoundRow> {
  const tables = new Map<number, ReadonlyMap<string, Laid | null>>();
  return (counts) => {
    for (const height of heights) {
      const table = tables.get(height) ?? leastWidths(ways, slants, demand, height, width);
      tables.set(height, table);
      const laid = table.get(counts.join());
      if (laid && laid.width <= width * (1 + 1e-9)) return { height, pieces: laid.pieces };
    }
    return null;
  };
}

function leastWidths(
  ways: readonly Lying[],
  slants: readonly number[],
  demand: readonly number[],
  height: number,
  width: number,
): ReadonlyMap<string, Laid | null> {
  const segments = new Map<string, Laid | null>();
  const least = new Map<string, Laid | null>([[demand.map(() => 0).join(), { width: 0, pieces: [] }]]);
  for (const counts of vectors(demand)) {
    const first = counts.findIndex((n) => n > 0);
    if (first < 0) continue;
    segments.set(counts.join(), segment(ways, slants, counts, height, width));
    let best: Laid | null = null;
    for (const held of vectors(counts)) {
      const own = held[first] === 0 ? null : segments.get(held.join());
      const rest = least.get(counts.map((n, i) => n - held[i]!).join());
      if (!own || !rest || (best && own.width + rest.width >= best.width - 1e-12)) continue;
      const beyond = own.pieces.map((piece) => ({ ...piece, x: piece.x + rest.width }));
      best = { width: own.width + rest.width, pieces: [...rest.pieces, ...beyond] };
    }
    least.set(counts.join(), best);
  }
  return least;
}

function segment(
  ways: readonly Lying[],
  slants: readonly number[],
  counts: readonly number[],
  height: number,
  width: number,
): Laid | null {
  const row = shortestListed(ways, slants, counts, height, width);
  const stack = narrowestStack(
    ways,
    counts.flatMap((n, kind) => new Array<number>(n).fill(kind)),
    0,
    height,
  );
  if (!row) return stack;
  return stack && stack.width < row.near ? stack : { width: row.near, pieces: row.pieces };
}

function narrowestStack(ways: readonly Lying[], kinds: readonly number[], from: number, height: number): Laid | null {
  const [kind, ...rest] = kinds;
  if (kind === undefined) return { width: 0, pieces: [] };
  let best: Laid | null = null;
  for (const lying of ways) {
    if (lying.kind !== kind || from + lying.height > height + 1e-9) continue;
    const above = narrowestStack(ways, rest, from + lying.height, height);
    if (!above) continue;
    const width = Math.max(lying.width, above.width);
    if (!best || width < best.width) best = { width, pieces: [{ lying, x: 0, y: from }, ...above.pieces] };
  }
  return best;
}
