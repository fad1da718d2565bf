/** The steps that a row worth more than the threshold could take at all, by the slope of the cut they start from. */
import type { RatioBound } from './ratio.ts';
import type { RowGraph } from './row-graph.ts';

/** Steps from cuts of one slope, as parallel arrays: there may be thousands, and they are gone through for each place. */
export interface Arcs {
  /** Of the graph. */
  readonly blank: Int32Array;
  readonly to: Int32Array;
  readonly length: Float64Array;
  readonly value: Float64Array;
  /** What taking it costs against the bound. Never negative. */
  readonly slack: Float64Array;
}

/** @param lead of the bound over the threshold: no row worth more takes a step of more slack */
export function usableArcs(graph: RowGraph, values: Float64Array, ratio: RatioBound, lead: number): readonly Arcs[] {
  const m = graph.slopes.length;
  const { bonus, rate } = ratio;
  const blank = new Int32Array(graph.blanks.length * m);
  const to = new Int32Array(blank.length);
  const length = new Float64Array(blank.length);
  const value = new Float64Array(blank.length);
  const slack = new Float64Array(blank.length);
  return Array.from({ length: m }, (_, s) => {
    let n = 0;
    for (let k = 0; k < graph.blanks.length; k++) {
      const worth = values[k]!;
      if (worth <= 0) continue;
      const row = (k * m + s) * m;
      const base = bonus[s]! - worth;
      for (let t = 0; t < m; t++) {
        const l = graph.length[row + t]!;
        const off = base + rate * l - bonus[t]!;
        if (off > lead) continue;
        blank[n] = k;
        to[n] = t;
        length[n] = l;
        value[n] = worth;
        slack[n] = Math.max(off, 0);
        n++;
      }
    }
    return {
      blank: blank.slice(0, n),
      to: to.slice(0, n),
      length: length.slice(0, n),
      value: value.slice(0, n),
      slack: slack.slice(0, n),
    };
  });
}
