/** What the master chooses among. */
import type { LaidRow } from '../strips/lay-row.ts';

/** One strip: its height, what it holds, and (unless it only serves the bound) how it lies. */
export interface StripColumn {
  readonly family: number;
  readonly height: number;
  /** Blank index to how many. */
  readonly counts: ReadonlyMap<number, number>;
  /** Null: neighbours would fit but the row as a whole does not, so it may prove but not plan. */
  readonly row: LaidRow | null;
}

/** How one piece is parted into strips: how many of each height. */
export interface PieceColumn {
  readonly family: number;
  readonly slots: ReadonlyMap<number, number>;
}

export function columnKey(column: StripColumn): string {
  const counts = [...column.counts].sort((a, b) => a[0] - b[0]).map(([b, n]) => `${b}:${n}`);
  return `${column.family}|${column.height.toFixed(6)}|${column.row ? 'r' : 'x'}|${counts.join(',')}`;
}
