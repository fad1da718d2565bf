/**
 * Rows of a strip as paths: a state is a variant lying low or high in the strip, an edge carries how far the next one
 * must lie beyond it. Only neighbours are looked at, which relaxes the row, so what is proved about paths holds for rows.
 *
 * Each blank of a row lies along one edge of its strip. Lying in between gains nothing: the row's length is a sum of
 * concave functions of the heights at which its blanks lie, so its least is found where each lies as low or as high as it
 * can. Neighbours so low that one could lie over the other lie along the same edge, or a square cut parts them: anything else
 * would be a stack, and stacks are for a third stage.
 */
import { advance } from './advance.ts';
import { BANDS, bandWidths } from './measure-row.ts';
import type { Variant } from './variant.ts';

export interface RowGraph {
  readonly height: number;
  readonly span: number;
  readonly states: readonly RowState[];
  /** advances[u * n + v], never negative: from u's place to v's. */
  readonly advances: Float64Array;
  /** From the strip's start to the place of a first blank; from the place of a last one to the end of the blank. */
  readonly head: Float64Array;
  readonly tail: Float64Array;
  /** Every blank takes its own width whatever its neighbours: the row is a knapsack. */
  readonly additive: boolean;
  /** Mean widths by band of height, and how the measures are weighted at the moment; see measure-row.ts. */
  readonly bands: Float64Array;
  readonly weights: Float64Array;
  readonly tuned: { done: boolean };
  /** furthest[u * n + v]: worked out when first asked for (price-row.ts). */
  readonly furthest: Float64Array;
  /** False when some round of blanks leads nowhere forward, so that paths prove nothing. */
  readonly sound: boolean;
}

export interface RowState {
  readonly variant: Variant;
  /** How far its lowest point lies above the strip's near edge. */
  readonly rise: number;
  readonly high: boolean;
}

/**
 * @param variants all of which fit into the strip
 * @param height of the strip
 * @param span the strip's length
 * @param orTaller the graph then speaks for strips of this height and of every greater one together: no row of these
 * variants in any of them is shorter than its paths
 */
export function makeRowGraph(variants: readonly Variant[], height: number, span: number, orTaller = false): RowGraph {
  const straight = variants.every(isBox);
  const states: RowState[] = variants.flatMap((variant) => {
    const free = height - variant.height;
    return (free > 1e-9 || orTaller) && !straight ? [{ variant, rise: 0, high: false }, { variant, rise: free, high: true }] : [{ variant, rise: 0, high: false }];
  });
  const n = states.length;
  const advances = new Float64Array(n * n);
  let additive = true;
  for (let u = 0; u < n; u++) {
    const a = states[u]!;
    for (let v = 0; v < n; v++) {
      const b = states[v]!;
      const couldStack = a.variant.height + b.variant.height <= height + 1e-6;
      let d = a.variant.width;
      if (!straight && !(couldStack && a.high !== b.high)) d = advance(a.variant, b.variant, b.rise - a.rise);
      if (orTaller && a.high !== b.high && !couldStack) d = Math.min(d, a.variant.width, advanceAtTheEnd(a, b));
      if (Math.abs(d - a.variant.width) > 1e-9) additive = false;
      advances[u * n + v] = d;
    }
  }
  const head = new Float64Array(n);
  const tail = Float64Array.from(states, (s) => s.variant.width);
  const sound = straight || makeForward(n, advances, head, tail);
  const bands = orTaller ? new Float64Array(BANDS * n) : bandWidths({ height, states });
  const weights = new Float64Array(BANDS + 1).fill(1 / (BANDS + 1));
  return { height, span, states, advances, head, tail, additive, bands, weights, tuned: { done: false }, furthest: new Float64Array(n * n).fill(Number.NaN), sound };
}

/** The advance is concave in the rise, so over all taller strips it is least at one end: here where they hardly share a height. */
function advanceAtTheEnd(a: RowState, b: RowState): number {
  const nudge = 1e-6 * Math.min(a.variant.height, b.variant.height);
  return advance(a.variant, b.variant, b.high ? a.variant.height - nudge : nudge - b.variant.height);
}

/**
 * A leaning blank's leftmost point may lie behind its left neighbour's. Measuring each state from a place of its own makes
 * every advance forward, so that rows can be searched from left to right (Johnson 1977).
 * @returns false when there is no such choice of places
 */
function makeForward(n: number, advances: Float64Array, head: Float64Array, tail: Float64Array): boolean {
  const place = new Float64Array(n);
  let settled = false;
  for (let round = 0; round <= n && !settled; round++) {
    settled = true;
    for (let u = 0; u < n; u++) {
      for (let v = 0; v < n; v++) {
        const through = place[u]! + advances[u * n + v]! - FORWARD;
        if (through < place[v]! - 1e-12) {
          place[v] = through;
          settled = false;
        }
      }
    }
  }
  if (!settled) return false;
  for (let u = 0; u < n; u++) {
    for (let v = 0; v < n; v++) advances[u * n + v]! += place[u]! - place[v]!;
    head[u]! -= place[u]!;
    tail[u]! += place[u]!;
  }
  return true;
}

/** The least that every advance is made, so that no path goes on for ever. */
const FORWARD = 1e-6;

/** Whether both its sides stand square to the strip. */
export function isBox(v: Variant): boolean {
  return v.right.x.every((x) => Math.abs(x - v.width) < 1e-9) && v.left.x.every((x) => Math.abs(x) < 1e-9);
}
