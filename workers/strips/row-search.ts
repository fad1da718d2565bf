/** What is asked of a search for the best row, and what it answers: best first (best-row.ts) or count by count (by-counts.ts). */
import type { RowGraph, RowStep } from './row-graph.ts';

export interface RowSearch {
  readonly graph: RowGraph;
  /** By the graph's blanks: worth, how many are wanted, and rent. */
  readonly values: Float64Array;
  readonly most: Int32Array;
  readonly rent: Float64Array;
  /** Only rows worth more are looked for. */
  readonly threshold: number;
  /** Rows begun to look at before giving up. */
  readonly labels: number;
  /** The same count by count, where that was not enough; 0 for none. */
  readonly labelsByCounts: number;
}

export interface BestRow {
  /** Empty when no row worth more than the threshold was found. */
  readonly steps: readonly RowStep[];
  readonly value: number;
  /** No row is worth more. The value, or the threshold, when the search came to its end. */
  readonly bound: number;
}

/** Parts in which values are told apart. */
export const LOOSE = 1e-9;

/** Blanks of which fewer are wanted than a strip could hold: only those need counting. */
export function scarceBlanks(graph: RowGraph, values: Float64Array, most: Int32Array): readonly number[] {
  const each = graph.slopes.length ** 2;
  return [...values.keys()].filter((k) => {
    if (values[k]! <= 0) return false;
    let least = Infinity;
    for (let i = k * each; i < (k + 1) * each; i++) least = Math.min(least, graph.length[i]!);
    return most[k]! * least < graph.span * (1 + 1e-9);
  });
}
