/**
 * The row worth most in a strip of one height: a longest path over (position, last blank, how it lies), positions exact.
 * Values are the master's duals. Nothing that cannot beat `threshold` is followed.
 */
import { longestPath } from './longest-path.ts';
import { measureRows } from './measure-row.ts';
import type { RowGraph } from './row-graph.ts';

export interface PricedRow {
  /** Indices of states, in order along the strip. */
  readonly path: readonly number[];
  readonly value: number;
}

export interface PricedRows {
  /** The best row, or null when none is worth more than the threshold. */
  readonly best: PricedRow | null;
  /** No row is worth more than this. */
  readonly bound: number;
}

const CRITICAL_MOST = 10;

/**
 * @param values by blank of the job, never negative
 * @param demand by blank: no row holds more of a blank than this (honoured in full for knapsack rows; for others as far as
 * the search needs to, which never makes the bound too low)
 * @param exact false: a quick look, whose bound is only the one known without any search
 */
export function priceRow(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number, exact = true): PricedRows {
  if (graph.additive) return priceKnapsack(graph, values, demand, threshold);
  const stateValues = Float64Array.from(graph.states, (s) => values[s.variant.blank]!);
  const active = Int32Array.from(graph.states.keys()).filter((u) => stateValues[u]! > 1e-9 && demand[graph.states[u]!.variant.blank]! > 0);
  if (active.length === 0) return { best: null, bound: 0 };
  const measure = measureRows(graph, stateValues, active);
  const { rate, bonus, share, own } = measure;
  let bound = 0;
  for (const u of active) bound = Math.max(bound, stateValues[u]! + rate * (graph.span - share * graph.head[u]! - own[u]!) + bonus[u]!);
  if (bound <= threshold) return { best: null, bound };
  const critical: number[] = [];
  for (;;) {
    const found = longestPath({ graph, values: stateValues, active, measure, threshold, critical, demand, exact });
    if (!found) return { best: null, bound: exact ? Math.max(threshold, 0) : bound };
    if (found.cut) return { best: found.path.length > 0 ? found : null, bound };
    const over = overDemand(graph, found.path, demand).filter((b) => !critical.includes(b));
    if (over.length === 0 || critical.length + over.length > CRITICAL_MOST) return { best: found, bound: exact ? found.value : bound };
    critical.push(...over);
  }
}

function overDemand(graph: RowGraph, path: readonly number[], demand: Int32Array): number[] {
  const counts = new Map<number, number>();
  for (const u of path) {
    const blank = graph.states[u]!.variant.blank;
    counts.set(blank, (counts.get(blank) ?? 0) + 1);
  }
  return [...counts].filter(([blank, count]) => count > demand[blank]!).map(([blank]) => blank);
}

interface Item {
  readonly state: number;
  readonly width: number;
  readonly value: number;
  readonly most: number;
}

/**
 * Each blank at its narrowest: the only way of lying that a knapsack row needs. Best value per width first.
 * @param worthless whether blanks of no value are wanted too
 */
export function knapsackItems(graph: RowGraph, values: Float64Array, demand: Int32Array, worthless = false): readonly Item[] {
  const narrowest = new Map<number, Item>();
  graph.states.forEach((s, state) => {
    const { blank, width } = s.variant;
    const value = values[blank]!;
    const most = Math.min(demand[blank]!, Math.floor(graph.span / width + 1e-9));
    if ((value <= 1e-9 && !worthless) || most <= 0) return;
    if (width < (narrowest.get(blank)?.width ?? Infinity)) narrowest.set(blank, { state, width, value, most });
  });
  return [...narrowest.values()].sort((a, b) => b.value / b.width - a.value / a.width);
}

/** Bounded knapsack by lists of undominated (length, value) pairs, item by item, cut off by the fractional bound. */
function priceKnapsack(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number): PricedRows {
  const items = knapsackItems(graph, values, demand);
  const span = graph.span * (1 + 1e-9) + 1e-9;
  const at = [0], val = [0], item = [-1], parent = [-1];
  let front: number[] = [0];
  let best = -1;
  let bestValue = threshold + 1e-9;
  const rest = (from: number, length: number): number => {
    let sum = 0;
    for (let k = from; k < items.length && length > 0; k++) {
      const { width, value, most } = items[k]!;
      const n = Math.min(most, length / width);
      sum += n * value;
      length -= n * width;
    }
    return sum;
  };
  const bound = rest(0, span);
  if (bound <= threshold) return { best: null, bound };
  items.forEach(({ width, value, most }, k) => {
    const grown = [...front];
    let layer = front;
    for (let copy = 0; copy < most; copy++) {
      const next: number[] = [];
      for (const l of layer) {
        const position = at[l]! + width;
        if (position > span) continue;
        const worth = val[l]! + value;
        if (worth + rest(k, span - position) <= bestValue) continue;
        at.push(position);
        val.push(worth);
        item.push(k);
        parent.push(l);
        const label = at.length - 1;
        if (worth > bestValue) {
          bestValue = worth;
          best = label;
        }
        next.push(label);
      }
      if (next.length === 0) break;
      grown.push(...next);
      layer = next;
    }
    grown.sort((a, b) => at[a]! - at[b]! || val[b]! - val[a]!);
    let top = -Infinity;
    front = grown.filter((l) => {
      if (val[l]! <= top || val[l]! + rest(k + 1, span - at[l]!) <= bestValue - 1e-12) return false;
      top = val[l]!;
      return true;
    });
  });
  if (best < 0) return { best: null, bound: Math.max(threshold, 0) };
  const path: number[] = [];
  for (let l = best; parent[l]! >= 0; l = parent[l]!) path.push(items[item[l]!]!.state);
  return { best: { path, value: bestValue }, bound: bestValue };
}
