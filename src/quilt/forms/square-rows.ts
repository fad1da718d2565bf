/** Rows of squares, as a nine-patch and grids of triangles are sewn: patch by patch into rows, and the rows to each other. */
import type { Point } from '../../shape/point.ts';
import type { Unit } from '../quilt.ts';
import { lettered, numbered, type Piece } from './drawing.ts';

/**
 * The rows of a square block of n by n squares, from the top one down. Rows have no repeats: each stands where it is.
 * @param pieces of the square whose lower left corner is given, in sewing order
 */
export function squareRows(
  n: number,
  side: number,
  pieces: (column: number, row: number, lowerLeft: Point, size: number) => readonly Piece[],
): readonly Unit[] {
  const size = side / n;
  return lettered(
    Array.from({ length: n }, (_, row) => ({
      name: `Row ${row + 1}`,
      paper: false,
      repeat: { count: 1 },
      axis: 0,
      patches: numbered(
        Array.from({ length: n }, (_, column) =>
          pieces(column, row, [column * size - side / 2, side / 2 - (row + 1) * size], size),
        ).flat(),
      ),
    })),
  );
}
