/** Strips that are cut alike are told once, so that a cutting page does not say the same thing six times. */
import type { StripPiece, StripSteps } from './cut-steps.ts';

/** Whether two strips are of one size, cut the same number of times, with the same blanks at the same marks. */
export function alike(a: StripSteps, b: StripSteps): boolean {
  return (
    a.cloth === b.cloth &&
    a.count === b.count &&
    a.firstCut === b.firstCut &&
    a.part === b.part &&
    same(a.height, b.height) &&
    same(a.across, b.across) &&
    a.pieces.length === b.pieces.length &&
    a.pieces.every((piece, i) => alikePieces(piece, b.pieces[i]!))
  );
}

function alikePieces(a: StripPiece, b: StripPiece): boolean {
  return (
    a.blank === b.blank &&
    a.shape === b.shape &&
    a.mirror === b.mirror &&
    same(a.turn, b.turn) &&
    same(a.near, b.near) &&
    same(a.far, b.far) &&
    (a.stack?.layer ?? 1) === (b.stack?.layer ?? 1) &&
    same(a.stack?.high ?? 0, b.stack?.high ?? 0)
  );
}

const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
