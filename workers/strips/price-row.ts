/** The row worth most in a strip of one height, at the master's prices. */
import { knapsackRow } from './knapsack-row.ts';
import { longestPath } from './longest-path.ts';
import { boundByRatio } from './ratio.ts';
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

const CRITICAL_MOST = 10;
const LABELS_EXACT = 300_000;
const LABELS_QUICK = 30_000;
/** A quick look wants a row that much better, in parts of the threshold. */
const COARSE = 1e-3;

/**
 * @param values by blank of the job, never negative
 * @param demand by blank: no row holds more of a blank than this (honoured in full for knapsack rows; for others as far as
 * the search needs to, which never makes the bound too low)
 * @param exact false: a quick look, whose bound is only the one known without any search
 */
export function priceRow(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number, exact = true): PricedRows {
  if (graph.blanks.length === 0) return { best: null, bound: 0 };
  if (graph.slopes.length === 1) return knapsackRow(graph, values, demand, threshold);
  const own = Float64Array.from(graph.blanks, (b) => (demand[b]! > 0 && values[b]! > 1e-9 ? values[b]! : 0));
  if (own.every((v) => v === 0)) return { best: null, bound: 0 };
  const most = Int32Array.from(graph.blanks, (b) => demand[b]!);
  const ratio = boundByRatio(graph, own);
  const bound = ratio.rate * graph.span * (1 + 1e-9) + ratio.bonus[graph.square]!;
  if (bound <= threshold) return { best: null, bound };
  const critical: number[] = [];
  const wanted = exact ? threshold : threshold + COARSE * Math.abs(threshold);
  const labels = exact ? LABELS_EXACT : LABELS_QUICK;
  for (;;) {
    const found = longestPath({ graph, values: own, ratio, threshold: wanted, critical, most, labels });
    if (!found) return { best: null, bound: exact ? Math.max(threshold, 0) : bound };
    if (found.cut) return { best: found.steps.length > 0 ? found : null, bound };
    const over = overDemand(graph, found.steps, most).filter((k) => !critical.includes(k));
    if (over.length === 0 || critical.length + over.length > CRITICAL_MOST) return { best: found, bound: exact ? found.value : bound };
    critical.push(...over);
  }
}

function overDemand(graph: RowGraph, steps: readonly RowStep[], most: Int32Array): number[] {
  const counts = new Map<number, number>();
  for (const s of steps) counts.set(s.variant.blank, (counts.get(s.variant.blank) ?? 0) + 1);
  return [...graph.blanks.keys()].filter((k) => (counts.get(graph.blanks[k]!) ?? 0) > most[k]!);
}
