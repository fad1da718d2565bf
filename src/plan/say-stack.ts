/** A stack as ruler work: how its segment is cut along the strip, and what each blank is trimmed to. */
import type { StripPiece } from './cut-steps.ts';

/** The blanks of a strip in order, those of one stack together. */
export function withStacksTogether(pieces: readonly StripPiece[]): readonly (readonly StripPiece[])[] {
  const groups: StripPiece[][] = [];
  for (const piece of pieces) {
    if (piece.stack !== undefined && piece.stack.layer > 1) groups.at(-1)!.push(piece);
    else groups.push([piece]);
  }
  return groups;
}

/** Whether two stacks are cut alike, wherever along the strip they lie. */
export function stacksAlike(a: readonly StripPiece[], b: readonly StripPiece[]): boolean {
  return (
    a.length === b.length &&
    a.every((piece, i) => {
      const other = b[i]!;
      return (
        piece.stack !== undefined &&
        other.stack !== undefined &&
        piece.blank === other.blank &&
        piece.mirror === other.mirror &&
        Math.abs(piece.stack.high - other.stack.high) < 1e-6 &&
        Math.abs(piece.stack.width - other.stack.width) < 1e-6
      );
    })
  );
}

/**
 * "along at 2 1/2: A1, trim to 3 × 2 1/2". The last layer may end at the strip's own edge.
 * @param height of the strip @param mark writes a mark, without its unit
 */
export function sayLayer(piece: StripPiece, height: number, mark: (length: number) => string): string {
  const { high, width, height: tall } = piece.stack!;
  const cut = high < height - 1e-6 ? `along at ${mark(high)}` : 'to the far edge';
  const over = piece.mirror ? ', wrong side up' : '';
  return `${cut}: ${piece.blank}${over}, trim to ${mark(width)} × ${mark(tall)}`;
}
