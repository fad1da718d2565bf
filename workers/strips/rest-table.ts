/** What the rest of a row can at most be worth, by what is left of the strip and the slope of the last cut. */
import type { RatioBound } from './ratio.ts';
import type { Arcs } from './row-arcs.ts';
import { type RowGraph, tail } from './row-graph.ts';

export interface RestTable {
  readonly cell: number;
  /** most[c * m + s] for m slopes: with no more than c cells left beyond a cut of slope s. −Infinity where not even its tail fits. */
  readonly most: Float64Array;
}

/** About so many cells to a strip, and parts of the ruler: halves and thirds of its marks come from slants. */
const GRIDS = { coarse: { cells: 350, ofRuler: 1 }, fine: { cells: 2000, ofRuler: 6 } } as const;

export type Grid = keyof typeof GRIDS;

/**
 * Places lie on a grid, lengths are rounded down, so that no row is worth more than the table says, demand apart.
 * @param arcs steps that rows of interest may take, with their values
 * @returns null where a step is shorter than a cell, so that rounding down would make it nothing
 */
export function makeRestTable(graph: RowGraph, arcs: readonly Arcs[], grid: Grid): RestTable | null {
  const m = graph.slopes.length;
  const cell = cellOf(graph, grid);
  // Steps from one slope: how far back in the table each leads, nearest first, and its worth. One that leads further back for no more
  // than another to the same slope is never the best.
  const steps = arcs.map(({ length, to, value }) => {
    const richest = new Float64Array(m).fill(-Infinity);
    const order = Uint32Array.from(length.keys())
      .sort((a, b) => length[a]! - length[b]! || value[b]! - value[a]!)
      .filter((i) => {
        const better = value[i]! > richest[to[i]!]!;
        if (better) richest[to[i]!] = value[i]!;
        return better;
      });
    const far = Int32Array.from(order, (i) => Math.floor(length[i]! / cell + 1e-9));
    return {
      nearest: far[0] ?? Infinity,
      back: Int32Array.from(order, (i, n) => far[n]! * m - to[i]!),
      far,
      value: Float64Array.from(order, (i) => value[i]!),
    };
  });
  if (steps.some(({ nearest }) => nearest < 1)) return null;
  const end = Math.ceil(graph.span / cell) + 2;
  const most = new Float64Array((end + 1) * m).fill(-Infinity);
  for (let s = 0; s < m; s++) {
    const from = Math.ceil((tail(graph, s) - 1e-9) / cell);
    for (let c = from; c <= end; c++) most[c * m + s] = 0;
  }
  for (let c = 1; c <= end; c++) {
    for (let s = 0; s < m; s++) {
      const { back, far, value } = steps[s]!;
      const node = c * m;
      let best = most[node + s]!;
      for (let i = 0; i < far.length && far[i]! <= c; i++) {
        const sum = value[i]! + most[node - back[i]!]!;
        if (sum > best) best = sum;
      }
      most[node + s] = best;
    }
  }
  return { cell, most };
}

/** Rounded up to whole cells, so that the table is asked for no less than there is. */
export function restAt(table: RestTable, left: number, slope: number, slopes: number): number {
  return table.most[Math.ceil(left / table.cell - 1e-9) * slopes + slope]!;
}

/** A bound from the table and one from the ratio both hold; where steps are too short for a table, the ratio alone. */
export function restOf(
  table: RestTable | null,
  ratio: RatioBound,
  left: number,
  slope: number,
  slopes: number,
): number {
  const free = ratio.rate * left + ratio.bonus[slope]!;
  return table ? Math.min(free, restAt(table, left, slope, slopes)) : free;
}

/** A part of the ruler, on whose marks most lengths lie, unless that makes far too many cells. */
function cellOf(graph: RowGraph, grid: Grid): number {
  const { cells, ofRuler } = GRIDS[grid];
  const even = graph.span / cells;
  const onRuler = (graph.ruler ?? 0) / ofRuler;
  return onRuler > even / 2 && onRuler < even * 2 ? onRuler : even;
}

/** By blank, how many of it the row holds that the table's greatest worth comes from. */
export function countsOfBest(graph: RowGraph, arcs: readonly Arcs[], table: RestTable, left: number): Int32Array {
  const m = graph.slopes.length;
  const counts = new Int32Array(graph.blanks.length);
  let c = Math.ceil(left / table.cell - 1e-9);
  let s = graph.square;
  for (;;) {
    const worth = table.most[c * m + s]!;
    const { length, to, value, blank } = arcs[s]!;
    let step = -1;
    for (let i = 0; i < to.length && step < 0; i++) {
      const back = c - Math.floor(length[i]! / table.cell + 1e-9);
      if (back >= 0 && value[i]! + table.most[back * m + to[i]!]! >= worth - 1e-12 * (1 + worth)) step = i;
    }
    if (step < 0 || worth <= 0) return counts;
    counts[blank[step]!]!++;
    c -= Math.floor(length[step]! / table.cell + 1e-9);
    s = to[step]!;
  }
}
