/** A foundation or a template at true scale, in inches, in the frame of the piece: what is sewn on, where it is trimmed, what lies where. */
import { type Item, lineRun, outlineRun, type PathItem, polygonRun, type TextItem } from '../draw/display-list.ts';
import { flatten } from '../shape/flatten.ts';
import { add, distance, scale, subtract } from '../shape/point.ts';
import { patchWords } from './patch-words.ts';
import type { Neighbour, PaperPatch, PaperPiece } from './pieces.ts';
import { readable } from './readable.ts';

/** Text sizes, in inches: 72 points make one. */
const NEIGHBOUR_SIZE = 5.5 / 72;

/** @param turned how far the piece will be turned on its sheet, so that its words are set to be read there */
export function drawPiece(piece: PaperPiece, turned: number): readonly Item[] {
  return [
    ...drawLines(piece),
    ...piece.patches.flatMap((patch) => words(patch, turned)),
    ...piece.neighbours.flatMap((edge) => neighbour(piece, edge, turned)),
  ];
}

/** The lines alone. */
export function drawLines(piece: PaperPiece): readonly PathItem[] {
  return [
    { kind: 'path', class: 'trim', runs: [polygonRun(piece.trim)] },
    ...seams(piece),
    { kind: 'path', class: 'match', runs: piece.marks.map(({ from, to }) => lineRun(from, to)) },
  ];
}

/** Every patch closed in itself: a seam that two share is drawn twice in one place. */
function seams(piece: PaperPiece): readonly PathItem[] {
  return piece.patches.map(({ outline }) => ({ kind: 'path', class: 'sew', runs: [outlineRun(outline)] }));
}

function words(patch: PaperPatch, turned: number): readonly Item[] {
  return patchWords(flatten(patch.outline, { side: 'inside', within: 0.01 }), patch, turned);
}

/** "to B" in the allowance, where there is room along the edge. */
function neighbour(
  { marks }: PaperPiece,
  { from, to, middle, outward, units }: Neighbour,
  turned: number,
): readonly TextItem[] {
  const text = units.length === 0 ? 'outside' : `to ${units.join(', ')}`;
  const half = text.length * NEIGHBOUR_SIZE * 0.3;
  if (distance(from, to) < 0.6 + 2 * half || marks.some((mark) => distance(mark.from, middle) < half + 0.1)) {
    return [];
  }
  const [x, y] = subtract(to, from);
  const along = (Math.atan2(y, x) * 180) / Math.PI;
  return [
    {
      kind: 'text',
      class: 'plain',
      text,
      at: add(middle, scale(outward, 0.12)),
      size: NEIGHBOUR_SIZE,
      anchor: 'middle',
      turn: readable(along, turned),
    },
  ];
}
