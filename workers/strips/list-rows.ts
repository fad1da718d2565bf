/**
 * Every row of boxes that could stand in a plan cheaper than the best so far: those whose value at the prices of the moment
 * falls short of the strip's cost by no more than the gap. Only rows to which nothing can be added are listed, since a plan
 * may always cut more than it needs. A complete list makes the integer programme's answer over it a proof.
 */
import type { PricedRow } from './price-row.ts';
import { knapsackItems } from './price-row.ts';
import type { RowGraph } from './row-graph.ts';

/**
 * @param least value that a listed row must have
 * @param most rows wanted
 * @returns null when there are more than `most`, or the graph is not one of boxes
 */
export function listRows(graph: RowGraph, values: Float64Array, demand: Int32Array, least: number, most: number): readonly PricedRow[] | null {
  if (!graph.additive) return null;
  const items = knapsackItems(graph, values, demand, true);
  const span = graph.span * (1 + 1e-9) + 1e-9;
  const rows: PricedRow[] = [];
  const taken = new Array<number>(items.length).fill(0);
  let steps = 0;
  const rest = (from: number, length: number): number => {
    let sum = 0;
    for (let k = from; k < items.length && length > 0; k++) {
      const { width, value, most: n } = items[k]!;
      const times = Math.min(n, length / width);
      sum += times * value;
      length -= times * width;
    }
    return sum;
  };
  const visit = (k: number, length: number, value: number): boolean => {
    if (++steps > 40 * most + 100_000) return false;
    if (value + rest(k, length) < least) return true;
    if (k === items.length) {
      const maximal = items.every((item, i) => taken[i]! >= item.most || item.width > length);
      if (maximal) rows.push({ path: items.flatMap((item, i) => new Array<number>(taken[i]!).fill(item.state)), value });
      return rows.length <= most;
    }
    const { width, value: worth, most: n } = items[k]!;
    for (let times = Math.min(n, Math.floor(length / width)); times >= 0; times--) {
      taken[k] = times;
      if (!visit(k + 1, length - times * width, value + times * worth)) return false;
    }
    taken[k] = 0;
    return true;
  };
  return visit(0, span, 0) ? rows : null;
}
