/**
 * Every row of boxes that could stand in a plan cheaper than the best so far: those whose value at the prices of the moment
 * falls short of the strip's cost by no more than the gap. Only rows to which nothing can be added are listed, since a plan
 * may always cut more than it needs. A complete list makes the integer programme's answer over it a proof.
 */
import { fractionalRest, knapsackItems } from './knapsack-row.ts';
import type { PricedRow } from './price-row.ts';
import type { RowGraph, RowStep } from './row-graph.ts';

/**
 * @param least value that a listed row must have
 * @param most rows wanted
 * @returns null when there are more than `most`, or rows are not cut square throughout
 */
export function listRows(
  graph: RowGraph,
  values: Float64Array,
  demand: Int32Array,
  least: number,
  most: number,
): readonly PricedRow[] | null {
  if (graph.slopes.length > 1) return null;
  const items = knapsackItems(graph, values, demand, true);
  const span = graph.span * (1 + 1e-9) + 1e-9;
  const rows: PricedRow[] = [];
  const taken = new Array<number>(items.length).fill(0);
  const patience = 40 * most + 100_000;
  let visits = 0;
  const visit = (k: number, length: number, value: number): boolean => {
    if (++visits > patience) return false;
    if (value + fractionalRest(items, k, length) < least) return true;
    if (k === items.length) {
      const maximal = items.every((item, i) => taken[i]! >= item.most || item.width > length);
      if (maximal)
        rows.push({ steps: items.flatMap((item, i) => new Array<RowStep>(taken[i]!).fill(item.step)), value });
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
