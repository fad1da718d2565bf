/** What was found in an imported drawing: every patch with its name, and numbered rings round what is to be looked at. */

import { flatten } from '../shape/flatten.ts';
import { cornersOf, type Outline } from '../shape/outline.ts';
import type { Point, Polygon } from '../shape/point.ts';
import { polygonBox } from '../shape/polygon.ts';
import type { Drawing, Item, PathItem, Run } from './display-list.ts';
import { outlineRun, polygonRun } from './display-list.ts';
import { edgeOn } from './ink.ts';
import { label } from './label.ts';

export interface ImportDrawing {
  readonly patches: readonly { readonly name: string; readonly outline: Outline; readonly colour: string | null }[];
  /** Places to be ringed; the first list is marked 1, and so on. */
  readonly marked: readonly (readonly Polygon[])[];
  /** Height of the smallest text that can still be read, in the drawing's unit. */
  readonly textSize: number;
}

const PAPER = '#efe9dd';
const MARK = '#c2185b';
/** Rings that a line of figures can stand beside. */
const MOST_RINGS = 40;

export function drawImport({ patches, marked, textSize }: ImportDrawing): Drawing {
  const shapes = patches.map(({ name, outline, colour }): Item => {
    const fill = colour ?? PAPER;
    const path: PathItem = {
      kind: 'path',
      class: 'cloth',
      runs: [outlineRun(outline)],
      fill: { colour: fill },
      ink: edgeOn(fill),
    };
    const room = flatten(outline, { side: 'inside', within: textSize * 0.1 });
    return {
      kind: 'group',
      class: 'patch',
      items: [path, ...label(room, { name, size: textSize, on: fill, arrow: null })],
    };
  });
  const rings = marked
    .flatMap((places, i) => places.map((place) => ({ place, number: i + 1 })))
    .slice(0, MOST_RINGS)
    .flatMap(({ place, number }) => ring(place, number, textSize));
  const corners = [...patches.flatMap(({ outline }) => cornersOf(outline)), ...marked.flat(2)];
  const box = polygonBox(corners.length === 0 ? [[0, 0]] : corners);
  const margin = 2 * textSize;
  return {
    title: 'What was found in the drawing',
    description: `${patches.length} patches. The list beside it tells what each ring marks.`,
    box: {
      left: box.min[0] - margin,
      bottom: box.min[1] - margin,
      width: box.max[0] - box.min[0] + 2 * margin,
      height: box.max[1] - box.min[1] + 2 * margin,
    },
    printSpacing: textSize,
    items: [...shapes, ...rings],
  };
}

/** The place itself in a loud colour, a ring large enough to be seen, and its number. */
function ring(place: Polygon, number: number, textSize: number): readonly Item[] {
  const { min, max } = polygonBox(place);
  const middle: Point = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  // What is large is seen without a ring round all of it.
  const radius =
    textSize * Math.max(0.8, Math.min(1.6, Math.hypot(max[0] - min[0], max[1] - min[1]) / 2 / textSize + 0.3));
  const size = textSize * 1.15;
  const beside: Point = [middle[0] + radius * 0.71 + size * 0.45, middle[1] + radius * 0.71 + size * 0.45];
  return [
    { kind: 'path', class: 'cloth', runs: [polygonRun(place)], fill: { colour: MARK }, ink: MARK },
    { kind: 'path', class: 'cut', runs: [circle(middle, radius)], ink: MARK },
    { kind: 'path', class: 'cloth', runs: [circle(beside, size * 0.75)], fill: { colour: MARK }, ink: '#ffffff' },
    { kind: 'text', class: 'strip-number', text: `${number}`, at: beside, size, anchor: 'middle', on: MARK },
  ];
}

function circle([x, y]: Point, radius: number): Run {
  const arc = { radius, large: false, clockwise: false };
  return {
    start: [x + radius, y],
    steps: [
      { to: [x - radius, y], arc },
      { to: [x + radius, y], arc },
    ],
    closed: true,
  };
}
