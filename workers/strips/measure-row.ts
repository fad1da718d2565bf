/**
 * Ways to measure how much of a strip's length a row takes, none of which can exceed the strip: the sum of advances from
 * neighbour to neighbour, and the mean width of all its blanks within a band of height. Blanks tucked under a neighbour's
 * slant cheat the first, low blanks the others; a weighted mean of them all is hard to cheat, and just as true.
 */
import { boundByRatio, type RatioBound } from './ratio.ts';
import type { RowGraph } from './row-graph.ts';
import type { Variant } from './variant.ts';

export const BANDS = 6;

export interface RowMeasure extends RatioBound {
  /** length[u * n + v] = share × advance + own[v]. */
  readonly share: number;
  readonly own: Float64Array;
}

/** Bands × states: the mean width of each state's blank in each band of the strip's height. */
export function bandWidths(graph: Pick<RowGraph, 'states' | 'height'>): Float64Array {
  const n = graph.states.length;
  const widths = new Float64Array(BANDS * n);
  graph.states.forEach(({ variant, rise }, v) => {
    for (let k = 0; k < BANDS; k++) {
      const low = (graph.height * k) / BANDS - rise;
      const high = (graph.height * (k + 1)) / BANDS - rise;
      widths[k * n + v] = areaUpTo(variant, high) - areaUpTo(variant, low);
      widths[k * n + v]! /= graph.height / BANDS;
    }
  });
  return widths;
}

function areaUpTo(v: Variant, y: number): number {
  return integral(v.right, y) - integral(v.left, y);
}

function integral({ y: ys, x: xs }: { y: Float64Array; x: Float64Array }, to: number): number {
  let sum = 0;
  for (let i = 1; i < ys.length; i++) {
    const a = ys[i - 1]!;
    const b = ys[i]!;
    if (to <= a) break;
    const end = Math.min(b, to);
    const xEnd = xs[i - 1]! + ((end - a) / (b - a)) * (xs[i]! - xs[i - 1]!);
    sum += ((xs[i - 1]! + xEnd) / 2) * (end - a);
  }
  return sum;
}

/**
 * The weighted measure with the least bound that a few rounds find; weights are kept with the graph, since prices change
 * little from one round of pricing to the next.
 */
export function measureRows(graph: RowGraph, values: Float64Array, active: Int32Array): RowMeasure {
  const n = graph.states.length;
  const weights = graph.weights;
  let best: { measure: RowMeasure; weights: Float64Array; most: number } | undefined;
  const rounds = graph.tuned.done ? 3 : 12;
  for (let round = 0; round < rounds; round++) {
    const own = new Float64Array(n);
    for (const v of active) for (let k = 0; k < BANDS; k++) own[v]! += weights[k + 1]! * graph.bands[k * n + v]!;
    const share = weights[0]!;
    const bound = boundByRatio(graph, values, active, share, own);
    let most = 0;
    for (const u of active) {
      most = Math.max(most, values[u]! + bound.rate * (graph.span - share * graph.head[u]! - own[u]!) + bound.bonus[u]!);
    }
    if (!best || most < best.most) best = { measure: { ...bound, share, own }, weights: Float64Array.from(weights), most };
    // Give more weight to the measures in which the cheating cycle is long.
    const lengths = new Float64Array(BANDS + 1);
    bound.cycle.forEach((u, i) => {
      const v = bound.cycle[(i + 1) % bound.cycle.length]!;
      lengths[0]! += graph.advances[u * n + v]!;
      for (let k = 0; k < BANDS; k++) lengths[k + 1]! += graph.bands[k * n + v]!;
    });
    const longest = Math.max(...lengths);
    let sum = 0;
    for (let k = 0; k <= BANDS; k++) sum += weights[k]! *= Math.exp(((graph.tuned.done ? 0.3 : 1) * lengths[k]!) / longest);
    for (let k = 0; k <= BANDS; k++) weights[k] = Math.max(1e-6, weights[k]! / sum);
  }
  graph.weights.set(best!.weights);
  graph.tuned.done = true;
  return best!.measure;
}
