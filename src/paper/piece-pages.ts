/** Foundations or templates as sheets to print. */
import { type Drawing, placed } from '../draw/display-list.ts';
import type { PlanJob } from '../plan/answerer.ts';
import { convert } from '../quilt/measure.ts';
import type { LengthUnit } from '../quilt/quilt.ts';
import { drawPiece } from './draw-piece.ts';
import { type PackedSheet, packSheets } from './pack-sheets.ts';
import { PageFlow } from './page-flow.ts';
import type { FoundationPaper } from './paper-choice.ts';
import { PAPER_NAMES, type PaperSize, sheetSize } from './paper-size.ts';
import type { PaperPatch, PaperPiece } from './pieces.ts';
import { type RulerShape, rulerShape } from './ruler-shape.ts';
import { framedSheet } from './sheet-frame.ts';
import { textPart } from './text-part.ts';
import { tilePages } from './tile-pages.ts';
import { tilePiece } from './tile-piece.ts';
import { writeRounded } from './write-mark.ts';

export interface PiecePagesInput {
  /** All of one kind. */
  readonly pieces: readonly PaperPiece[];
  readonly quiltName: string;
  readonly paper: PaperSize;
  readonly foundation: FoundationPaper;
  readonly plan: PlanJob;
  /** In inches. */
  readonly allowance: number;
  readonly shown: LengthUnit;
}

/** Whole pieces first, packed; then the sheets of those that must be parted, copy by copy. */
export async function piecePages(input: PiecePagesInput): Promise<readonly Drawing[]> {
  const { pieces, paper, quiltName } = input;
  const kind = pieces[0]?.kind;
  if (kind === undefined) return [];
  const { sheets, tooLarge } = await packSheets(pieces, paper, input.plan);
  const heading = `${quiltName}: ${kind === 'foundation' ? 'foundations' : 'templates'}`;
  const ruled = kind === 'template' ? tooLarge.flatMap((piece) => ruledOf(piece, input.allowance)) : [];
  const parted = tooLarge
    .filter((piece) => !ruled.some((each) => each.piece === piece))
    .flatMap((piece) => {
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
  const whole = sheets.map((sheet, i) => packedPage(input, sheet, heading, i, sheets.length));
  return [...whole, ...parted, ...ruledPage(input, heading, ruled)];
}

interface Ruled {
  readonly piece: PaperPiece;
  readonly shape: RulerShape;
}

/** A template that no sheet holds and a ruler cuts as well is told and not drawn. */
function ruledOf(piece: PaperPiece, allowance: number): readonly Ruled[] {
  const shape = rulerShape(piece.patches[0]!, allowance);
  return shape === null ? [] : [{ piece, shape }];
}

function ruledPage(input: PiecePagesInput, heading: string, ruled: readonly Ruled[]): readonly Drawing[] {
  if (ruled.length === 0) return [];
  const flow = new PageFlow(sheetSize(input.paper, 'portrait'), heading);
  const say = (inches: number): string =>
    `${writeRounded(convert(inches, 'in', input.shown), input.shown, input.shown, 'up')} ${input.shown}`;
  flow.add(textPart('Cut with the ruler', flow.width, { points: 14, bold: true, keeps: true }));
  flow.add(
    textPart(
      'Larger than a sheet, and as easily cut without a template. Sizes hold the seam allowance; how many and from where stands in the cutting booklet.',
      flow.width,
      { points: 9 },
    ),
  );
  flow.space(0.1);
  for (const { piece, shape } of ruled) {
    const [{ role, cloths }] = piece.patches as readonly [PaperPatch];
    const [wide, tall] = shape.sides;
    const size =
      shape.kind === 'oblong'
        ? `${say(wide)} × ${say(tall)}`
        : `a square of ${say(wide)}, cut once from corner to corner`;
    flow.add(
      textPart(
        `${piece.name}, ${piece.block}: ${size}. ${role}, ${cloths.join(' or ') || 'no cloth'}; ${piece.needed} in the quilt.`,
        flow.width,
        { points: 10, indent: 0.16, sign: '·' },
      ),
    );
  }
  return flow.drawings('Templates that a ruler replaces.');
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

function handling({ foundation, pieces }: PiecePagesInput, kind: PaperPiece['kind']): readonly string[] {
  const measure = 'Print at 100 %, not fitted to the page, and measure the boxes.';
  if (kind === 'template') {
    return [
      `${measure} Full line: seam. Dashed: cut. Templates show the right side: lay them on cloth right side up, the arrow along the print’s up; a dashed arrow is the straight grain.`,
    ];
  }
  const someCutAs = pieces.some(({ patches }) => patches.some(({ name }) => name.includes('(')));
  const cutAs = someCutAs ? ' In brackets: the blank that serves, where it bears another patch’s name.' : '';
  const paper =
    foundation.kind === 'sewn'
      ? 'One each, sewn through on the printed side and torn away.'
      : `Freezer paper, printed on its dull side; iron its glossy side to the wrong side of the cloth. Sew beside it, not through it: each serves about ${foundation.uses} times.`;
  return [
    `${measure} Printed side: the mirror image of the finished front. Sew on full lines in the order of the numbers, trim on the dashed line. Short lines across the allowance meet those of the neighbours. Arrows: the print’s up.${cutAs} ${paper}`,
  ];
}

/** "A1, A4 Long points: Noon gold · A2 …", a line for each piece. */
function keyOf(pieces: readonly PaperPiece[]): readonly string[] {
  return pieces.map((piece) => {
    const count =
      piece.kind === 'foundation'
        ? `${piece.needed} in the quilt, ${piece.copies} printed`
        : `${piece.needed} in the quilt`;
    const names = new Map<string, string[]>();
    for (const { name, role, cloths } of piece.patches) {
      const words = `${role}: ${cloths.join(' or ') || 'no cloth'}`;
      names.set(words, [...(names.get(words) ?? []), name]);
    }
    const patches = [...names].map(([words, own]) => `${own.join(', ')} ${words}`);
    return `${piece.name}, ${piece.block} (${count}): ${patches.join(' · ')}.`;
  });
}
