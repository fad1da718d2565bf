/**
 * The lowest strip for a handful of slanted blanks when subcuts have slants from a list: square; along an edge of a blank at one of
 * its turns; and, where any edge slants, the 30, 45 and 60 degrees of rulers. Cuts run from the strip's near edge to its far one and
 * do not cross. Cut by cut, every blank that may come next at every slant is laid as far left as the cut before it lets it.
 */
import { vectors } from '../numbers.ts';
import { type FoundRow, type Lying, raisedRing, type StripsAsked } from './slanted-rows.ts';

/** Slants as how far a cut moves along the strip for each unit of height. */
export function listedSlants(ways: readonly Lying[]): readonly number[] {
  const edges = ways.flatMap(({ hull }) =>
    hull.flatMap(([x0, y0], i) => {
      const [x1, y1] = hull[(i + 1) % hull.length]!;
      return Math.abs(y1 - y0) < 1e-9 ? [] : [(x1 - x0) / (y1 - y0)];
    }),
  );
  if (edges.every((slant) => Math.abs(slant) < 1e-9)) return [0];
  const rulers = [30, 45, 60].flatMap((degrees) => [1, -1].map((side) => side / Math.tan((degrees / 180) * Math.PI)));
  return [0, ...edges.filter((slant) => Math.abs(slant) > 1e-9), ...rulers];
}

/** A row whose last cut has this slant, with the place where that cut meets the near edge. */
interface State {
  readonly near: number;
  readonly pieces: FoundRow['pieces'];
}

/** The lowest strip that holds so many of each kind with cuts of these slants; null when none does. */
export function lowestListed(
  { ways, heights, width }: StripsAsked,
  slants: readonly number[],
  counts: readonly number[],
): FoundRow | null {
  for (const height of heights) {
    const row = shortestListed(ways, slants, counts, height, width);
    if (row) return { height, pieces: row.pieces };
  }
  return null;
}

/** The shortest row of these in a strip of this height: where its last cut, which is square, stands; null when none fits. */
export function shortestListed(
  ways: readonly Lying[],
  slants: readonly number[],
  counts: readonly number[],
  height: number,
  width: number,
): State | null {
  const fits = width * (1 + 1e-9);
  // By what the row holds, then by the slant of its last cut: the one whose cut stands furthest left, since cuts of one slant leave
  // all the same room but for where they stand.
  const states = new Map<string, Map<number, State>>();
  states.set(counts.map(() => 0).join(), new Map([[0, { near: 0, pieces: [] }]]));
  for (const held of vectors(counts)) {
    for (const [slant, { near, pieces }] of states.get(held.join()) ?? []) {
      for (const lying of ways) {
        const more = held.map((n, kind) => (kind === lying.kind ? n + 1 : n));
        if (more[lying.kind]! > counts[lying.kind]! || lying.height > height + 1e-9) continue;
        const key = more.join();
        const next = states.get(key) ?? new Map<number, State>();
        states.set(key, next);
        for (const y of new Set([0, height - lying.height])) {
          const ring = raisedRing(lying, y);
          const x = Math.max(...ring.map(([u, v]) => near + slant * v - u));
          for (const after of slants) {
            const past = Math.max(...ring.map(([u, v]) => x + u - after * v));
            const cut = Math.max(past, near, near + (slant - after) * height);
            if (Math.max(cut, cut + after * height) > fits || cut >= (next.get(after)?.near ?? Infinity) - 1e-12)
              continue;
            next.set(after, { near: cut, pieces: [...pieces, { lying, x, y }] });
          }
        }
      }
    }
  }
  // A row that fits ends before a square cut at the strip's end.
  return states.get(counts.join())?.get(0) ?? null;
}
