/** A name and, where the print matters, an arrow, set inside a shape: both, or one, or neither, as there is room. */
import { add, type Point, type Polygon, turn } from '../shape/point.ts';
import { turnPolygon } from '../shape/polygon.ts';
import { ARROW_BREADTH, arrow } from './arrow.ts';
import type { Item, TextItem } from './display-list.ts';
import { type LabelBox, placeBox, placePair, textWidth, upright } from './fit-text.ts';
import { inkOn } from './ink.ts';

export interface LabelRequest {
  readonly name: string;
  readonly size: number;
  /** The cloth's colour under it. */
  readonly on: string;
  readonly arrow: { readonly degrees: number; readonly heads: 1 | 2 } | null;
}

/** How much room is asked for, in heights of text: at ease, and as close as can still be read. */
interface Fit {
  /** Beside the name. */
  readonly beside: number;
  /** Height of the name: capitals and figures have nothing below the line. */
  readonly tall: number;
  readonly arrow: number;
}
const FITS: readonly Fit[] = [
  { beside: 0.3, tall: 1.2, arrow: 1.35 },
  { beside: 0, tall: 0.92, arrow: 1 },
];
/** Lengths of an arrow that stands alone; one shorter could not be told from a blot. */
const ALONE: readonly number[] = [1.35, 1, 0.75];

/** A name reads level, or turned to read upwards in shapes too narrow for that; turned with some air rather than level and tight. */
const TURNS: readonly number[] = [0, 90];

/** Name and arrow where there is room for both; else the arrow, since a name stands in the table too; else the name. */
export function label(polygon: Polygon, request: LabelRequest): readonly Item[] {
  if (request.arrow === null) {
    return nameAlone(polygon, request);
  }
  for (const fit of FITS) {
    for (const turned of TURNS) {
      const found = both(polygon, request, request.arrow.degrees, turned, fit);
      if (found !== null) {
        return found;
      }
    }
  }
  const alone = arrowAlone(polygon, request, request.arrow.degrees);
  return alone.length > 0 ? alone : nameAlone(polygon, request);
}

/** Both in the frame of the name: the arrow over it, else after it, else wherever the two find room. */
function both(polygon: Polygon, request: LabelRequest, degrees: number, turned: number, fit: Fit): Item[] | null {
  const frame = turnPolygon(polygon, -turned);
  const name = nameBox(request, fit);
  const length = fit.arrow * request.size;
  const up = arrowBox(length, degrees - turned);
  const [wide, tall] = upright(up);
  const over = placeBox(frame, { width: Math.max(name.width, wide), height: name.height + tall, turn: 0 });
  const after = over
    ? null
    : placeBox(frame, { width: name.width + wide, height: Math.max(name.height, tall), turn: 0 });
  const places =
    over !== null
      ? [add(over, [0, -tall / 2]), add(over, [0, name.height / 2])]
      : after !== null
        ? [add(after, [-wide / 2, 0]), add(after, [name.width / 2, 0])]
        : placePair(frame, name, up);
  if (places === null) {
    return null;
  }
  const [nameAt, arrowAt] = places.map((place) => turn(place, turned)) as [Point, Point];
  return [nameItem(request, nameAt, turned), arrowItem(request, arrowAt, length * 0.9)];
}

function arrowAlone(polygon: Polygon, request: LabelRequest, degrees: number): readonly Item[] {
  for (const part of ALONE) {
    const length = part * request.size;
    const at = placeBox(polygon, arrowBox(length, degrees));
    if (at !== null) {
      return [arrowItem(request, at, length)];
    }
  }
  return [];
}

function nameAlone(polygon: Polygon, request: LabelRequest): readonly Item[] {
  for (const fit of FITS) {
    for (const turned of TURNS) {
      const at = placeBox(turnPolygon(polygon, -turned), nameBox(request, fit));
      if (at !== null) {
        return [nameItem(request, turn(at, turned), turned)];
      }
    }
  }
  return [];
}

function nameBox({ name, size }: LabelRequest, { beside, tall }: Fit): LabelBox {
  return { width: textWidth(name, size) + beside * size, height: tall * size, turn: 0 };
}

const arrowBox = (length: number, degrees: number): LabelBox => ({
  width: length * ARROW_BREADTH,
  height: length,
  turn: degrees,
});

function nameItem({ name, size, on }: LabelRequest, at: Point, degrees: number): TextItem {
  const turned = degrees === 0 ? {} : { turn: degrees };
  return { kind: 'text', class: 'name', text: name, at, size, anchor: 'middle', on, ...turned };
}

function arrowItem(request: LabelRequest, at: Point, length: number): Item {
  const { degrees, heads } = request.arrow ?? { degrees: 0, heads: 1 };
  return { ...arrow(at, degrees, length, heads), ink: inkOn(request.on) };
}
