/** Where something upright (a name, an arrow) fits inside a shape, so that no label lies across a seam. */

import type { Box } from '../shape/outline-measures.ts';
import type { Point, Polygon } from '../shape/point.ts';
import { polygonBox, polygonCentroid } from '../shape/polygon.ts';

/** A guess at a text's width that errs on the wide side for the usual faces in bold. */
export const textWidth = (text: string, size: number): number =>
  [...text].reduce((sum, letter) => sum + (WIDE.has(letter) ? 1.02 : NARROW.has(letter) ? 0.4 : 0.7), 0) * size;

const WIDE: ReadonlySet<string> = new Set('mwMW@%');
const NARROW: ReadonlySet<string> = new Set("ijlI.,:;'|! ");

/**
 * The centre of an upright box that lies wholly inside the polygon, as near to the polygon's middle as a search over a
 * grid finds; null when none fits. A place with some air round the box is taken before one without.
 */
export function placeBox(polygon: Polygon, width: number, height: number): Point | null {
  const box = polygonBox(polygon);
  const air = Math.min(width, height) * 0.45;
  return search(polygon, box, width + air, height + air) ?? search(polygon, box, width, height);
}

function search(polygon: Polygon, { min, max }: Box, width: number, height: number): Point | null {
  if (max[0] - min[0] < width || max[1] - min[1] < height) {
    return null;
  }
  const [left, right] = [min[0] + width / 2, max[0] - width / 2];
  const [bottom, top] = [min[1] + height / 2, max[1] - height / 2];
  const found = candidates(left, right, bottom, top, polygonCentroid(polygon)).find((at) =>
    boxIsInside(polygon, at, width, height),
  );
  return found ?? null;
}

function candidates(left: number, right: number, bottom: number, top: number, middle: Point): readonly Point[] {
  const steps = 12;
  const all: Point[] = [middle];
  for (let i = 0; i <= steps; i++) {
    for (let j = 0; j <= steps; j++) {
      all.push([left + ((right - left) * i) / steps, bottom + ((top - bottom) * j) / steps]);
    }
  }
  const far = (p: Point): number => (p[0] - middle[0]) ** 2 + (p[1] - middle[1]) ** 2;
  return all.sort((a, b) => far(a) - far(b));
}

/** Corners and middles of sides suffice: the shapes drawn here have no notch narrower than half a label. */
function boxIsInside(polygon: Polygon, at: Point, width: number, height: number): boolean {
  for (const i of [-0.5, 0, 0.5]) {
    for (const j of [-0.5, 0, 0.5]) {
      if (!isInside(polygon, [at[0] + i * width, at[1] + j * height])) {
        return false;
      }
    }
  }
  return true;
}

export function isInside(polygon: Polygon, point: Point): boolean {
  let inside = false;
  polygon.forEach((from, index) => {
    const to = polygon[(index + 1) % polygon.length]!;
    if (from[1] > point[1] !== to[1] > point[1]) {
      const x = from[0] + ((point[1] - from[1]) / (to[1] - from[1])) * (to[0] - from[0]);
      inside = x > point[0] ? !inside : inside;
    }
  });
  return inside;
}
