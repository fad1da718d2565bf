import type { RatioBound } from './ratio.ts';
import { type RowGraph, type RowStep, stepOf, tail } from './row-graph.ts';

/**
 * A row that at each step loses least against the bound, which is often nearly the best one.
 * @param values @param most by the graph's blanks: worth, and how many are wanted
 */
export function greedyPath(
  graph: RowGraph,
  ratio: RatioBound,
  values: Float64Array,
  most: Int32Array,
): { steps: readonly RowStep[]; value: number } {
  const m = graph.slopes.length;
  const taken = new Int32Array(graph.blanks.length);
  const room = graph.span * (1 + 1e-9);
  const tails = Float64Array.from({ length: m }, (_, t) => tail(graph, t));
  const steps: RowStep[] = [];
  let at = 0;
  let value = 0;
  let s = graph.square;
  for (;;) {
    let best = -1;
    let to = -1;
    let least = Infinity;
    for (let k = 0; k < graph.blanks.length; k++) {
      if (values[k]! <= 0 || taken[k]! >= most[k]!) continue;
      for (let t = 0; t < m; t++) {
        const length = graph.length[(k * m + s) * m + t]!;
        const loss = ratio.rate * length - values[k]! - ratio.bonus[t]!;
        if (loss >= least || at + length + tails[t]! > room) continue;
        least = loss;
        best = k;
        to = t;
      }
    }
    if (best < 0) return { steps, value };
    taken[best]!++;
    steps.push(stepOf(graph, best, s, to));
    at += graph.length[(best * m + s) * m + to]!;
    value += values[best]!;
    s = to;
  }
}
