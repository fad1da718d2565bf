/** Rows cut square throughout: each blank takes its own width whatever its neighbours, so the best row is a bounded knapsack. */
import type { PricedRows } from './price-row.ts';
import { type RowGraph, type RowStep, stepOf } from './row-graph.ts';

export interface KnapsackItem {
  readonly step: RowStep;
  readonly width: number;
  readonly value: number;
  readonly most: number;
}

/**
 * The blanks that fit, best value per width first.
 * @param worthless whether blanks of no value are wanted too
 */
export function knapsackItems(
  graph: RowGraph,
  values: Float64Array,
  demand: Int32Array,
  worthless = false,
): readonly KnapsackItem[] {
  const items: KnapsackItem[] = [];
  graph.blanks.forEach((blank, k) => {
    const width = graph.length[k]!;
    const value = values[blank]!;
    const most = Math.min(demand[blank]!, Math.floor(graph.span / width + 1e-9));
    if ((value > 1e-9 || worthless) && most > 0) items.push({ step: stepOf(graph, k, 0, 0), width, value, most });
  });
  return items.sort((a, b) => b.value / b.width - a.value / a.width);
}

/** What the items from `from` on could add at most in `length`, whole or not. */
export function fractionalRest(items: readonly KnapsackItem[], from: number, length: number): number {
  let sum = 0;
  for (let k = from; k < items.length && length > 0; k++) {
    const { width, value, most } = items[k]!;
    const n = Math.min(most, length / width);
    sum += n * value;
    length -= n * width;
  }
  return sum;
}

/** By lists of undominated (length, value) pairs, item by item, cut off by the fractional bound. */
export function knapsackRow(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number): PricedRows {
  const items = knapsackItems(graph, values, demand);
  const span = graph.span * (1 + 1e-9) + 1e-9;
  const at = [0],
    val = [0],
    item = [-1],
    parent = [-1];
  let front: number[] = [0];
  let best = -1;
  let bestValue = threshold + 1e-9;
  const bound = fractionalRest(items, 0, span);
  if (bound <= threshold) return { best: null, bound };
  for (let k = 0; k < items.length; k++) {
    const { width, value, most } = items[k]!;
    const grown = front.slice();
    let layer = front;
    for (let copy = 0; copy < most && layer.length > 0; copy++) {
      const next: number[] = [];
      for (const l of layer) {
        const position = at[l]! + width;
        if (position > span) continue;
        const worth = val[l]! + value;
        if (worth + fractionalRest(items, k, span - position) <= bestValue) continue;
        const label = at.push(position) - 1;
        val.push(worth);
        item.push(k);
        parent.push(l);
        if (worth > bestValue) {
          bestValue = worth;
          best = label;
        }
        next.push(label);
      }
      for (const l of next) grown.push(l);
      layer = next;
    }
    grown.sort((a, b) => at[a]! - at[b]! || val[b]! - val[a]!);
    front = [];
    let top = -Infinity;
    for (const l of grown) {
      if (val[l]! <= top || val[l]! + fractionalRest(items, k + 1, span - at[l]!) <= bestValue - 1e-12) continue;
      top = val[l]!;
      front.push(l);
    }
  }
  if (best < 0) return { best: null, bound: Math.max(threshold, 0) };
  const steps: RowStep[] = [];
  for (let l = best; parent[l]! >= 0; l = parent[l]!) steps.push(items[item[l]!]!.step);
  return { best: { steps, value: bestValue }, bound: bestValue };
}
