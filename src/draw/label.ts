/** A name and, where the print matters, an arrow, set inside a shape: both, or one, or neither, as there is room. */
import { type Point, type Polygon, turn } from '../shape/point.ts';
import { arrow } from './arrow.ts';
import type { Item, TextItem } from './display-list.ts';
import { placeBox, textWidth } from './fit-text.ts';
import { inkOn } from './ink.ts';

export interface LabelRequest {
  readonly name: string;
  readonly size: number;
  /** The cloth's colour under it. */
  readonly on: string;
  readonly arrow: { readonly degrees: number; readonly heads: 1 | 2 } | null;
  /** Which of the two is kept where only one fits. */
  readonly rather: 'name' | 'arrow';
}

/** The label's items, and whether the name is among them. */
export interface Label {
  readonly items: readonly Item[];
  readonly named: boolean;
}

export function label(polygon: Polygon, request: LabelRequest): Label {
  const { name, size } = request;
  const wide = textWidth(name, size) + size * 0.3;
  const tall = size * 1.2;
  const long = size * 1.35;
  if (request.arrow !== null) {
    const stacked = placeBox(polygon, Math.max(wide, long), tall + long);
    if (stacked !== null) {
      return both(request, [stacked[0], stacked[1] - long / 2], [stacked[0], stacked[1] + tall / 2], long);
    }
    const abreast = placeBox(polygon, wide + long, Math.max(tall, long));
    if (abreast !== null) {
      return both(request, [abreast[0] + long / 2, abreast[1]], [abreast[0] - wide / 2, abreast[1]], long);
    }
    const alone = request.rather === 'arrow' ? arrowAlone(polygon, request, long) : null;
    if (alone !== null) {
      return alone;
    }
  }
  const flat = placeBox(polygon, wide, tall);
  if (flat !== null) {
    return { items: [nameItem(request, flat, 0)], named: true };
  }
  const upended = placeBox(
    polygon.map((p) => turn(p, -90)),
    wide,
    tall,
  );
  if (upended !== null) {
    return { items: [nameItem(request, turn(upended, 90), 90)], named: true };
  }
  return (request.arrow === null ? null : arrowAlone(polygon, request, long)) ?? { items: [], named: false };
}

function both(request: LabelRequest, nameAt: Point, arrowAt: Point, long: number): Label {
  return { items: [nameItem(request, nameAt, 0), arrowItem(request, arrowAt, long * 0.9)], named: true };
}

function arrowAlone(polygon: Polygon, request: LabelRequest, long: number): Label | null {
  for (const length of [long, long * 0.75, long * 0.55]) {
    const at = placeBox(polygon, length * 0.7, length * 0.7);
    if (at !== null) {
      return { items: [arrowItem(request, at, length)], named: false };
    }
  }
  return null;
}

function nameItem(request: LabelRequest, at: Point, degrees: number): TextItem {
  const { name, size, on } = request;
  return {
    kind: 'text',
    class: 'name',
    text: name,
    at,
    size,
    anchor: 'middle',
    on,
    ...(degrees ? { turn: degrees } : {}),
  };
}

function arrowItem(request: LabelRequest, at: Point, length: number): Item {
  const { degrees, heads } = request.arrow ?? { degrees: 0, heads: 1 };
  return { ...arrow(at, degrees, length, heads), ink: inkOn(request.on) };
}
