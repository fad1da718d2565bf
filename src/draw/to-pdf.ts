/**
 * Drawings as pages of one PDF, at true scale: the same display lists that to-svg.ts writes. Lines and fills are written as PDF's own
 * operators, whose y counts upwards as a drawing's does; the library keeps pages, faces, patterns and the file together.
 */
import { jsPDF } from 'jspdf';
import { arcOf, type CentredArc, onArc } from '../shape/arc.ts';
import type { Point } from '../shape/point.ts';
import {
  type Box,
  type Drawing,
  type Item,
  type PathItem,
  type Run,
  rectangle,
  type TextItem,
} from './display-list.ts';
import { LINE_STYLES, type LineStyle, PAPER_INK, TEXT_WEIGHT } from './drawing-style.ts';
import { inkOn } from './ink.ts';
import { paperText, paperTextWidth } from './paper-text.ts';
import { type Pattern, patternOf, printInk, scaledTile } from './prints.ts';

/** The faces that are embedded, so that a page prints alike everywhere: the bytes of the files in fonts/. */
export interface PaperFaces {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface PdfInput {
  readonly title: string;
  /** One page each, as large as its box. */
  readonly pages: readonly Drawing[];
  /** PDF points to one unit of the drawings: 72 where they are in inches. */
  readonly scale: number;
  readonly faces: PaperFaces;
  /** Called after each page with how many are done. */
  readonly onPage?: (done: number) => void;
}

/** Line widths and dashes of a class are in pixels, 96 to the inch. */
const POINTS_A_PIXEL = 0.75;
/** From the middle of a line of text down to where its letters stand, as part of its size: half the height of a capital. */
const BASELINE = 0.357;
const FACE = 'NotoSans';

/** @returns the bytes of the file */
export function toPdf(input: PdfInput): Uint8Array {
  const [first] = input.pages;
  if (first === undefined) {
    throw new RangeError('a PDF needs a page; there is nothing to print');
  }
  const doc = new jsPDF({ unit: 'pt', ...pageOf(first, input.scale), compress: true, putOnlyUsedFonts: true });
  doc.setProperties({ title: input.title, creator: 'Yardwright' });
  // Neither a clock nor chance: the same plan gives the same file.
  doc.setCreationDate(new Date(0));
  doc.setFileId('0'.repeat(32));
  addFace(doc, 'normal', input.faces.regular);
  addFace(doc, 'bold', input.faces.bold);
  const patterns = new Map<string, string>();
  input.pages.forEach((page, index) => {
    if (index > 0) {
      const { format, orientation } = pageOf(page, input.scale);
      doc.addPage(format, orientation);
    }
    new PageWriter(doc, page, input.scale, patterns).write(page.items);
    input.onPage?.(index + 1);
  });
  return new Uint8Array(doc.output('arraybuffer'));
}

type Page = { readonly format: [number, number]; readonly orientation: 'portrait' | 'landscape' };

function pageOf({ box }: Drawing, scale: number): Page {
  const [width, height] = [box.width * scale, box.height * scale];
  return { format: [width, height], orientation: width > height ? 'landscape' : 'portrait' };
}

function addFace(doc: jsPDF, style: 'normal' | 'bold', bytes: Uint8Array): void {
  let text = '';
  for (let at = 0; at < bytes.length; at += 4096) {
    text += String.fromCharCode(...bytes.subarray(at, at + 4096));
  }
  doc.addFileToVFS(`${FACE}-${style}.ttf`, btoa(text));
  doc.addFont(`${FACE}-${style}.ttf`, FACE, style);
}

/** Raw operators, which the library's types leave out. */
const rawWriter = (doc: jsPDF): ((operators: string) => void) =>
  (doc.internal as unknown as { write: (text: string) => void }).write;

class PageWriter {
  private readonly raw: (operators: string) => void;
  private readonly doc: jsPDF;
  private readonly box: Box;
  private readonly scale: number;
  private readonly spacing: number;
  private readonly patterns: Map<string, string>;

  constructor(doc: jsPDF, page: Drawing, scale: number, patterns: Map<string, string>) {
    this.raw = rawWriter(doc);
    this.doc = doc;
    this.box = page.box;
    this.scale = scale;
    this.spacing = page.printSpacing * scale;
    this.patterns = patterns;
  }

  write(items: readonly Item[]): void {
    for (const item of items) {
      switch (item.kind) {
        case 'path':
          this.path(item);
          break;
        case 'text':
          this.text(item);
          break;
        case 'group':
          this.group(item.items, item.clip);
      }
    }
  }

  private group(items: readonly Item[], clip: Box | undefined): void {
    if (clip === undefined) {
      this.write(items);
      return;
    }
    const [start, ...rest] = rectangle(clip.left, clip.bottom, clip.width, clip.height);
    const run: Run = { start: start!, steps: rest.map((to) => ({ to })), closed: true };
    this.raw(`q\n${this.runText(run)} W n`);
    this.write(items);
    this.raw('Q');
  }

  private path(item: PathItem): void {
    const style = LINE_STYLES[item.class];
    const runs = item.runs.map((run) => this.runText(run)).join('\n');
    const fill = fillText(item, style);
    const stroke = strokeText(item, style);
    const pattern = item.fill === undefined ? null : patternOf(item.fill);
    if (pattern !== null) {
      // The print lies over plain colour, so that no seam shows where its tiles meet.
      this.raw(`q ${fill}\n${runs} f /Pattern cs /${this.patternName(pattern)} scn\n${runs} f Q`);
    }
    const paint = fill === '' || pattern !== null ? (stroke === '' ? 'n' : 'S') : stroke === '' ? 'f' : 'B';
    this.raw(`q ${pattern === null ? fill : ''}${stroke}\n${runs} ${paint} Q`);
  }

