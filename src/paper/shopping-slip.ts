/** What to ask for at the counter and what to bring from the shelf: on one page, or as long and narrow as a phone shows it. */
import { kept } from '../cutting/cloth-lengths.ts';
import { type Drawing, type Item, lineRun } from '../draw/display-list.ts';
import { paperTextWidth } from '../draw/paper-text.ts';
import { sayMoney } from '../plan/say-money.ts';
import { saySteps, stepShop } from '../plan/say-steps.ts';
import type { ClothTally, Tally } from '../plan/tally.ts';
import { formatClothLength } from '../quilt/format-length.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Cloth, LengthUnit, PrintKind, Quilt } from '../quilt/quilt.ts';
import { shortened, swatch, tickBox, words } from './mark-items.ts';
import { PageFlow, type Part } from './page-flow.ts';
import type { SlipChoice } from './paper-choice.ts';
import { type PaperSize, sheetSize } from './paper-size.ts';
import { textPart } from './text-part.ts';
import { wrapText } from './wrap-text.ts';
import { writeRounded } from './write-mark.ts';

export interface SlipInput {
  readonly quilt: Quilt;
  readonly tally: Tally;
  readonly shown: LengthUnit;
  readonly paper: PaperSize;
  readonly slip: SlipChoice;
}

/** As a phone shows it without zooming in; its length is that of what stands on it, up to what the file format allows. */
const PHONE = { width: 3.4, height: 190, margin: 0.16 };

const PRINTS: Readonly<Record<PrintKind, string>> = {
  'one-way': 'one-way print',
  'two-way': 'two-way print',
  check: 'check',
  tossed: 'tossed print',
  solid: 'solid',
};

export function shoppingSlip(input: SlipInput): readonly Drawing[] {
  const { quilt, tally, paper, slip } = input;
  const isNarrow = slip === 'narrow';
  const flow = isNarrow
    ? new PageFlow(PHONE, `${quilt.name}: shopping slip`, true, PHONE.margin)
    : new PageFlow(sheetSize(paper, 'portrait'), `${quilt.name}: shopping slip`);
  const scheme = quilt.schemes.find(({ id }) => id === quilt.scheme);
  flow.add(textPart(quilt.name, flow.width, { points: isNarrow ? 15 : 18, bold: true, keeps: true }));
  if (scheme !== undefined) {
    flow.add(textPart(`Colour scheme: ${scheme.name}`, flow.width, { points: 9.5 }));
  }
  const bought = tally.cloths.filter(({ buy }) => buy > 0);
  flow.space(0.12);
  flow.add(
    textPart(bought.length === 0 ? 'Nothing to buy' : 'To buy', flow.width, {
      points: 13,
      bold: true,
      keeps: bought.length > 0,
    }),
  );
  for (const line of bought) flow.add(...purchase(flow.width, input, line));
  if (tally.price !== null && bought.length > 0) flow.add(total(flow.width, tally, bought));
  const brought = tally.cloths.flatMap((line) => fromShelf(input, line));
  if (brought.length > 0) {
    flow.space(0.15);
    flow.add(textPart('From the shelf', flow.width, { points: 13, bold: true, keeps: true }));
    for (const { cloth, text } of brought) flow.add(shelfLine(flow.width, cloth, text));
  }
  flow.space(0.15);
  for (const text of advice(input, bought)) {
    flow.add(textPart(text, flow.width, { points: 9, indent: 0.16, sign: '·' }));
  }
  return flow.drawings('What to buy for the plan, and what to bring from the shelf.');
}

const TICK = 0.14;
/** Narrower than this, swatches are small. */
const WIDE = 5;

