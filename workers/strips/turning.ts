/** How cuts of different slants compare as the last cut of a row begun: what one can go on to, another can too a little later. */
import { type RowGraph, tail } from './row-graph.ts';

const known = new WeakMap<RowGraph, Float64Array>();

/**
 * ahead[t * m + s] for m slopes: a row whose last cut has slope t and lies at least so far before one of slope s can go on with
 * whatever that one can, and end no later. May be negative, or Infinity. Kept with the graph.
 */
export function leadsByTurning(graph: RowGraph): Float64Array {
  const cached = known.get(graph);
  if (cached) return cached;
  const m = graph.slopes.length;
  const ahead = new Float64Array(m * m);
  for (let t = 0; t < m; t++) for (let s = 0; s < m; s++) ahead[t * m + s] = tail(graph, t) - tail(graph, s);
  for (let k = 0; k < graph.blanks.length; k++) {
    for (let t = 0; t < m; t++) {
      const other = (k * m + t) * m;
      for (let s = 0; s < m; s++) {
        const own = (k * m + s) * m;
        let most = ahead[t * m + s]!;
        for (let u = 0; u < m && most < Infinity; u++) {
          const from = graph.length[own + u]!;
          if (from === Infinity) continue;
          const more = graph.length[other + u]! - from;
          if (more > most) most = more;
        }
        ahead[t * m + s] = most;
      }
    }
  }
  known.set(graph, ahead);
  return ahead;
}
