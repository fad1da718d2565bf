/** The cutting booklet set on pages. */
import { type Drawing, type Item, lineRun, placed } from '../draw/display-list.ts';
import { drawLayout } from '../draw/draw-layout.ts';
import { paperTextWidth } from '../draw/paper-text.ts';
import { shortName } from '../draw/short-name.ts';
import { wholeLength } from '../draw/unroll.ts';
import type { Booklet, BookletCut, BookletLength, BookletStrip } from './booklet.ts';
import { type BookletInput, makeBooklet } from './make-booklet.ts';
import { shortened, swatch, tickBox, words } from './mark-items.ts';
import { PageFlow, type Part } from './page-flow.ts';
import { type PaperSize, sheetSize } from './paper-size.ts';
import { stripPicture } from './strip-picture.ts';
import { textPart } from './text-part.ts';
import { writeRounded } from './write-mark.ts';

/** The tallest and the widest that the picture of a whole cloth may be. */
const CLOTH_TALL = 2.7;
const CLOTH_TEXT = 6.5 / 72;
const TICK = 0.1;
const ROW = 0.165;
const ROW_SIZE = 8 / 72;

export function bookletPages(input: BookletInput & { readonly paper: PaperSize }): readonly Drawing[] {
  const booklet = makeBooklet(input);
  const flow = new PageFlow(sheetSize(input.paper, 'portrait'), booklet.title);
  addFirst(flow, booklet);
  for (const { title, lengths } of booklet.sittings) {
    if (title !== null) {
      flow.space(0.15);
      flow.add(textPart(title, flow.width, { points: 15, bold: true, keeps: true }));
    }
    for (const length of lengths) addLength(flow, input, length);
  }
  if (booklet.joins.length > 0) {
    flow.space(0.2);
    flow.add(textPart('Join up', flow.width, { points: 12, bold: true, keeps: true }));
    flow.add(...booklet.joins.map((line) => textPart(line, flow.width, { points: 9, indent: 0.15 })));
  }
  return flow.drawings('How the cloth is cut, strip by strip.');
}

function addFirst(flow: PageFlow, { title, care, explained }: Booklet): void {
  const line = { points: 9, indent: 0.18, sign: '·' };
  flow.add(textPart(title, flow.width, { points: 18, bold: true }));
  flow.space(0.1);
  flow.add(textPart('Care at the table', flow.width, { points: 11, bold: true, keeps: true }));
  flow.add(...care.map((words) => textPart(words, flow.width, { ...line, sign: '!' })));
  flow.space(0.1);
  flow.add(textPart('How to read it', flow.width, { points: 11, bold: true, keeps: true }));
  flow.add(...explained.map((words) => textPart(words, flow.width, line)));
}

function addLength(flow: PageFlow, input: BookletInput, length: BookletLength): void {
  const picture = clothPicture(flow, input, length);
  flow.space(0.22);
  flow.add(clothHead(flow, length), { ...picture, keeps: true }, gap(0.06));
  for (const words of length.before) flow.add(textPart(words, flow.width, { points: 9, indent: 0.15 }));
  for (const words of length.alike) flow.add(textPart(words, flow.width, { points: 9, indent: 0.15, sign: '*' }));
  for (const strip of length.strips) addStrip(flow, input, length, strip);
}

const gap = (height: number): Part => ({ height, items: () => [] });

function clothHead(flow: PageFlow, { cloth, title, extent }: BookletLength): Part {
  return {
    height: 0.36,
    keeps: true,
    items: (left, top) => [
      { kind: 'path', class: 'rule', runs: [lineRun([left, top], [left + flow.width, top])] },
      ...swatch(cloth, [left, top - 0.3], 0.34, 0.22, false),
      words({
        text: shortened(title, flow.width * 0.55, 13 / 72, true),
        at: [left + 0.45, top - 0.19],
        size: 13 / 72,
        bold: true,
      }),
      words({ text: extent, at: [left + flow.width, top - 0.19], size: 8.5 / 72, anchor: 'end' }),
    ],
  };
}

