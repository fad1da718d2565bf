/** Foundations or templates as sheets to print. */
import { type Drawing, placed } from '../draw/display-list.ts';
import type { PlanJob } from '../plan/answerer.ts';
import { drawPiece } from './draw-piece.ts';
import { type PackedSheet, packSheets } from './pack-sheets.ts';
import type { FoundationPaper } from './paper-choice.ts';
import { PAPER_NAMES, type PaperSize } from './paper-size.ts';
import type { PaperPiece } from './pieces.ts';
import { framedSheet } from './sheet-frame.ts';
import { tilePages } from './tile-pages.ts';
import { tilePiece } from './tile-piece.ts';

export interface PiecePagesInput {
  /** All of one kind. */
  readonly pieces: readonly PaperPiece[];
  readonly quiltName: string;
  readonly paper: PaperSize;
  readonly foundation: FoundationPaper;
  readonly plan: PlanJob;
}

/** Whole pieces first, packed; then the sheets of those that must be parted, copy by copy. */
export async function piecePages(input: PiecePagesInput): Promise<readonly Drawing[]> {
  const { pieces, paper, quiltName } = input;
  const kind = pieces[0]?.kind;
  if (kind === undefined) return [];
  const { sheets, tooLarge } = await packSheets(pieces, paper, input.plan);
  const heading = `${quiltName}: ${kind === 'foundation' ? 'foundations' : 'templates'}`;
  const parted = tooLarge.flatMap((piece) => {
    const tiling = tilePiece(piece, paper);
    return Array.from({ length: piece.copies }, (_, i) =>
      tilePages({
        tiling,
        paper,
        heading,
        copy: piece.copies === 1 ? '' : `copy ${i + 1} of ${piece.copies}`,
        notes: [...handling(input, kind), ...keyOf([piece])],
      }),
    ).flat();
  });
  return [...sheets.map((sheet, i) => packedPage(input, sheet, heading, i, sheets.length)), ...parted];
}

function packedPage(input: PiecePagesInput, sheet: PackedSheet, heading: string, index: number, of: number): Drawing {
  const { paper } = input;
  const own = [...new Set(sheet.placed.map(({ piece }) => piece))];
  const names = own.map((piece) => piece.name).join(', ');
  return framedSheet({
    paper,
    orientation: sheet.orientation,
    heading: `${heading}: ${names}`,
    count: `sheet ${index + 1} of ${of}`,
    gauges: sheet.gauges,
    notesAt: sheet.notesAt ?? null,
    notes: [...handling(input, own[0]!.kind), ...keyOf(own)],
    description: `${names} on ${PAPER_NAMES[paper]}, at true scale.`,
    items: sheet.placed.map(({ piece, placing }) => ({
      kind: 'group',
      class: 'part',
      items: drawPiece(piece, placing.turn).map((item) => placed(item, placing)),
    })),
  });
}

function handling({ foundation }: PiecePagesInput, kind: PaperPiece['kind']): readonly string[] {
  const measure = 'Print at 100 %, not fitted to the page, and measure the boxes.';
  if (kind === 'template') {
    return [
      `${measure} Full line: seam. Dashed: cut. Templates show the right side: lay them on cloth right side up, the arrow along the print’s up; a dashed arrow is the straight grain.`,
    ];
  }
  const paper =
    foundation.kind === 'sewn'
      ? 'One each, sewn through on the printed side and torn away.'
      : `Freezer paper, printed on its dull side; iron its glossy side to the wrong side of the cloth. Sew beside it, not through it: each serves about ${foundation.uses} times.`;
  return [
    `${measure} Printed side: the mirror image of the finished front. Sew on full lines in the order of the numbers, trim on the dashed line. Short lines across the allowance meet those of the neighbours. Arrows: the print’s up. ${paper}`,
  ];
}

/** "A1 Long points, light: Noon gold · A2 …", a line for each piece. */
function keyOf(pieces: readonly PaperPiece[]): readonly string[] {
  return pieces.map((piece) => {
    const count =
      piece.kind === 'foundation'
        ? `${piece.needed} in the quilt, ${piece.copies} printed`
        : `${piece.needed} in the quilt`;
    const patches = piece.patches.map(
      ({ name, role, cloths }) => `${name} ${role}: ${cloths.join(' or ') || 'no cloth'}`,
    );
    return `${piece.name}, ${piece.block} (${count}): ${patches.join(' · ')}.`;
  });
}
