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

/**
 * @param lead of the bound over the threshold: no row worth more takes a step of more slack
 * @param few only the best cuts after each blank: enough for a good row, not for a proof
 */
export function usableArcs(
  graph: RowGraph,
  values: Float64Array,
  ratio: RatioBound,
  lead: number,
  few: boolean,
): readonly Arcs[] {
  const m = graph.slopes.length;
  const { bonus, rate } = ratio;
  const room = graph.blanks.length * (few ? Math.min(m, FEW) : m);
  const blank = new Int32Array(room);
  const to = new Int32Array(room);
  const length = new Float64Array(room);
  const value = new Float64Array(room);
  const slack = new Float64Array(room);
  return Array.from({ length: m }, (_, s) => {
    let n = 0;
    for (let k = 0; k < graph.blanks.length; k++) {
      const worth = values[k]!;
      if (worth <= 0) continue;
      const row = (k * m + s) * m;
      const base = bonus[s]! - worth;
      const first = n;
      for (let t = 0; t < m; t++) {
        const l = graph.length[row + t]!;
        const off = base + rate * l - bonus[t]!;
        if (off > lead) continue;
        let at = n;
        if (few && n - first === FEW) {
          // The worst of the few gives way.
          at = first;
          for (let i = first + 1; i < n; i++) if (slack[i]! > slack[at]!) at = i;
          if (slack[at]! <= off) continue;
        } else {
          n++;
        }
        blank[at] = k;
        to[at] = t;
        length[at] = l;
        value[at] = worth;
        slack[at] = Math.max(0, off);
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

const FEW = 3;

export function arcCount(arcs: readonly Arcs[]): number {
  return arcs.reduce((sum, a) => sum + a.to.length, 0);
}