/** The same drawing as on screen, as wide as its height lets it be. */
function clothPicture(
  flow: PageFlow,
  { quilt, cutList, shown }: BookletInput,
  { cloth, length, mistaken, strips }: BookletLength,
): Part {
  const blanks = cutList.groups.flatMap((group) => group.blanks);
  const steps = strips.flatMap((strip) => (strip.steps === null ? [] : [strip.steps]));
  const at = (scale: number): Drawing =>
    drawLayout({
      cloth,
      length,
      blanks,
      steps,
      mistaken,
      whole: wholeLength(length),
      textSize: CLOTH_TEXT / scale,
      write: (value) => `${writeRounded(value, quilt.unit, shown, 'up')} ${shown}`,
    });
  // Margins are of the text's size, so the scale that fits is found by trying.
  let scale = flow.width / length.jobCloth.width;
  let drawing = at(scale);
  for (let tries = 0; tries < 6; tries++) {
    const over = Math.max((drawing.box.width * scale) / flow.width, (drawing.box.height * scale) / CLOTH_TALL);
    if (over <= 1.0005) break;
    scale /= over;
    drawing = at(scale);
  }
  const { box, items } = drawing;
  const height = box.height * scale;
  return {
    height,
    items: (left, top) =>
      items.map((item) => placed(item, { scale, by: [left - box.left * scale, top - height - box.bottom * scale] })),
  };
}

function addStrip(flow: PageFlow, input: BookletInput, length: BookletLength, strip: BookletStrip): void {
  flow.space(0.12);
  const parts = stripParts(flow, input, length, strip);
  const height = parts.reduce((sum, part) => sum + part.height, 0);
  // A strip is not parted between two pages unless it is longer than one.
  flow.add(...parts.map((part, i) => (i < parts.length - 1 && height <= flow.room ? { ...part, keeps: true } : part)));
}

function stripParts(
  flow: PageFlow,
  input: BookletInput,
  { cloth, mistaken }: BookletLength,
  strip: BookletStrip,
): readonly Part[] {
  if (strip.steps === null) return [{ ...stripHead(flow, strip), keeps: true }];
  const blanks = input.cutList.groups.flatMap((group) => group.blanks);
  const directional = new Set(blanks.filter((blank) => blank.directional).map(({ id }) => id));
  const line = { points: 9, indent: 0.15 };
  const say = (text: string | null, bold = false): readonly Part[] =>
    text === null ? [] : [textPart(text, flow.width, { ...line, bold, keeps: bold })];
  const lacking =
    strip.lacks === 0
      ? null
      : `This strip is full to its end: marks may take up to ${writeRounded(strip.lacks, input.quilt.unit, input.shown, 'up')} ${input.shown} of the next blank’s room.`;
  return [
    { ...stripHead(flow, strip), keeps: true },
    {
      ...stripPicture({ steps: strip.steps, cuts: strip.cuts, cloth, directional, mistaken, width: flow.width }),
      keeps: true,
    },
    ...say(strip.before, true),
    ...cutParts(flow, strip.cuts.slice(0, strip.pairs), mistaken),
    ...say(strip.between, true),
    ...cutParts(flow, strip.cuts.slice(strip.pairs), mistaken),
    ...say(lacking),
    ...say(strip.bags === null ? null : `Bags: ${strip.bags}.`),
  ];
}

/** A box to tick for each strip that is cut so. */
function stripHead(flow: PageFlow, { title, words: what, times }: BookletStrip): Part {
  const boxes = Math.min(times, 12);
  return {
    height: 0.22,
    items: (left, top) => {
      const start = left + boxes * 0.17 + 0.05;
      const wide = paperTextWidth(title, 10.5 / 72, true);
      return [
        ...Array.from({ length: boxes }, (_, i) => tickBox([left + i * 0.17, top - 0.16], 0.12)),
        words({ text: title, at: [start, top - 0.1], size: 10.5 / 72, bold: true }),
        words({
          text: shortened(what, flow.width - (start - left) - wide - 0.1, 9 / 72, false),
          at: [start + wide + 0.1, top - 0.1],
          size: 9 / 72,
        }),
      ];
    },
  };
}

