/**
 * The lowest strip for a handful of slanted blanks, by going through every order of them, every way each may lie, low or high.
 * What cannot fit because two blanks would overlap is passed over; the rest is put to the row programme.
 */
import { spin } from '../../checker/check-lies.ts';
import { type Pair, type Ring, wrapped } from '../../checker/rings.ts';
import { type Reading, shortestRow } from './row-programme.ts';

export interface Kind {
  readonly outline: Ring;
  readonly turns: readonly number[];
  readonly demand: number;
}

/** A blank as it lies: its hull with the box's lowest left corner at the origin. */
export interface Lying {
  readonly kind: number;
  readonly turn: number;
  readonly hull: Ring;
  readonly width: number;
  readonly height: number;
  /** Where the outline's own origin comes to. */
  readonly origin: Pair;
}

/** A row that was found: what lies in it, in order, where and how high. */
export interface FoundRow {
  readonly height: number;
  readonly pieces: readonly { readonly lying: Lying; readonly x: number; readonly y: number }[];
}

export interface StripsAsked {
  readonly width: number;
  readonly ways: readonly Lying[];
  /** Strips may have these heights, ascending. */
  readonly heights: readonly number[];
}

export function waysToLie(kinds: readonly Kind[]): readonly Lying[] {
  return kinds.flatMap(({ outline, turns }, kind) =>
    turns.map((turn): Lying => {
      const turned = outline.map((p) => spin(p, turn));
      const [x0, y0] = [Math.min(...turned.map((p) => p[0])), Math.min(...turned.map((p) => p[1]))];
      const hull = wrapped(turned.map(([x, y]): Pair => [tidy(x - x0), tidy(y - y0)]));
      const [width, height] = [Math.max(...hull.map((p) => p[0])), Math.max(...hull.map((p) => p[1]))];
      return { kind, turn, hull, width, height, origin: [-x0, -y0] };
    }),
  );
}

const tidy = (v: number): number => Math.round(v * 1e12) / 1e12;

/** The lowest of the strips that holds so many of each kind, with the row that shows it; null when none does. */
export function lowestStrip(
  asked: StripsAsked & { readonly reading: Reading },
  counts: readonly number[],
): FoundRow | null {
  for (const height of asked.heights) {
    const found = rowAt(asked, counts, height);
    if (found) return found;
  }
  return null;
}

/** The hull as it sits, y from the strip's near edge. */
export const raisedRing = ({ hull }: Lying, by: number): Ring => hull.map(([x, y]): Pair => [x, y + by]);

interface Sits {
  readonly lying: Lying;
  readonly y: number;
  readonly ring: Ring;
}

function rowAt(
  { width, reading, ways }: StripsAsked & { readonly reading: Reading },
  counts: readonly number[],
  height: number,
): FoundRow | null {
  const sits = ways
    .filter((lying) => counts[lying.kind]! > 0 && lying.height <= height + 1e-9)
    .flatMap((lying): Sits[] => {
      const high = height - lying.height;
      return (high > 1e-9 ? [0, high] : [0]).map((y) => ({ lying, y, ring: raisedRing(lying, y) }));
    });
  const steps = sits.map((a) => sits.map((b) => leastStep(a.ring, b.ring)));
  const left = [...counts];
  const search = (chosen: readonly number[], at: readonly number[]): FoundRow | null => {
    if (left.every((n) => n === 0)) {
      const row = chosen.map((s) => sits[s]!);
      const xs = shortestRow({ rings: row.map((each) => each.ring), height, width, reading });
      return xs && { height, pieces: row.map(({ lying, y }, i) => ({ lying, x: xs[i]!, y })) };
    }
    for (const [s, { lying }] of sits.entries()) {
      if (left[lying.kind] === 0) continue;
      // What lies beyond a cut lies to the right of all before it, wherever they are side by side.
      const x = chosen.reduce((most, other, i) => Math.max(most, at[i]! + steps[other]![s]!), 0);
      if (x + lying.width > width * (1 + 1e-9)) continue;
      left[lying.kind]!--;
      const found = search([...chosen, s], [...at, x]);
      left[lying.kind]!++;
      if (found) return found;
    }
    return null;
  };
  return search([], []);
}

/** How far right of a convex figure another must at least stand so that the two do not overlap. */
function leastStep(a: Ring, b: Ring): number {
  const low = Math.max(Math.min(...a.map((p) => p[1])), Math.min(...b.map((p) => p[1])));
  const high = Math.min(Math.max(...a.map((p) => p[1])), Math.max(...b.map((p) => p[1])));
  if (high <= low) return -Infinity;
  // Right side less left side is straight between the heights of corners, so it is most at one of those or at an end.
  const levels = [low, high, ...[...a, ...b].map((p) => p[1]).filter((y) => y > low && y < high)];
  return Math.max(...levels.map((y) => across(a, y)[1] - across(b, y)[0]));
}

/** From where to where a convex figure reaches at this height. */
function across(ring: Ring, y: number): Pair {
  const xs = ring.flatMap(([x0, y0], i) => {
    const [x1, y1] = ring[(i + 1) % ring.length]!;
    if (Math.abs(y0 - y) < 1e-12) return [x0];
    if (y < Math.min(y0, y1) || y > Math.max(y0, y1) || Math.abs(y1 - y0) < 1e-12) return [];
    return [x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)];
  });
  return [Math.min(...xs), Math.max(...xs)];
}
