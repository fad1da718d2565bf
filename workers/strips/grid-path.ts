/**
 * The row worth most with places along the strip on a grid: lengths rounded up give rows that fit, rounded down a bound on
 * every row. Lengths that are whole cells, as ruler sizes are, lose nothing either way.
 */
import type { RatioBound } from './ratio.ts';
import type { Arcs } from './row-arcs.ts';
import { type RowGraph, type RowStep, stepOf, tail } from './row-graph.ts';

export interface GridSearch {
  readonly graph: RowGraph;
  readonly ratio: RatioBound;
  readonly arcs: readonly Arcs[];
  /** Only rows worth more are looked for. */
  readonly threshold: number;
  readonly cell: number;
  readonly round: 'up' | 'down';
  /** Where the row stands already, and what that is worth. */
  readonly from?: { readonly at: number; readonly slope: number; readonly value: number };
}

export interface GridRow {
  readonly steps: readonly RowStep[];
  readonly value: number;
}

const LOOSE = 1e-7;

/** Null when no row on the grid is worth more than the threshold. */
export function gridPath({ graph, ratio, arcs, threshold, cell, round, from }: GridSearch): GridRow | null {
  const m = graph.slopes.length;
  const cellsOf = round === 'up' ? (v: number) => Math.ceil(v / cell - LOOSE) : (v: number) => Math.floor(v / cell + LOOSE);
  const end = Math.floor(graph.span / cell + LOOSE);
  const tails = Int32Array.from({ length: m }, (_, s) => cellsOf(tail(graph, s)));
  const cells = arcs.map(({ length }) => length.map((l) => Math.max(1, cellsOf(l))));
  const size = (end + 1) * m;
  const value = new Float64Array(size).fill(-Infinity);
  // Where the best way to a node comes from: index of the arc, and the slope it starts at.
  const byArc = new Int32Array(size).fill(-1);
  const bySlope = new Int32Array(size);
  const richest = new Float64Array(m).fill(-Infinity);
  const begin = from ?? { at: 0, slope: graph.square, value: 0 };
  const first = cellsOf(begin.at);
  if (first > end) return null;
  value[first * m + begin.slope] = begin.value;
  let best = -1;
  let bestValue = threshold;
  for (let c = first; c <= end; c++) {
    for (let s = 0; s < m; s++) {
      const node = c * m + s;
      const v = value[node]!;
      if (v <= richest[s]!) continue;
      richest[s] = v;
      if (v > bestValue && c + tails[s]! <= end) {
        bestValue = v;
        best = node;
      }
      const spare = v + ratio.rate * (graph.span - c * cell) + ratio.bonus[s]! - bestValue;
      if (spare <= 0) continue;
      const { to, value: worth, slack } = arcs[s]!;
      const far = cells[s]!;
      for (let i = 0; i < to.length; i++) {
        if (slack[i]! >= spare) continue;
        const t = to[i]!;
        const next = c + far[i]!;
        if (next + tails[t]! > end) continue;
        const sum = v + worth[i]!;
        const there = next * m + t;
        if (sum > value[there]!) {
          value[there] = sum;
          byArc[there] = i;
          bySlope[there] = s;
        }
      }
    }
  }
  if (best < 0) return null;
  const steps: RowStep[] = [];
  for (let node = best; byArc[node]! >= 0; ) {
    const s = bySlope[node]!;
    const i = byArc[node]!;
    const c = Math.floor(node / m);
    steps.push(stepOf(graph, arcs[s]!.blank[i]!, s, arcs[s]!.to[i]!));
    node = (c - cells[s]![i]!) * m + s;
  }
  return { steps: steps.reverse(), value: bestValue };
}

/** A row by the least slack at each step, which is often nearly the best. Null when it is not worth the threshold. */
export function greedyPath({ graph, arcs, threshold }: Pick<GridSearch, 'graph' | 'arcs' | 'threshold'>, most: Int32Array): GridRow | null {
  const taken = new Int32Array(graph.blanks.length);
  const steps: RowStep[] = [];
  let at = 0;
  let value = 0;
  let s = graph.square;
  for (;;) {
    const { blank, to, length, value: worth, slack } = arcs[s]!;
    let chosen = -1;
    for (let i = 0; i < to.length; i++) {
      if (chosen >= 0 && slack[i]! >= slack[chosen]!) continue;
      if (taken[blank[i]!]! < most[blank[i]!]! && at + length[i]! + tail(graph, to[i]!) <= graph.span * (1 + 1e-9)) chosen = i;
    }
    if (chosen < 0) break;
    const k = blank[chosen]!;
    taken[k]!++;
    steps.push(stepOf(graph, k, s, to[chosen]!));
    at += length[chosen]!;
    value += worth[chosen]!;
    s = to[chosen]!;
  }
  return value > threshold ? { steps, value } : null;
}
