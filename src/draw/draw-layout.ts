/** One length of cloth unrolled to scale: a bolt as far as it is bought, or one piece from the shelf. */
import type { Blank } from '../cutting/cut-list.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import { blanksById } from '../plan/placed.ts';
import type { Cloth } from '../quilt/quilt.ts';
import {
  type Drawing,
  type GroupItem,
  type Item,
  lineRun,
  polygonRun,
  rectangle,
  type TextItem,
} from './display-list.ts';
import { hatch } from './hatch.ts';
import { layoutStrips } from './layout-strips.ts';
import { spread } from './spread.ts';
import type { ClothLengthDrawn, NumberedStrip } from './unroll.ts';

export interface LayoutDrawingInput {
  readonly cloth: Cloth;
  readonly length: ClothLengthDrawn;
  readonly blanks: readonly Blank[];
  /** The answer's strips as ruler work; empty where only the blanks' edges are wanted. */
  readonly steps: readonly StripSteps[];
  /** Blanks that are easily taken for others: a star stands after their names. */
  readonly mistaken?: ReadonlySet<string>;
  /** How much cloth lies there: what is bought, as washed, or the piece's length. */
  readonly whole: number;
  /** Height of the smallest text that can still be read, in the drawing's unit: see `layoutTextSize`. */
  readonly textSize: number;
  /** Writes a length for a person, with its unit. */
  readonly write: (length: number) => string;
}

/** The margins beside the cloth, in heights of text. */
const MARGIN = { left: 9.5, right: 0.6, top: 0.8, bottom: 2.4 };
const LINE = 1.3;

/** The text size at which a drawing shown `pixels` wide has text of `textPixels`. */
export function layoutTextSize(clothWidth: number, pixels: number, textPixels: number): number {
  const cloth = Math.max(pixels - (MARGIN.left + MARGIN.right) * textPixels, pixels / 3);
  return (textPixels * clothWidth) / cloth;
}

export function drawLayout(input: LayoutDrawingInput): Drawing {
  const { length, textSize, cloth, write } = input;
  const { width } = length.jobCloth;
  const whole = Math.max(input.whole, length.used);
  const blanks = blanksById(input.blanks);
  const { steps, mistaken = new Set<string>() } = input;
  const common = { width, cloth, blanks, textSize, steps, mistaken, drawn: new Map<string, GroupItem>() };
  const margin = marginItems(input, whole);
  const lowest = Math.min(-MARGIN.bottom * textSize, margin.low);
  const highest = Math.max(whole + MARGIN.top * textSize, margin.high);
  const left = -MARGIN.left * textSize;
  return {
    title: length.piece === null ? `${cloth.name}, unrolled` : `${cloth.name}, the piece "${length.piece}"`,
    description: describe(input, whole),
    box: { left, bottom: lowest, width: width - left + MARGIN.right * textSize, height: highest - lowest },
    printSpacing: textSize * 1.5,
    items: [
      ...leftover(length.used, whole, width, textSize),
      ...length.laid.flatMap((laid) => layoutStrips({ ...common, laid })),
      ...squaring(length.strips, width, length.used, textSize),
      { kind: 'path', class: 'edge', runs: [polygonRun(rectangle(0, 0, width, whole))] },
      { kind: 'path', class: 'selvage', runs: [lineRun([0, 0], [0, whole]), lineRun([width, 0], [width, whole])] },
      ...margin.items,
      ...widthLine(width, textSize, write(width)),
    ],
  };
}

/** Cloth that is there and not needed: hatched twice as wide as the waste between blanks, so the two differ. */
function leftover(used: number, whole: number, width: number, textSize: number): readonly Item[] {
  if (whole - used < 1e-9) {
    return [];
  }
  const rest = rectangle(0, used, width, whole - used);
  return [
    { kind: 'path', class: 'paper', runs: [polygonRun(rest)] },
    { kind: 'path', class: 'hatch', runs: hatch(rest, textSize * 1.4) },
  ];
}

