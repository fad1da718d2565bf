/** The row worth most in a strip of one height, at the master's prices. */

import { bestRow } from './best-row.ts';
import { greedyPath } from './greedy-path.ts';
import { gridPath } from './grid-path.ts';
import { knapsackRow } from './knapsack-row.ts';
import { boundByDemand, boundByRatio } from './ratio.ts';
import { usableArcs } from './row-arcs.ts';
import type { RowGraph, RowStep } from './row-graph.ts';

export interface PricedRow {
  /** In order along the strip. */
  readonly steps: readonly RowStep[];
  readonly value: number;
}

export interface PricedRows {
  /** The best row, or null when none was found that is worth more than the threshold. */
  readonly best: PricedRow | null;
  /** No row is worth more than this. */
  readonly bound: number;
}

/**
 * `quick`: a good row, its bound only the one known without a search. `fair`: a few
 * rows looked at, best first. `exact`: the best one, unless there are too many to look at; `thorough`: then also count by count.
 */
export type Effort = 'quick' | 'fair' | 'exact' | 'thorough';

/** Rows begun to look at before a strip is left with the bound known until then. */
const LABELS = { fair: 2_000, exact: 20_000, thorough: 20_000 } as const;
/** The same of looks count by count, which take longer each. */
const LABELS_BY_COUNTS = 60_000;
/** Cells to a strip for a quick look: half sizes come from slants, so cells finer than the ruler lose least. */
const QUICK_CELLS = 700;
const QUICK_OF_RULER = 2;
/** A quick look takes the first row that is worth so much more than it must be, in parts of that. */
const CLEARLY = 5e-3;

/**
 * @param values by blank of the job, never negative
 * @param demand by blank: no row found holds more of a blank than this; bounds may pass over it
 * @param threshold rows worth no more are not looked for; a bound at or below it may be the threshold itself
 */
export function priceRow(
  graph: RowGraph,
  values: Float64Array,
  demand: Int32Array,
  threshold: number,
  effort: Effort = 'exact',
): PricedRows {
  if (graph.blanks.length === 0) return { best: null, bound: 0 };
  if (graph.slopes.length === 1) return knapsackRow(graph, values, demand, threshold);
  const own = Float64Array.from(graph.blanks, (b) => (demand[b]! > 0 && values[b]! > 1e-9 ? values[b]! : 0));
  if (own.every((v) => v === 0)) return { best: null, bound: 0 };
  const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
  const ratio = boundByRatio(graph, own);
  const free = ratio.rate * graph.span * (1 + 1e-9) + ratio.bonus[graph.square]!;
  if (free <= threshold) return { best: null, bound: free };
  const first = greedyPath(graph, ratio, own, most);
  const greedy = first.value > threshold ? first : null;
  const wanted = Math.max(first.value, threshold);
  if (effort === 'quick') {
    if (first.value > threshold + CLEARLY * Math.abs(threshold)) return { best: first, bound: free };
    const arcs = usableArcs(graph, own, ratio, free - wanted, true);
    const cell = cellOf(graph, QUICK_CELLS, QUICK_OF_RULER);
    const found = gridPath({ graph, ratio, arcs, threshold: wanted, cell, most });
    return { best: found ?? greedy, bound: free };
  }
  const { bound, gains } = boundByDemand(graph, own, most, ratio);
  if (bound <= wanted) return { best: greedy, bound: Math.min(free, bound) };
  const labelsByCounts = effort === 'thorough' ? LABELS_BY_COUNTS : 0;
  const labels = LABELS[effort];
  const found = bestRow({ graph, values: own, most, rent: gains, threshold: wanted, labels, labelsByCounts });
  return { best: found.steps.length > 0 ? found : greedy, bound: Math.min(free, bound, found.bound) };
}

/** A bound on rows of these values, without looking for any. */
export function rowBound(graph: RowGraph, values: Float64Array, demand: Int32Array): number {
  if (graph.blanks.length === 0) return 0;
  const own = Float64Array.from(graph.blanks, (b) => (demand[b]! > 0 && values[b]! > 1e-9 ? values[b]! : 0));
  if (own.every((v) => v === 0)) return 0;
  const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
  const ratio = boundByRatio(graph, own);
  const free = ratio.rate * graph.span * (1 + 1e-9) + ratio.bonus[graph.square]!;
  return Math.min(free, boundByDemand(graph, own, most, ratio).bound);
}

/** A good row at these values that holds no more of each blank than is wanted; null when nothing is of value. */
export function goodRow(graph: RowGraph, values: Float64Array, demand: Int32Array): PricedRow | null {
  if (graph.blanks.length === 0) return null;
  if (graph.slopes.length === 1) return knapsackRow(graph, values, demand, 0).best;
  const own = Float64Array.from(graph.blanks, (b) => (demand[b]! > 0 && values[b]! > 1e-9 ? values[b]! : 0));
  if (own.every((v) => v === 0)) return null;
  const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
  const ratio = boundByRatio(graph, own);
  const first = greedyPath(graph, ratio, own, most);
  const free = ratio.rate * graph.span + ratio.bonus[graph.square]!;
  const arcs = usableArcs(graph, own, ratio, free - first.value, true);
  const cell = cellOf(graph, QUICK_CELLS, QUICK_OF_RULER);
  const found = gridPath({ graph, ratio, arcs, threshold: first.value, cell, most }) ?? first;
  return found.steps.length > 0 ? found : null;
}

/** A part of the ruler, on whose marks most lengths lie, unless that makes far too many cells. */
function cellOf(graph: RowGraph, cells: number, ofRuler: number): number {
  const even = graph.span / cells;
  const onRuler = (graph.ruler ?? 0) / ofRuler;
  return onRuler > even / 2 && onRuler < even * 2 ? onRuler : even;
}
