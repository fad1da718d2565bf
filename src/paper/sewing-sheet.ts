/** What stands beside her at the machine: each unit step by step, how the units are joined, and the finished block from both sides. */
import { joinOrder } from '../cutting/join-order.ts';
import { type Drawing, placed } from '../draw/display-list.ts';
import { drawBlock } from '../draw/draw-block.ts';
import { formatLength } from '../quilt/format-length.ts';
import { convert } from '../quilt/measure.ts';
import type { Block, LengthUnit, Quilt, Scheme } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { joinPart } from './join-picture.ts';
import { clothsOf } from './make-pieces.ts';
import { words } from './mark-items.ts';
import { PageFlow, type Part } from './page-flow.ts';
import { type PaperSize, sheetSize } from './paper-size.ts';
import type { PaperPiece } from './pieces.ts';
import { sewingSteps } from './sewing-steps.ts';
import { stepPart } from './step-picture.ts';
import { textPart } from './text-part.ts';

export interface SewingInput {
  readonly quilt: Quilt;
  readonly scheme: Scheme;
  readonly shown: LengthUnit;
  readonly paper: PaperSize;
  /** All foundations of the quilt. */
  readonly foundations: readonly PaperPiece[];
}

const COLUMNS = 4;
const BLOCK = 3.3;
const NO_CLOTH = '#d8d4cc';

/** General, before the first unit. */
const RULES: readonly string[] = [
  'Pictures show the printed side of the paper, the mirror image of the finished front; cloth lies under it and shows through pale. Dashed: the patch as it lies before it is flipped, right sides together with what is sewn already. The thick line is the seam: sew it from 1/4 in (6 mm) before its start to 1/4 in past its end (practice). The small arrow at the seam is the way to flip and press.',
  'On freezer paper fold the paper back along the line and sew beside the fold, not through the paper.',
  'Within a unit sewn on paper press toward the patch just added, and trim the seam to the allowance before you flip; the long joins are pressed open (practice). Unplug the iron when you leave it.',
];

export function sewingSheet(input: SewingInput): readonly Drawing[] {
  const { quilt, paper, foundations } = input;
  const flow = new PageFlow(sheetSize(paper, 'portrait'), `${quilt.name}: sewing sheet`);
  flow.add(textPart(`${quilt.name}: sewing sheet`, flow.width, { points: 18, bold: true }));
  flow.space(0.06);
  for (const rule of foundations.length > 0 ? RULES : RULES.slice(-1))
    flow.add(textPart(rule, flow.width, { points: 9, indent: 0.16, sign: '·' }));
  for (const block of quilt.blocks) {
    flow.space(0.2);
    flow.add(
      textPart(block.count === 1 ? block.name : `${block.name}, ${block.count} in the quilt`, flow.width, {
        points: 14,
        bold: true,
        keeps: true,
      }),
    );
    flow.add(finished(flow.width, input, block));
    for (const piece of foundations.filter((each) => each.block === block.name)) addUnit(flow, piece);
    addJoins(flow, input, block);
  }
  return flow.drawings('How the units are sewn and joined.');
}

function addUnit(flow: PageFlow, piece: PaperPiece): void {
  flow.space(0.18);
  flow.add(
    textPart(`${piece.name}, ${piece.needed} in the quilt`, flow.width, { points: 11.5, bold: true, keeps: true }),
    gap,
  );
  const steps = sewingSteps(piece);
  addRows(
    flow,
    steps.map((step) => (width: number) => stepPart(piece, step, width)),
  );
  flow.add(
    textPart(
      'Then trim paper and cloth on the outer dashed line of the foundation, the allowance beyond the seam.',
      flow.width,
      { points: 8.5 },
    ),
  );
}

function addJoins(flow: PageFlow, { quilt, scheme, shown }: SewingInput, block: Block): void {
  const units = unitsOf(block, quilt.unit);
  if (block.loose === true || (units.every(({ repeat }) => repeat.count === 1) && units.length === 1)) return;
  const order = joinOrder(units);
  if (order.steps.length === 0) return;
  flow.space(0.18);
  flow.add(textPart(`Joining ${block.name}`, flow.width, { points: 11.5, bold: true, keeps: true }));
  flow.add({ ...textPart('Seen from the front.', flow.width, { points: 8.5 }), keeps: true }, gap);
  const colourOf = (role: string): string => clothsOf(quilt, scheme, role)[0]?.colour ?? NO_CLOTH;
  const length = (size: number): string => formatLength(convert(size, quilt.unit, shown), shown);
  addRows(
    flow,
    order.steps.map((step) => (width: number) => joinPart(order, step, width, colourOf, length)),
  );
  if (order.apart.length > 0) {
    flow.add(
      textPart('Not all pieces of this block meet, so it cannot be joined as drawn.', flow.width, {
        points: 9,
        bold: true,
      }),
    );
  }
}

const gap: Part = { height: 0.06, items: () => [], keeps: true };

/** Pictures side by side, read row by row. */
function addRows(flow: PageFlow, makers: readonly ((width: number) => Part)[]): void {
  const wide = flow.width / COLUMNS;
  for (let start = 0; start < makers.length; start += COLUMNS) {
    const row = makers.slice(start, start + COLUMNS).map((make) => make(wide - 0.12));
    flow.add({
      height: Math.max(...row.map(({ height }) => height)),
      items: (left, top) => row.flatMap((part, i) => part.items(left + i * wide, top)),
    });
  }
}

/** The block from the front, and from the back, where it is its own mirror image. */
function finished(width: number, { quilt, scheme }: SewingInput, block: Block): Part {
  const at = (textSize: number): Drawing => drawBlock({ quilt, scheme, block, blanks: [], textSize });
  // Text is to be so large on the page, whatever the block's size.
  const rough = at(1).box;
  const drawing = at((6.5 / 72) * (Math.max(rough.width, rough.height) / BLOCK));
  const { box, items } = drawing;
  const times = BLOCK / Math.max(box.width, box.height);
  const tall = box.height * times;
  const middle = [box.left + box.width / 2, box.bottom + box.height / 2] as const;
  return {
    height: tall + 0.28,
    items: (left, top) =>
      [false, true].flatMap((mirrored) => {
        const x = left + width * (mirrored ? 0.75 : 0.25);
        const y = top - tall / 2;
        const by = [x - (mirrored ? -1 : 1) * middle[0] * times, y - middle[1] * times] as const;
        return [
          ...items.map((item) => placed(item, { mirrored, scale: times, by })),
          words({
            text: mirrored ? 'from the back' : 'from the front',
            at: [x, top - tall - 0.12],
            size: 8 / 72,
            anchor: 'middle',
          }),
        ];
      }),
  };
}
