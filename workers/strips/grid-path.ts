/**
 * A good row, quickly: places along the strip lie on a grid, lengths are rounded up, so that it fits. Lengths that are whole cells, as
 * ruler sizes are, lose nothing.
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
  /**
   * By the graph's blanks: no row found holds more. Of two ways to the same place the richer is followed whatever it has used
   * up, so a better row may be missed.
   */
  readonly most: Int32Array;
}

export interface GridRow {
  readonly steps: readonly RowStep[];
  readonly value: number;
}

const LOOSE = 1e-7;

/** Null when no row on the grid is worth more than the threshold. */
export function gridPath({ graph, ratio, arcs, threshold, cell, most }: GridSearch): GridRow | null {
  const m = graph.slopes.length;
  const cellsOf = (v: number) => Math.ceil(v / cell - LOOSE);
  const end = Math.floor(graph.span / cell + LOOSE);
  const tails = Int32Array.from({ length: m }, (_, s) => cellsOf(tail(graph, s)));
  const cells = arcs.map(({ length }) => length.map((l) => Math.max(1, cellsOf(l))));
  const size = (end + 1) * m;
  const value = new Float64Array(size).fill(-Infinity);
  // Where the best way to a node comes from: index of the arc, and the slope it starts at.
  const byArc = new Int32Array(size).fill(-1);
  const bySlope = new Int32Array(size);
  const richest = new Float64Array(m).fill(-Infinity);
  // By blank, more copies than any row has room for.
  const canHold = new Int32Array(graph.blanks.length);
  arcs.forEach(({ blank }, s) => {
    for (let i = 0; i < blank.length; i++)
      canHold[blank[i]!] = Math.max(canHold[blank[i]!]!, Math.ceil(end / cells[s]![i]!) + 1);
  });
  /** How many of blank k the way to a node holds already. */
  const held = (node: number, k: number): number => {
    let n = 0;
    for (let at = node; byArc[at]! >= 0; ) {
      const s = bySlope[at]!;
      const i = byArc[at]!;
      if (arcs[s]!.blank[i] === k) n++;
      at = (Math.floor(at / m) - cells[s]![i]!) * m + s;
    }
    return n;
  };
  value[graph.square] = 0;
  let best = -1;
  let bestValue = threshold;
  for (let c = 0; c <= end; c++) {
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
      const { blank, to, value: worth, slack } = arcs[s]!;
      const far = cells[s]!;
      for (let i = 0; i < to.length; i++) {
        if (slack[i]! >= spare) continue;
        const t = to[i]!;
        const next = c + far[i]!;
        if (next + tails[t]! > end) continue;
        const sum = v + worth[i]!;
        const there = next * m + t;
        if (sum > value[there]!) {
          // A demand that no row could use up needs no counting.
          const k = blank[i]!;
          if (most[k]! < canHold[k]! && held(node, k) >= most[k]!) continue;
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
