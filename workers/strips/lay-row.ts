/**
 * A row laid out for real: every blank parted from all that come after it by one straight cut, not only from its neighbour.
 * Built from the far end, each blank pushed against the hull of everything after it; two convex outlines that touch and
 * share a height have a cut between them that is not parallel to the strip.
 */
import { chainAdvance } from './advance.ts';
import type { RowState } from './row-graph.ts';
import { convexHull, makeChains, type Variant } from './variant.ts';

export interface LaidBlank {
  readonly variant: Variant;
  /** Leftmost point from the strip's start, lowest point from its near edge. */
  readonly x: number;
  readonly y: number;
}

export interface LaidRow {
  readonly blanks: readonly LaidBlank[];
  readonly length: number;
}

/** Lays the states out in their order, as tight as straight cuts allow, from 0 on. */
export function layRow(states: readonly Pick<RowState, 'variant' | 'rise'>[]): LaidRow {
  const xs: number[] = [];
  let hull: readonly (readonly [number, number])[] = [];
  for (let i = states.length - 1; i >= 0; i--) {
    const { variant, rise } = states[i]!;
    const own = variant.hull.map(([x, y]) => [x, y + rise] as const);
    let push = 0;
    if (hull.length > 0) {
      const [, left] = makeChains(hull);
      const d = chainAdvance(variant.right, left, -rise);
      push = d === -Infinity ? variant.width - Math.min(...hull.map((p) => p[0])) : d;
    }
    hull = convexHull([...own, ...hull.map(([x, y]) => [x + push, y] as const)]);
    for (let j = 0; j < xs.length; j++) xs[j] = xs[j]! + push;
    xs.unshift(0);
  }
  const start = Math.min(0, ...xs);
  const blanks = states.map(({ variant, rise }, i) => ({ variant, x: xs[i]! - start, y: rise }));
  return { blanks, length: Math.max(0, ...blanks.map((b) => b.x + b.variant.width)) };
}

/** The shorter of the row as asked and the row with everything lying low; null when neither is as short as `span`. */
export function fitRow(states: readonly RowState[], span: number): LaidRow | null {
  const fits = (row: LaidRow) => row.length <= span * (1 + 1e-9) + 1e-9;
  const asked = layRow(states);
  if (fits(asked)) return asked;
  const low = layRow(states.map((s) => ({ ...s, rise: 0 })));
  return fits(low) ? low : null;
}