function purchase(width: number, { quilt, shown }: SlipInput, line: ClothTally): readonly Part[] {
  const cloth = quilt.cloths.find(({ id }) => id === line.cloth);
  const side = width < WIDE ? 0.4 : 0.62;
  const indent = TICK + 0.1 + side + 0.12;
  const step = cloth?.step;
  const length = formatClothLength(line.buy, quilt.unit, stepShop(step, quilt.unit));
  const steps = step === undefined || line.steps === null ? '' : ` (${saySteps(line.steps, step, quilt.unit)})`;
  const price = line.price === null ? '' : sayMoney(line.price, cloth?.price?.currency ?? null);
  const priceWidth = price === '' ? 0 : paperTextWidth(price, 11 / 72, false) + 0.1;
  const name = wrapText(line.name, width - indent - priceWidth, 11.5 / 72, true);
  const buy = wrapText(`${length}${steps}`, width - indent, 12 / 72, true);
  const detail = cloth === undefined ? [] : details(cloth, quilt, shown);
  const head: Part = {
    height: Math.max(0.56, 0.18 + 0.19 * name.length + 0.2 * buy.length),
    keeps: true,
    items: (left, top): readonly Item[] => [
      { kind: 'path', class: 'rule', runs: [lineRun([left, top], [left + width, top])] },
      tickBox([left, top - 0.1 - TICK], TICK),
      ...swatch(cloth, [left + TICK + 0.1, top - 0.07 - side * 0.75], side, side * 0.75, false),
      ...name.map((text, i) =>
        words({ text, at: [left + indent, top - 0.17 - i * 0.19], size: 11.5 / 72, bold: true }),
      ),
      words({ text: price, at: [left + width, top - 0.17], size: 11 / 72, anchor: 'end' }),
      ...buy.map((text, i) =>
        words({ text, at: [left + indent, top - 0.2 - 0.19 * name.length - i * 0.2], size: 12 / 72, bold: true }),
      ),
    ],
  };
  return [
    head,
    ...detail.map((text) => textPart(text, width, { points: 9, indent, keeps: true })),
    { height: 0.06, items: () => [] },
  ];
}

/** What the cloth is to be like, for whoever cuts it off the bolt. */
function details(cloth: Cloth, quilt: Quilt, shown: LengthUnit): readonly string[] {
  const width = `${writeRounded(lengthIn(quilt.unit, cloth.width), quilt.unit, shown, 'up')} ${shown}`;
  const up =
    cloth.print === 'one-way' || cloth.print === 'two-way'
      ? `, its up ${cloth.up === 'across' ? 'across the width' : 'along the selvage'}`
      : '';
  const { along, across } = kept(cloth);
  const washing = along === 1 && across === 1 ? [] : ['Shrinkage is counted in: wash it before you cut.'];
  return [`At least ${width} between the selvages; ${PRINTS[cloth.print]}${up}.`, ...washing];
}

function total(width: number, { price, currency }: Tally, bought: readonly ClothTally[]): Part {
  const unpriced = bought.filter((line) => line.price === null).map(({ name }) => name);
  const text = `Together${unpriced.length === 0 ? '' : ` but for ${unpriced.join(', ')}`}`;
  const sum = sayMoney(price ?? 0, currency);
  return {
    height: 0.32,
    items: (left, top) => [
      { kind: 'path', class: 'edge', runs: [lineRun([left, top], [left + width, top])] },
      words({
        text: shortened(text, width - paperTextWidth(sum, 13 / 72, true) - 0.1, 11 / 72, false),
        at: [left, top - 0.17],
        size: 11 / 72,
      }),
      words({ text: sum, at: [left + width, top - 0.17], size: 13 / 72, bold: true, anchor: 'end' }),
    ],
  };
}

function fromShelf(
  { quilt, shown }: SlipInput,
  line: ClothTally,
): readonly { readonly cloth: Cloth | undefined; readonly text: string }[] {
  const cloth = quilt.cloths.find(({ id }) => id === line.cloth);
  return line.pieces
    .filter(({ used }) => used > 0)
    .map(({ piece, used }) => {
      const own = cloth?.pieces?.find(({ id }) => id === piece);
      const say = (length: Cloth['width']): string =>
        writeRounded(lengthIn(quilt.unit, length), quilt.unit, shown, 'down');
      const size = own === undefined ? '' : `, ${say(own.width)} × ${say(own.length)} ${shown}`;
      return { cloth, text: `${used === 1 ? '' : `${used} × `}${line.name}, “${piece}”${size}` };
    });
}

function shelfLine(width: number, cloth: Cloth | undefined, text: string): Part {
  const lines = wrapText(text, width - 0.75, 10 / 72, false);
  return {
    height: 0.14 + 0.17 * lines.length,
    items: (left, top) => [
      tickBox([left, top - 0.2], TICK),
      ...swatch(cloth, [left + TICK + 0.1, top - 0.24], 0.36, 0.2, false),
      ...lines.map((line, i) => words({ text: line, at: [left + 0.75, top - 0.14 - i * 0.17], size: 10 / 72 })),
    ],
  };
}

function advice({ quilt }: SlipInput, bought: readonly ClothTally[]): readonly string[] {
  if (bought.length === 0) return [];
  const spares =
    quilt.spares === 0 ? 'no spare blanks' : `${quilt.spares} spare${quilt.spares === 1 ? '' : 's'} of each blank`;
  const unplaced = bought.some((line) => line.unplaced.length > 0);
  return [
    'Measure the width between the selvages before it is cut off: the plan holds for that width or more.',
    `Counted in: squaring up each cut end, and ${spares}.`,
    ...(unplaced ? ['Not everything could be planned: look at the plan before you buy.'] : []),
  ];
}