/** The strip that is trimmed to square the end: dots instead of hatching. */
function squaring(strips: readonly NumberedStrip[], width: number, used: number, textSize: number): readonly Item[] {
  return strips
    .filter((strip) => strip.number === null)
    .flatMap((strip): Item[] => {
      const area =
        strip.firstCut === 'along'
          ? rectangle(strip.from, 0, strip.height, used)
          : rectangle(0, strip.from, width, strip.height);
      return [
        { kind: 'path', class: 'paper', runs: [polygonRun(area)] },
        { kind: 'path', class: 'dots', runs: hatch(area, textSize * 0.5) },
      ];
    });
}

interface MarginNote {
  readonly at: number;
  readonly number: string;
  readonly text: string;
}

/** Numbers and measures beside the strips, moved apart where strips are thin, with a leader to each. */
function marginItems(input: LayoutDrawingInput, whole: number): { items: readonly Item[]; low: number; high: number } {
  const { textSize, length } = input;
  const gap = textSize * LINE;
  const notes = marginNotes(input, whole);
  const need = notes.length * gap;
  const low = Math.min(0, (whole - need) / 2);
  const places = spread(
    notes.map((note) => note.at),
    gap,
    low + gap / 2,
    Math.max(whole, low + need) - gap / 2,
  );
  const items = notes.flatMap((note, index): Item[] => {
    const y = places[index] ?? note.at;
    const text = { kind: 'text', size: textSize } as const;
    return [
      {
        kind: 'path',
        class: 'leader',
        runs: [lineRun([-0.2 * textSize, note.at], [-0.9 * textSize, y], [-1.2 * textSize, y])],
      },
      { ...text, class: 'measure', text: note.text, at: [-1.4 * textSize, y], anchor: 'end' } satisfies TextItem,
      { ...text, class: 'strip-number', text: note.number, at: [-9.2 * textSize, y], anchor: 'start' },
    ];
  });
  const along = length.strips.some((strip) => strip.firstCut === 'along');
  return { items: [...items, ...(along ? alongNumbers(input) : [])], low, high: Math.max(whole, low + need) };
}

function marginNotes(input: LayoutDrawingInput, whole: number): readonly MarginNote[] {
  const { length, write } = input;
  const notes = length.strips
    .filter((strip) => strip.firstCut === 'across')
    .map((strip) => ({
      at: strip.from + strip.height / 2,
      number: strip.number === null ? 'trim' : `${strip.number}`,
      text: write(strip.height),
    }));
  const rest = whole - length.used;
  return rest < 1e-6 ? notes : [...notes, { at: length.used + rest / 2, number: 'left', text: write(rest) }];
}

/** Strips along the cloth carry their number inside, at the cut end. */
function alongNumbers(input: LayoutDrawingInput): readonly Item[] {
  return input.length.strips
    .filter((strip) => strip.firstCut === 'along')
    .map((strip) => ({
      kind: 'text',
      class: 'strip-number',
      text: strip.number === null ? 'trim' : `${strip.number}`,
      at: [strip.from + strip.height / 2, -0.7 * input.textSize],
      size: input.textSize,
      anchor: 'middle',
    }));
}

function widthLine(width: number, textSize: number, written: string): readonly Item[] {
  const y = -1.7 * textSize;
  const end = 0.35 * textSize;
  const half = (written.length * 0.62 * textSize) / 2 + 0.4 * textSize;
  return [
    {
      kind: 'path',
      class: 'dimension',
      runs: [
        lineRun([0, y - end], [0, y + end]),
        lineRun([0, y], [width / 2 - half, y]),
        lineRun([width / 2 + half, y], [width, y]),
        lineRun([width, y - end], [width, y + end]),
      ],
    },
    { kind: 'text', class: 'measure', text: written, at: [width / 2, y], size: textSize, anchor: 'middle' },
  ];
}

function describe(input: LayoutDrawingInput, whole: number): string {
  const { length, write } = input;
  const count = length.strips.filter((strip) => strip.number !== null).length;
  const blanks = length.laid.reduce((sum, { layout }) => sum + layout.placements.length, 0);
  return `${count} ${count === 1 ? 'strip' : 'strips'} with ${blanks} blanks on ${write(whole)} of cloth ${write(length.jobCloth.width)} wide; ${write(length.used)} used. The cut end is at the bottom.`;
}