  private runText({ start, steps, closed }: Run): string {
    const parts = [`${this.at(start)} m`];
    let from = start;
    for (const { to, arc } of steps) {
      const centred =
        arc === undefined
          ? null
          : arcOf({
              from,
              to,
              arc: { radius: arc.radius, large: arc.large, turn: arc.clockwise ? 'clockwise' : 'anticlockwise' },
            });
      parts.push(centred === null ? `${this.at(to)} l` : this.curves(centred, to));
      from = to;
    }
    return `${parts.join(' ')}${closed ? ' h' : ''}`;
  }

  /** An arc as cubic curves of an eighth of a turn at most, each within 4e-6 of its radius. */
  private curves(arc: CentredArc, to: Point): string {
    const count = Math.max(1, Math.ceil(Math.abs(arc.sweep) / (Math.PI / 4)));
    const part = arc.sweep / count;
    const reach = (4 / 3) * Math.tan(part / 4) * arc.radius;
    return Array.from({ length: count }, (_, i) => {
      const [a, b] = [arc.start + i * part, arc.start + (i + 1) * part];
      const [start, end] = [onArc(arc, a), i === count - 1 ? to : onArc(arc, b)];
      const first: Point = [start[0] - reach * Math.sin(a), start[1] + reach * Math.cos(a)];
      const second: Point = [end[0] + reach * Math.sin(b), end[1] - reach * Math.cos(b)];
      return `${this.at(first)} ${this.at(second)} ${this.at(end)} c`;
    }).join(' ');
  }

  private text(item: TextItem): void {
    const { doc, scale } = this;
    const isBold = TEXT_WEIGHT[item.class] >= 600;
    const size = item.size * scale;
    const text = paperText(item.text);
    if (text === '') {
      return;
    }
    const width = paperTextWidth(item.text, size, isBold);
    const back = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
    const angle = item.turn ?? 0;
    const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
    const [x, y] = [(item.at[0] - this.box.left) * scale, (item.at[1] - this.box.bottom) * scale];
    const drop = BASELINE * size;
    const start: Point = [x - back * c + drop * s, y - back * s - drop * c];
    doc.setFont(FACE, isBold ? 'bold' : 'normal');
    doc.setFontSize(size);
    const put = (options: object): void => {
      doc.text(text, start[0], this.box.height * scale - start[1], { angle, baseline: 'alphabetic', ...options });
    };
    if (item.on !== undefined) {
      doc.setDrawColor(item.on);
      doc.setLineWidth(size * 0.22);
      doc.setLineJoin('round');
      put({ renderingMode: 'stroke' });
    }
    doc.setTextColor(item.on === undefined ? PAPER_INK.ink : inkOn(item.on));
    put({ renderingMode: 'fill' });
  }

  /** Each pattern is made once a document, when it is first wanted. */
  private patternName(pattern: Pattern): string {
    const key = `${pattern.key}-${num(this.spacing)}`;
    const known = this.patterns.get(key);
    if (known !== undefined) {
      return known;
    }
    const { doc, spacing } = this;
    const [c, s] = [Math.cos((pattern.turn * Math.PI) / 180), Math.sin((pattern.turn * Math.PI) / 180)];
    const lines = scaledTile(pattern.print, spacing)
      .map(({ start, steps }) => [`${pair(start)} m`, ...steps.map(({ to }) => `${pair(to)} l`)].join(' '))
      .join(' ');
    let name = '';
    doc.advancedAPI((advanced) => {
      const matrix = advanced.Matrix(c, s, -s, c, 0, 0);
      const tile = advanced.TilingPattern([0, 0, spacing, spacing], spacing, spacing, undefined, matrix);
      advanced.beginTilingPattern(tile);
      this.raw(`${rgb(printInk(pattern.colour))} RG ${num(POINTS_A_PIXEL)} w 1 J ${lines} S`);
      advanced.endTilingPattern(key, tile);
      name = (tile as unknown as { id: string }).id;
    });
    this.patterns.set(key, name);
    return name;
  }

  private at(point: Point): string {
    return pair([(point[0] - this.box.left) * this.scale, (point[1] - this.box.bottom) * this.scale]);
  }
}

function fillText(item: PathItem, style: LineStyle): string {
  if (item.fill !== undefined) {
    return `${rgb(item.fill.colour)} rg `;
  }
  return style.fill === undefined || style.fill === 'none' ? '' : `${rgb(PAPER_INK[style.fill])} rg `;
}

function strokeText(item: PathItem, style: LineStyle): string {
  if (style.stroke === 'none' && item.ink === undefined) {
    return '';
  }
  const colour = item.ink ?? PAPER_INK[style.stroke === 'none' ? 'ink' : style.stroke];
  const dash = (style.dash ?? []).map((length) => num(length * POINTS_A_PIXEL)).join(' ');
  return `${rgb(colour)} RG ${num(style.width * POINTS_A_PIXEL)} w 1 J 1 j [${dash}] 0 d`;
}

/** A thousandth of a point is finer than any printer. */
const num = (value: number): string => `${Math.round(value * 1e4) / 1e4 + 0}`;
const pair = (point: Point): string => `${num(point[0])} ${num(point[1])}`;

function rgb(colour: string): string {
  return [1, 3, 5].map((at) => num(Number.parseInt(colour.slice(at, at + 2), 16) / 255)).join(' ');
}
