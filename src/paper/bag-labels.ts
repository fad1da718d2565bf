/** Labels for the bags that blanks go into as they are cut: a sheet of eight, ten or twelve, to be cut apart. */
import { type Drawing, type Item, polygonRun, rectangle } from '../draw/display-list.ts';
import { paperTextWidth } from '../draw/paper-text.ts';
import { shortName } from '../draw/short-name.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { type BagContents, type BagInput, type BagRow, bagContents } from './bag-contents.ts';
import { shortened, swatch, words } from './mark-items.ts';
import { LABEL_GRIDS, type LabelChoice } from './paper-choice.ts';
import { MARGIN, type PaperSize, sheetSize } from './paper-size.ts';

export interface LabelsInput extends BagInput {
  readonly paper: PaperSize;
  readonly labels: LabelChoice;
}

interface Label {
  readonly title: string;
  /** "2 of 3". */
  readonly number: string;
  readonly rows: readonly BagRow[];
}

const PAD = 0.12;
const HEAD = 0.42;
/** What rows may be set in, in points. */
const ROW_SIZES: readonly number[] = [11, 9.5, 8.5, 7.5, 6.5, 5.8];
const LINE = 1.42;
/** Narrower than this, a label has one column of rows. */
const TWO_COLUMNS = 3.2;

export function bagLabels(input: LabelsInput): readonly Drawing[] {
  const { quilt, paper } = input;
  const { perSheet, by } = input.labels;
  const sheet = sheetSize(paper, 'portrait');
  const { columns, rows } = LABEL_GRIDS[perSheet];
  const [width, height] = [(sheet.width - 2 * MARGIN) / columns, (sheet.height - 2 * MARGIN) / rows];
  const labels = bagContents(input).flatMap((bag) => labelsOf(quilt, bag, by));
  const drawn = labels.flatMap((label) => labelItems(quilt, label, width, height));
  const pages = Math.ceil(drawn.length / perSheet);
  return Array.from({ length: pages }, (_, page) => ({
    title: `${quilt.name}: bag labels`,
    description: `Sheet ${page + 1} of ${pages}, ${perSheet} labels to a sheet.`,
    box: { left: 0, bottom: 0, ...sheet },
    printSpacing: 0.06,
    items: drawn.slice(page * perSheet, (page + 1) * perSheet).flatMap((items, i) => {
      const left = MARGIN + (i % columns) * width;
      const bottom = sheet.height - MARGIN - (Math.floor(i / columns) + 1) * height;
      return [
        { kind: 'path', class: 'rule', runs: [polygonRun(rectangle(left, bottom, width, height))] } as const,
        ...items(left, bottom),
      ];
    }),
  }));
}

function labelsOf(quilt: Quilt, { bag, rows }: BagContents, by: LabelChoice['by']): readonly Label[] {
  const block = quilt.blocks.find(({ id }) => id === bag.block);
  const number = block === undefined || block.count === 1 ? '' : `${bag.copy} of ${block.count}`;
  if (by === 'block' || block === undefined) {
    return [{ title: bag.name, number, rows }];
  }
  const units = [...new Set(rows.map((row) => unitOf(row, bag.block)))];
  return units.map((unit) => ({
    title: `${bag.name}, ${unit}`,
    number,
    rows: rows.filter((row) => unitOf(row, bag.block) === unit),
  }));
}

/** A blank that serves several units goes with the first of this block's. */
const unitOf = ({ blank }: BagRow, block: string | null): string =>
  blank.uses.find((use) => use.block === block)?.unit ?? blank.id;

/** One label, or as many as its rows need. */
function labelItems(
  quilt: Quilt,
  label: Label,
  width: number,
  height: number,
): readonly ((left: number, bottom: number) => readonly Item[])[] {
  const columns = width >= TWO_COLUMNS ? 2 : 1;
  const room = height - 2 * PAD - HEAD;
  const rowsAt = (points: number): number => Math.floor(room / ((points / 72) * LINE));
  const points = ROW_SIZES.find((each) => rowsAt(each) * columns >= label.rows.length) ?? ROW_SIZES.at(-1)!;
  const used = rowsAt(points) >= label.rows.length ? 1 : columns;
  const perLabel = rowsAt(points) * used;
  const parts = Math.max(1, Math.ceil(label.rows.length / perLabel));
  const total = label.rows.reduce((sum, { count }) => sum + count, 0);
  return Array.from({ length: parts }, (_, part) => (left: number, bottom: number): readonly Item[] => {
    const [x, top] = [left + PAD, bottom + height - PAD];
    const inner = width - 2 * PAD;
    const size = points / 72;
    const own = label.rows.slice(part * perLabel, (part + 1) * perLabel);
    const perColumn = Math.ceil(own.length / used);
    const right = [label.number, parts > 1 ? `label ${part + 1} of ${parts}` : '']
      .filter((each) => each !== '')
      .join(', ');
    const taken = right === '' ? 0 : paperTextWidth(right, 8 / 72, false) + 0.1;
    return [
      words({
        text: shortened(label.title, inner - taken, 12 / 72, true),
        at: [x, top - 0.09],
        size: 12 / 72,
        bold: true,
      }),
      words({ text: right, at: [x + inner, top - 0.09], size: 8 / 72, anchor: 'end' }),
      words({
        text: shortened(`${quilt.name} · ${total} ${total === 1 ? 'blank' : 'blanks'}`, inner, 7 / 72, false),
        at: [x, top - 0.27],
        size: 7 / 72,
      }),
      ...own.flatMap((row, i) => {
        const column = Math.floor(i / perColumn);
        const wide = inner / used;
        const y = top - HEAD - ((i % perColumn) + 0.5) * size * LINE;
        return rowItems(quilt, row, x + column * wide, y, wide - 0.06, size);
      }),
    ];
  });
}

function rowItems(
  quilt: Quilt,
  { blank, cloth: id, count }: BagRow,
  x: number,
  y: number,
  width: number,
  size: number,
): readonly Item[] {
  const cloth = quilt.cloths.find((each) => each.id === id);
  const side = size * 1.15;
  const name = `${count} × ${shortName(blank.id)}`;
  const nameWidth = Math.max(paperTextWidth(name, size, true), size * 4.2);
  const start = x + side * 1.5 + size * 0.45;
  const rest = width - (start - x) - nameWidth - size * 0.6;
  return [
    ...swatch(cloth, [x, y - side / 2], side * 1.5, side, blank.directional),
    words({ text: name, at: [start, y], size, bold: true }),
    words({ text: shortened(cloth?.name ?? id, rest, size, false), at: [start + nameWidth + size * 0.6, y], size }),
  ];
}
