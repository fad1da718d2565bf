/**
 * A drawing as plain data: what the screen, a file and paper all draw from. Coordinates have x to the right and y up, in
 * the drawing's own unit of length; who draws turns y over where its medium counts downwards. Line widths and dashes
 * are the business of the classes, so that they do not swell with the scale.
 */
import type { PrintKind } from '../quilt/quilt.ts';
import { edgesOf, type Outline } from '../shape/outline.ts';
import { add, type Point, reflect, scale, turn } from '../shape/point.ts';

export interface Drawing {
  /** What it shows, in a few words; its accessible name. */
  readonly title: string;
  /** The same told in a sentence or two. */
  readonly description: string;
  readonly box: Box;
  /** Spacing of the marks that hint at a print, in the drawing's unit. */
  readonly printSpacing: number;
  readonly items: readonly Item[];
}

export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

export type Item = PathItem | TextItem | GroupItem;

export interface PathItem {
  readonly kind: 'path';
  readonly class: PathClass;
  readonly runs: readonly Run[];
  readonly fill?: Fill;
  /** Colour of the line where it must be read on cloth; absent: as its class has it. */
  readonly ink?: string;
}

/** Pen down at `start`, then step by step; `closed` joins the last point to the first. */
export interface Run {
  readonly start: Point;
  readonly steps: readonly Step[];
  readonly closed: boolean;
}

export interface Step {
  readonly to: Point;
  readonly arc?: { readonly radius: number; readonly large: boolean; readonly clockwise: boolean };
}

/** Cloth: its colour and, where the print is to be hinted at, its kind and where its up points. */
export interface Fill {
  readonly colour: string;
  readonly print?: PrintKind;
  /** The print's up, degrees anticlockwise from the drawing's up. */
  readonly turn?: number;
  /** The print's repeat in the drawing's unit, to draw it at its true size; absent: it is only hinted at. */
  readonly repeat?: number;
}

export interface TextItem {
  readonly kind: 'text';
  readonly class: TextClass;
  readonly text: string;
  /** The text's middle by height; by width see `anchor`. */
  readonly at: Point;
  /** Height of a line of it in the drawing's unit. */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees anticlockwise. */
  readonly turn?: number;
  /** Colour of the cloth that it stands on, so that ink and halo can be chosen to be read on it. Absent: on paper. */
  readonly on?: string;
}

/** What belongs together; `blank` and `patch` let a pointer find out what it points at. */
export interface GroupItem {
  readonly kind: 'group';
  readonly class: GroupClass;
  readonly data?: { readonly blank?: string; readonly patch?: string; readonly place?: string };
  /** Nothing outside this is seen. */
  readonly clip?: Box;
  readonly items: readonly Item[];
}

export type GroupClass = 'block' | 'patch' | 'blank' | 'part';
export type PathClass =
  | 'cloth'
  | 'edge'
  | 'seam'
  | 'cut'
  | 'subcut'
  | 'selvage'
  | 'hatch'
  | 'dots'
  | 'leader'
  | 'dimension'
  | 'arrow'
  | 'paper'
  | PaperClass;
/** On printed sheets: a seam to sew on, where paper and cloth are trimmed, marks to match, boxes to measure or tick, table lines. */
export type PaperClass = 'sew' | 'trim' | 'match' | 'gauge' | 'box' | 'rule' | 'grain' | 'seam-sewn' | 'press';
export type TextClass = 'name' | 'measure' | 'strip-number' | 'title' | 'plain' | 'strong';

/** A closed run of straight lines. */
export function polygonRun(points: readonly Point[]): Run {
  const [start = [0, 0], ...rest] = points;
  return { start, steps: rest.map((to) => ({ to })), closed: true };
}

/** Arcs stay arcs. */
export function outlineRun(outline: Outline): Run {
  const edges = edgesOf(outline);
  return {
    start: edges[0]!.from,
    steps: edges.map(({ to, arc }) =>
      arc === undefined
        ? { to }
        : { to, arc: { radius: arc.radius, large: arc.large ?? false, clockwise: arc.turn === 'clockwise' } },
    ),
    closed: true,
  };
}

/** An open run of straight lines. */
export function lineRun(...points: readonly Point[]): Run {
  const [start = [0, 0], ...rest] = points;
  return { start, steps: rest.map((to) => ({ to })), closed: false };
}

export function rectangle(left: number, bottom: number, width: number, height: number): readonly Point[] {
  return [
    [left, bottom],
    [left + width, bottom],
    [left + width, bottom + height],
    [left, bottom + height],
  ];
}

/** A similarity: first mirrored (x to −x) if asked, then turned, then scaled, then moved. */
export interface Placing {
  readonly mirrored?: boolean;
  /** Degrees anticlockwise. */
  readonly turn?: number;
  readonly scale?: number;
  readonly by?: Point;
}

/** A place after a similarity. */
export function placedPoint(
  point: Point,
  { mirrored = false, turn: degrees = 0, scale: times = 1, by = [0, 0] }: Placing,
): Point {
  return add(scale(turn(mirrored ? reflect(point) : point, degrees), times), by);
}

/**
 * An item laid on a sheet. Texts stay readable: they are moved and scaled, and turned unless the placing mirrors; their place is their
 * middle, so that one anchored at an end must not be mirrored.
 */
export function placed(item: Item, placing: Placing): Item {
  const at = (point: Point): Point => placedPoint(point, placing);
  const { mirrored = false, turn: degrees = 0, scale: times = 1 } = placing;
  const turned = (before: number): number => (mirrored ? -before : before) + degrees;
  switch (item.kind) {
    case 'text':
      return { ...item, at: at(item.at), size: item.size * times, turn: mirrored ? degrees : turned(item.turn ?? 0) };
    case 'path':
      return {
        ...item,
        runs: item.runs.map((run) => ({
          ...run,
          start: at(run.start),
          steps: run.steps.map(({ to, arc }) =>
            arc === undefined
              ? { to: at(to) }
              : { to: at(to), arc: { ...arc, radius: arc.radius * times, clockwise: arc.clockwise !== mirrored } },
          ),
        })),
        ...(item.fill === undefined ? {} : { fill: { ...item.fill, turn: turned(item.fill.turn ?? 0) } }),
      };
    case 'group': {
      if (item.clip !== undefined && degrees !== 0) {
        throw new RangeError('what is clipped to a box is not turned');
      }
      const clip = item.clip === undefined ? {} : { clip: placedBox(item.clip, placing) };
      return { ...item, ...clip, items: item.items.map((inner) => placed(inner, placing)) };
    }
  }
}

function placedBox({ left, bottom, width, height }: Box, placing: Placing): Box {
  const [a, b] = [placedPoint([left, bottom], placing), placedPoint([left + width, bottom + height], placing)];
  return {
    left: Math.min(a[0], b[0]),
    bottom: Math.min(a[1], b[1]),
    width: Math.abs(b[0] - a[0]),
    height: Math.abs(b[1] - a[1]),
  };
}

/** The same somewhere else. */
export function moved(item: Item, by: Point): Item {
  switch (item.kind) {
    case 'text':
      return { ...item, at: add(item.at, by) };
    case 'path':
      return { ...item, runs: item.runs.map((run) => movedRun(run, by)) };
    case 'group':
      return { ...item, items: item.items.map((inner) => moved(inner, by)) };
  }
}

const movedRun = (run: Run, by: Point): Run => ({
  ...run,
  start: add(run.start, by),
  steps: run.steps.map((step) => ({ ...step, to: add(step.to, by) })),
});
