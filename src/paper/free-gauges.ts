import { type Box, rectangle } from '../draw/display-list.ts';
import { intersection } from '../shape/combine.ts';
import type { Point, Polygon } from '../shape/point.ts';
import { polygonArea, polygonBox } from '../shape/polygon.ts';
import { CM_BOX, type Gauges, INCH_BOX } from './sheet-frame.ts';

const STEP = 0.15;
/** Round each box, in inches. */
const AIR = 0.06;
const NOTES: readonly (readonly [number, number])[] = [
  [4, 0.9],
  [3, 1.2],
  [2.4, 1.5],
  [1.9, 1.9],
  [1.5, 2.4],
];

/** Where words find room: the widest of some oblongs of one area that is still free; null where none is. */
export function freeNotes(area: Box, taken: readonly Polygon[]): Box | null {
  for (const [width, height] of NOTES) {
    const at = freePlace(area, width, height, taken);
    if (at !== null) return { left: at[0], bottom: at[1], width, height };
  }
  return null;
}

/** Where the two boxes to measure find room on a sheet among polygons; null where they find none. */
export function freeGauges(area: Box, taken: readonly Polygon[]): Gauges | null {
  const inch = freeSquare(area, INCH_BOX, taken);
  if (inch === null) return null;
  const cm = freeSquare(area, CM_BOX, [...taken, rectangle(inch[0], inch[1], INCH_BOX, INCH_BOX)]);
  return cm === null ? null : { inch, cm };
}

const freeSquare = (area: Box, side: number, taken: readonly Polygon[]): Point | null =>
  freePlace(area, side, side, taken);

/** The first free place of an oblong, looked for from the lower left, row by row. */
function freePlace(area: Box, width: number, height: number, taken: readonly Polygon[]): Point | null {
  const boxes = taken.map((polygon) => ({ polygon, box: polygonBox(polygon) }));
  const rows = Math.floor((area.height - height) / STEP);
  const columns = Math.ceil((area.width - width) / STEP);
  for (let row = 0; row <= rows; row++) {
    for (let column = 0; column <= columns; column++) {
      const [x, y] = [area.left + Math.min(column * STEP, area.width - width), area.bottom + row * STEP];
      const oblong = rectangle(x - AIR, y - AIR, width + 2 * AIR, height + 2 * AIR);
      const isFree = boxes.every(
        ({ polygon, box }) =>
          box.min[0] >= x + width + AIR ||
          box.max[0] <= x - AIR ||
          box.min[1] >= y + height + AIR ||
          box.max[1] <= y - AIR ||
          isApart(oblong, polygon),
      );
      if (isFree) return [x, y];
    }
  }
  return null;
}

function isApart(oblong: Polygon, polygon: Polygon): boolean {
  return intersection(oblong, polygon).every((part) => Math.abs(polygonArea(part)) < 1e-6);
}
