/** The row worth most in a strip of one height, at the master's prices. */
import { knapsackRow } from './knapsack-row.ts';
import { greedyPath, gridPath } from './grid-path.ts';
import { layRow } from './lay-row.ts';
import { longestPath, type PathSearch } from './longest-path.ts';
import { boundByRatio } from './ratio.ts';
import { usableArcs, withoutBlanks } from './row-arcs.ts';
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

interface RowSearch extends Omit<PathSearch, 'critical' | 'most' | 'labels'> {
  /** By the graph's blanks. */
  readonly worth: Float64Array;
}

const CRITICAL_MOST = 6;
const LABELS = 40_000;
/** Cells to a strip: for a quick look, and where something is to be proved. */
const QUICK_CELLS = 600;
const FINE_CELLS = 2600;

/**
 * @param values by blank of the job, never negative
 * @param demand by blank: no row found holds more of a blank than this; bounds may pass over it
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
  const arcs = usableArcs(graph, own, ratio, bound - threshold);
  const search: RowSearch = { graph, ratio, arcs, threshold, worth: own };
  // What is found without a search cuts most of the search off.
  const greedy = greedyPath(search, most);
  const wanted = greedy ? greedy.value : threshold;
  const quick = withinDemand(search, gridPath({ ...search, threshold: wanted, cell: graph.span / QUICK_CELLS, round: 'up' }), most) ?? greedy;
  if (quick || !exact) return { best: quick, bound };
  const cell = graph.span / FINE_CELLS;
  const fine = withinDemand(search, gridPath({ ...search, cell, round: 'up' }), most);
  if (fine) return { best: fine, bound };
  const top = gridPath({ ...search, cell, round: 'down' });
  if (!top) return { best: null, bound: Math.max(threshold, 0) };
  const critical = overDemand(graph, top.steps, most);
  if (critical.length > 0) {
    const found = withDemand(search, critical, most);
    if (found) return found;
  }
  return { best: null, bound: top.value };
}

/** The search that counts copies of the blanks a row has too many of; undefined when it grows too large. */
function withDemand(search: RowSearch, critical: number[], most: Int32Array): PricedRows | undefined {
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

/**
 * A row that holds too many of a blank keeps as many as are wanted, laid first, and is filled again without it.
 * Null when what comes of that is not worth the threshold.
 */
function withinDemand(search: RowSearch, row: PricedRow | null, most: Int32Array): PricedRow | null {
  const { graph } = search;
  let found: PricedRow | null = row;
  const spent = new Set<number>();
  let kept: RowStep[] = [];
  while (found) {
    const over = overDemand(graph, found.steps, most).find((k) => !spent.has(k));
    if (over === undefined) return found;
    spent.add(over);
    const blank = graph.blanks[over]!;
    const mine = found.steps.filter((s) => s.variant.blank === blank).slice(0, most[over]!);
    kept = [...kept, ...mine];
    const laid = layRow(kept, graph.height);
    const slope = graph.slopes.indexOf(kept.at(-1)!.slope);
    const value = kept.reduce((sum, s) => sum + search.worth[graph.blanks.indexOf(s.variant.blank)]!, 0);
    const arcs = withoutBlanks(search.arcs, spent);
    const rest = gridPath({ ...search, arcs, cell: graph.span / QUICK_CELLS, round: 'up', from: { at: laid.middle, slope, value } });
    found = rest ? { steps: [...kept, ...rest.steps], value: rest.value } : null;
  }
  return null;
}

function overDemand(graph: RowGraph, steps: readonly RowStep[], most: Int32Array): number[] {
  const counts = new Map<number, number>();
  for (const s of steps) counts.set(s.variant.blank, (counts.get(s.variant.blank) ?? 0) + 1);
  return [...graph.blanks.keys()].filter((k) => (counts.get(graph.blanks[k]!) ?? 0) > most[k]!);
}
