/** Rows begun, kept together by what they hold: how counts are told by one number, and which last cuts are not worth going on from. */
import type { RowGraph } from './row-graph.ts';

/**
 * By blank, what one more of it adds to the number that tells a row's counts; null where they are too many for one number.
 * @param most by the graph's blanks
 */
export function radices(graph: RowGraph, most: ArrayLike<number>): Float64Array | null {
  const each = graph.slopes.length ** 2;
  let unit = 1;
  const radix = new Float64Array(most.length);
  for (let k = 0; k < most.length; k++) {
    radix[k] = unit;
    let shortest = Infinity;
    for (let i = k * each; i < (k + 1) * each; i++) shortest = Math.min(shortest, graph.length[i]!);
    unit *= 2 + Math.min(most[k]!, shortest > 0 ? Math.floor(graph.span / shortest) + 1 : most[k]!);
  }
  return unit > Number.MAX_SAFE_INTEGER ? null : radix;
}

/** Leaves out, of the least places by slope of the last cut, those that another slope is never behind. */
export function dropBehind(places: Float64Array, ahead: Float64Array, m: number): void {
  for (let s = 0; s < m; s++) {
    const at = places[s]!;
    if (at === Infinity) continue;
    for (let t = 0; t < m; t++) {
      if (t === s || places[t] === Infinity) continue;
      if (places[t]! + ahead[t * m + s]! <= at) {
        places[s] = Infinity;
        break;
      }
    }
  }
}