/** As many columns of cuts side by side as the names leave room for, read down and then across. */
function cutParts(flow: PageFlow, cuts: readonly BookletCut[], mistaken: ReadonlySet<string>): readonly Part[] {
  if (cuts.length === 0) return [];
  const isSlanted = cuts.some(({ near, far }) => near !== far);
  const nameWidth = Math.max(0.42, ...cuts.map((cut) => paperTextWidth(nameOf(cut, mistaken), ROW_SIZE, true))) + 0.1;
  const markWidth = 0.52;
  const angleWidth = cuts.some(({ angle }) => angle !== '' && angle !== 'square') ? 0.3 : 0;
  const one = TICK + 0.3 + nameWidth + markWidth * (isSlanted ? 2 : 1) + angleWidth;
  const most = Math.max(1, Math.min(Math.floor((flow.width + 0.1) / (one + 0.1)), Math.ceil(cuts.length / 2)));
  const rows = Math.ceil(cuts.length / most);
  const columns = Math.ceil(cuts.length / rows);
  const wide = Math.min(flow.width / columns, one + 0.35);
  const xs = {
    number: TICK + 0.22,
    name: TICK + 0.3,
    near: TICK + 0.3 + nameWidth + 0.42,
    far: TICK + 0.3 + nameWidth + 0.94,
  };
  const row = (cut: BookletCut, left: number, y: number): readonly Item[] => [
    tickBox([left, y - TICK / 2], TICK),
    words({ text: `${cut.number}`, at: [left + xs.number, y], size: ROW_SIZE, anchor: 'end' }),
    words({ text: nameOf(cut, mistaken), at: [left + xs.name, y], size: ROW_SIZE, bold: true }),
    words({ text: cut.near, at: [left + xs.near, y], size: ROW_SIZE, anchor: 'end' }),
    ...(isSlanted ? [words({ text: cut.far, at: [left + xs.far, y], size: ROW_SIZE, anchor: 'end' })] : []),
    ...(angleWidth > 0 && cut.angle !== 'square'
      ? [words({ text: cut.angle, at: [left + xs.far + 0.06, y], size: ROW_SIZE * 0.9 })]
      : []),
  ];
  const head: Part = {
    height: ROW,
    keeps: true,
    items: (left, top) =>
      Array.from({ length: columns }, (_, column) => left + column * wide).flatMap((x) => {
        const y = top - ROW / 2;
        const small = { size: 6.5 / 72 } as const;
        return [
          words({ ...small, text: 'cut', at: [x + xs.number, y], anchor: 'end' }),
          words({ ...small, text: 'blank', at: [x + xs.name, y] }),
          words({ ...small, text: isSlanted ? 'near' : 'at', at: [x + xs.near, y], anchor: 'end' }),
          ...(isSlanted ? [words({ ...small, text: 'far', at: [x + xs.far, y], anchor: 'end' })] : []),
        ];
      }),
  };
  const lines = Array.from(
    { length: rows },
    (_, i): Part => ({
      height: ROW,
      // Neither the first line nor the last stands alone.
      keeps: i === 0 || i === rows - 2,
      items: (left, top) =>
        Array.from({ length: columns }, (_, column) => ({
          cut: cuts[column * rows + i],
          x: left + column * wide,
        })).flatMap(({ cut, x }) => (cut === undefined ? [] : row(cut, x, top - ROW / 2))),
    }),
  );
  const layers = cuts.flatMap((cut) =>
    cut.layers.map((layer) => textPart(`Cut ${cut.number}, ${layer}`, flow.width, { points: 8, indent: 0.3 })),
  );
  return [head, ...lines.map((line, i) => (i === rows - 1 ? { ...line, keeps: false } : line)), ...layers];
}

function nameOf({ kind, blanks, isOver }: BookletCut, mistaken: ReadonlySet<string>): string {
  const name = (blank: string): string => `${shortName(blank)}${mistaken.has(blank) ? '*' : ''}`;
  switch (kind) {
    case 'pair':
      return blanks[0] === blanks[1]
        ? `2 × ${name(blanks[0]!)}`
        : `${name(blanks[0]!)} below, ${name(blanks[1]!)} above`;
    case 'stack':
      return `stack of ${blanks.length}`;
    case 'one':
      return `${name(blanks[0]!)}${isOver ? ' wrong side up' : ''}`;
  }
}
