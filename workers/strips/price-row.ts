/** The row worth most in a strip of one height, at the master's prices. */

import { greedyPath } from './greedy-path.ts';
import { gridPath } from './grid-path.ts';
import { knapsackRow } from './knapsack-row.ts';
import { longestPath, type PathSearch } from './longest-path.ts';
import { boundByDemand, boundByRatio } from './ratio.ts';
import { arcCount, usableArcs } from './row-arcs.ts';
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

const CRITICAL_MOST = 6;
const LABELS = 100_000;
const RENT_ROUNDS = 10;
/** Steps times places: beyond this a strip is left with the bound known without a search. */
const WORK_MOST = 3e7;
/** Cells to a strip: for a quick look, and where something is to be proved. */
const QUICK_CELLS = 700;
const FINE_CELLS = 3000;
/** Half sizes and thirds of ruler sizes come from slants, so cells finer than the ruler lose least. */
const QUICK_OF_RULER = 2;
const FINE_OF_RULER = 8;
/** A quick look takes the first row that is worth so much more than it must be, in parts of that. */
const CLEARLY = 5e-3;

/**
 * @param values by blank of the job, never negative
 * @param demand by blank: no row found holds more of a blank than this; bounds may pass over it
 * @param exact false: a quick look, whose bound is only the one known without any search
 */
export function priceRow(
  graph: RowGraph,
  values: Float64Array,
  demand: Int32Array,
  threshold: number,
  exact = true,
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
  if (!exact && first.value > threshold + CLEARLY * Math.abs(threshold)) return { best: first, bound: free };
  const bound = exact ? Math.min(free, boundByDemand(graph, own, most, ratio)) : free;
  if (bound <= threshold) return { best: null, bound };
  const greedy = first.value > threshold ? first : null;
  const wanted = Math.max(first.value, threshold);
  const few = usableArcs(graph, own, ratio, free - wanted, true);
  const quick =
    gridPath({
      graph,
      ratio,
      arcs: few,
      threshold: wanted,
      cell: cellOf(graph, QUICK_CELLS, QUICK_OF_RULER),
      round: 'up',
      most,
    }) ?? greedy;
  if (quick || !exact) return { best: quick, bound };
  const cell = cellOf(graph, FINE_CELLS, FINE_OF_RULER);
  const arcs = usableArcs(graph, own, ratio, free - threshold, false);
  if ((arcCount(arcs) * graph.span) / cell > WORK_MOST) return { best: null, bound };
  const search = { graph, ratio, arcs, threshold };
  const fine = gridPath({ ...search, cell, round: 'up', most });
  if (fine) return { best: fine, bound };
  const rent = chargeRent(graph, own, most, threshold, cell);
  if (rent.bound <= threshold) return { best: null, bound: Math.min(bound, rent.bound) };
  // Rounded down, a row may seem to fit that does not by a hair: exact places tell.
  return withDemand(search, [...rent.over], most) ?? { best: null, bound: Math.min(bound, rent.bound) };
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
  const found = gridPath({ graph, ratio, arcs, threshold: first.value, cell, round: 'up', most }) ?? first;
  return found.steps.length > 0 ? found : null;
}

/**
 * A bound on rows that hold no more of each blank than is wanted: copies pay rent, and as much as all wanted copies would pay
 * is given back, so no such row loses by it (a Lagrangian bound); rents rise on the blanks that the best row holds too many of.
 */
function chargeRent(
  graph: RowGraph,
  values: Float64Array,
  most: Int32Array,
  threshold: number,
  cell: number,
): { bound: number; over: readonly number[] } {
  const rent = new Float64Array(values.length);
  let bound = Infinity;
  let over: readonly number[] = [];
  let work = 0;
  for (let round = 0; round < RENT_ROUNDS; round++) {
    const worth = values.map((v, k) => Math.max(0, v - rent[k]!));
    if (worth.every((v) => v <= 0)) break;
    const back = rent.reduce((sum, r, k) => sum + r * most[k]!, 0);
    const ratio = boundByRatio(graph, worth);
    const lead = ratio.rate * graph.span * (1 + 1e-9) + ratio.bonus[graph.square]! - (threshold - back);
    const arcs = usableArcs(graph, worth, ratio, Math.max(0, lead), false);
    work += (arcCount(arcs) * graph.span) / cell;
    if (work > 2 * WORK_MOST) break;
    // Every step is at least one cell, so a shorter one would be rounded up where a bound must round down.
    if (arcs.some((a) => a.length.some((l) => l < cell))) break;
    const top = lead <= 0 ? null : gridPath({ graph, ratio, arcs, threshold: threshold - back, cell, round: 'down' });
    if (!top) return { bound: Math.max(0, threshold), over: [] };
    bound = Math.min(bound, top.value + back);
    const counts = countsOf(graph, top.steps);
    const excess = counts.map((n, k) => (n > most[k]! || rent[k]! > 0 ? n - most[k]! : 0));
    const size = excess.reduce((sum, e) => sum + e * e, 0);
    if (round === 0) over = overDemand(graph, top.steps, most);
    if (size === 0) break;
    const step = (top.value + back - threshold) / size;
    excess.forEach((e, k) => {
      rent[k] = Math.min(values[k]!, Math.max(0, rent[k]! + step * e));
    });
  }
  return { bound, over };
}

/** The search that counts copies of the blanks a row has too many of; undefined when it grows too large. */
function withDemand(
  search: Omit<PathSearch, 'critical' | 'most' | 'labels'>,
  critical: number[],
  most: Int32Array,
): PricedRows | undefined {
  for (;;) {
    const found = longestPath({ ...search, critical, most, labels: LABELS });
    if (!found) return { best: null, bound: Math.max(search.threshold, 0) };
    if (found.cut) return undefined;
    const over = overDemand(search.graph, found.steps, most).filter((k) => !critical.includes(k));
    if (over.length === 0) return { best: found, bound: found.value };
    if (critical.length + over.length > CRITICAL_MOST) return undefined;
    critical.push(...over);
  }
}

/** A part of the ruler, on whose marks most lengths lie, unless that makes far too many cells. */
function cellOf(graph: RowGraph, cells: number, ofRuler: number): number {
  const even = graph.span / cells;
  const onRuler = (graph.ruler ?? 0) / ofRuler;
  return onRuler > even / 2 && onRuler < even * 2 ? onRuler : even;
}

function overDemand(graph: RowGraph, steps: readonly RowStep[], most: Int32Array): number[] {
  const counts = countsOf(graph, steps);
  return [...counts.keys()].filter((k) => counts[k]! > most[k]!);
}

function countsOf(graph: RowGraph, steps: readonly RowStep[]): Int32Array {
  const of = new Map<number, number>();
  for (const s of steps) of.set(s.variant.blank, (of.get(s.variant.blank) ?? 0) + 1);
  return Int32Array.from(graph.blanks, (b) => of.get(b) ?? 0);
}
