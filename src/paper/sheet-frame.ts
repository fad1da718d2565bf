/** What stands round the contents of every sheet: its heading, two boxes to measure, and a few lines that explain. */
import { type Box, type Drawing, type Item, polygonRun, rectangle, type TextItem } from '../draw/display-list.ts';
import type { Point } from '../shape/point.ts';
import { MARGIN, type Orientation, type PaperSize, type SheetSize, sheetSize } from './paper-size.ts';
import { wrapText } from './wrap-text.ts';

export const INCH_BOX = 1;
export const CM_BOX = 2 / 2.54;

const HEAD = 0.27;
const FOOT = 1.12;
const SMALL = 6.6 / 72;
const LINE = 1.25;

/** Where contents lie on a sheet whose foot holds the boxes and some words. */
export function bandArea(paper: PaperSize, orientation: Orientation): Box {
  const { width, height } = sheetSize(paper, orientation);
  return {
    left: MARGIN,
    bottom: MARGIN + FOOT,
    width: width - 2 * MARGIN,
    height: height - 2 * MARGIN - HEAD - FOOT,
  };
}

/** The whole sheet under the heading, where the boxes find room among the contents. */
export function fullArea(paper: PaperSize, orientation: Orientation): Box {
  const band = bandArea(paper, orientation);
  return { ...band, bottom: MARGIN, height: band.height + FOOT };
}

export interface FramedSheet {
  readonly paper: PaperSize;
  readonly orientation: Orientation;
  /** In the heading, at the left and at the right. */
  readonly heading: string;
  readonly count: string;
  /** Where the boxes stand; null: in the foot. */
  readonly gauges: Gauges | null;
  /** Explained in the foot, in small print; as many lines as there is room for. */
  readonly notes: readonly string[];
  /** Where they stand instead, where the sheet has no foot; null: nowhere. */
  readonly notesAt?: Box | null;
  /** How much of the foot's right end is taken by something else. */
  readonly notesShort?: number;
  readonly description: string;
  readonly items: readonly Item[];
}

/** Lower left corners. */
export interface Gauges {
  readonly inch: Point;
  readonly cm: Point;
}

/** The sheet as a drawing in inches. */
export function framedSheet(sheet: FramedSheet): Drawing {
  const size = sheetSize(sheet.paper, sheet.orientation);
  const gauges = sheet.gauges ?? { inch: [MARGIN, MARGIN], cm: [MARGIN + INCH_BOX + 0.12, MARGIN] };
  return {
    title: sheet.heading,
    description: sheet.description,
    box: { left: 0, bottom: 0, ...size },
    printSpacing: 0.12,
    items: [...sheet.items, ...heading(sheet, size), ...gaugeItems(gauges), ...notes(sheet, size)],
  };
}

function heading({ heading: words, count }: FramedSheet, { width, height }: SheetSize): readonly TextItem[] {
  const y = height - MARGIN - 0.09;
  const line = { kind: 'text', size: 9 / 72 } as const;
  return [
    { ...line, class: 'strong', text: words, at: [MARGIN, y], anchor: 'start' },
    { ...line, class: 'plain', text: count, at: [width - MARGIN, y], anchor: 'end' },
  ];
}

export function gaugeItems({ inch, cm }: Gauges): readonly Item[] {
  const box = ([x, y]: Point, side: number, text: string): readonly Item[] => [
    { kind: 'path', class: 'gauge', runs: [polygonRun(rectangle(x, y, side, side))] },
    { kind: 'text', class: 'plain', text, at: [x + side / 2, y + side / 2], size: 8 / 72, anchor: 'middle' },
  ];
  return [...box(inch, INCH_BOX, '1 in'), ...box(cm, CM_BOX, '2 cm')];
}

function notes(sheet: FramedSheet, size: SheetSize): readonly TextItem[] {
  const box = sheet.gauges === null ? footBox(sheet, size) : (sheet.notesAt ?? null);
  if (box === null) return [];
  const most = Math.floor(box.height / (SMALL * LINE));
  const wrapped = sheet.notes.flatMap((line) => wrapText(line, box.width, SMALL, false));
  const shown = wrapped.length > most ? [...wrapped.slice(0, most - 1), '…'] : wrapped;
  return shown.map((text, i) => ({
    kind: 'text',
    class: 'plain',
    text,
    at: [box.left, box.bottom + box.height - (i + 0.5) * SMALL * LINE],
    size: SMALL,
    anchor: 'start',
  }));
}

function footBox({ notesShort = 0 }: FramedSheet, { width }: SheetSize): Box {
  const left = MARGIN + INCH_BOX + CM_BOX + 0.3;
  return { left, bottom: MARGIN, width: width - MARGIN - notesShort - left, height: FOOT - 0.08 };
}
