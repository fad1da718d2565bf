/** Rows of boxes and stacks, cut square throughout: an unbounded knapsack over the strip's length for every height at little cost. */
import type { Grid, StackTable } from './stack-table.ts';
import type { Variant } from './variant.ts';

/** What one segment of a strip is: as wide as `width`, holding what the table says for it. */
export interface Segment {
  readonly w: number;
  readonly width: number;
}

export interface SegmentRow {
  readonly value: number;
  readonly segments: readonly Segment[];
}

/**
 * The segments worth most in a strip of this height, demand within each stack only.
 * @param grid along the strip @param filler what a unit of length that holds no stack is worth at most
 */
export function segmentRow(
  table: StackTable,
  height: number,
  span: number,
  grid: Grid,
  round: 'up' | 'down',
  filler = 0,
): SegmentRow {
  const { cell } = grid;
  const cellsOf =
    round === 'up' ? (v: number) => Math.ceil(v / cell - 1e-6) : (v: number) => Math.floor(v / cell + 1e-6);
  const end = Math.floor(span / cell + 1e-6);
  const used: { w: number; cells: number; value: number }[] = [];
  let most = 1e-9;
  table.widths.forEach((width, w) => {
    const value = table.value(w, height);
    if (value <= most + 1e-9) return;
    most = value;
    used.push({ w, cells: cellsOf(width), value });
  });
  const best = new Float64Array(end + 1);
  const by = new Int32Array(end + 1).fill(-1);
  const perCell = filler * cell;
  for (let c = 1; c <= end; c++) {
    best[c] = best[c - 1]! + perCell;
    for (let i = 0; i < used.length; i++) {
      const { cells, value } = used[i]!;
      if (cells > c) break;
      const sum = best[c - cells]! + value;
      if (sum > best[c]! + 1e-12) {
        best[c] = sum;
        by[c] = i;
      }
    }
  }
  const segments: Segment[] = [];
  for (let c = end; c > 0; ) {
    if (by[c]! < 0) {
      c--;
      continue;
    }
    const { w, cells } = used[by[c]!]!;
    segments.push({ w, width: table.widths[w]! });
    c -= cells;
  }
  // Rounding down may leave a part of a cell beyond the last one.
  const rest = round === 'down' ? perCell : 0;
  return { value: best[end]! + rest, segments };
}

/** How many of each blank these variants are. */
export function tallyOf(variants: readonly Variant[], blanks: number): Int32Array {
  const counts = new Int32Array(blanks);
  for (const v of variants) counts[v.blank]!++;
  return counts;
}
