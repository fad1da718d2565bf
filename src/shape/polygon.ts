/** Polygons measured and moved. */
import type { Box } from './outline-measures.ts';
import { add, cross, distance, dot, type Point, type Polygon, reflect, subtract, turn } from './point.ts';

/** Signed area: positive anticlockwise. Taken about the first point so that far-off polygons lose no digits. */
export function polygonArea(polygon: Polygon): number {
  const origin = polygon[0] ?? [0, 0];
  let twice = 0;
  for (let i = 1; i + 1 < polygon.length; i++) {
    twice += cross(subtract(polygon[i]!, origin), subtract(polygon[i + 1]!, origin));
  }
  return twice / 2;
}

export function polygonPerimeter(polygon: Polygon): number {
  return polygon.reduce((sum, point, i) => sum + distance(point, polygon[(i + 1) % polygon.length]!), 0);
}

/** The middle of the area. @throws RangeError where the polygon encloses nothing */
export function polygonCentroid(polygon: Polygon): Point {
  const origin = polygon[0] ?? [0, 0];
  let area = 0;
  let x = 0;
  let y = 0;
  for (let i = 1; i + 1 < polygon.length; i++) {
    const a = subtract(polygon[i]!, origin);
    const b = subtract(polygon[i + 1]!, origin);
    const part = cross(a, b);
    area += part;
    x += part * (a[0] + b[0]);
    y += part * (a[1] + b[1]);
  }
  if (area === 0) {
    throw new RangeError('a polygon that encloses no area has no middle');
  }
  return [origin[0] + x / (3 * area), origin[1] + y / (3 * area)];
}

export function polygonBox(polygon: Polygon): Box {
  const xs = polygon.map((point) => point[0]);
  const ys = polygon.map((point) => point[1]);
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
}

export const boxWidth = (box: Box): number => box.max[0] - box.min[0];
export const boxHeight = (box: Box): number => box.max[1] - box.min[1];

/** How far the polygon reaches in a direction: the greatest dot product with it. */
export const reach = (polygon: Polygon, direction: Point): number =>
  polygon.reduce((most, point) => Math.max(most, dot(point, direction)), Number.NEGATIVE_INFINITY);

/** The same polygon anticlockwise. */
export function anticlockwise(polygon: Polygon): Polygon {
  return polygonArea(polygon) < 0 ? [...polygon].reverse() : polygon;
}

export const movePolygon = (polygon: Polygon, by: Point): Polygon => polygon.map((point) => add(point, by));

/** Turned anticlockwise about a centre, by default the origin. */
export function turnPolygon(polygon: Polygon, degrees: number, about: Point = [0, 0]): Polygon {
  return polygon.map((point) => add(turn(subtract(point, about), degrees), about));
}

/** Reflected in the vertical (x to −x) and walked backwards, so that an anticlockwise polygon stays so. */
export const mirrorPolygon = (polygon: Polygon): Polygon => polygon.map(reflect).reverse();

/** Whether an anticlockwise polygon nowhere turns right by more than `within` of its size, and goes round only once. */
export function isConvex(polygon: Polygon, within = 1e-9): boolean {
  let turned = 0;
  for (let i = 0; i < polygon.length; i++) {
    const before = subtract(polygon[(i + 1) % polygon.length]!, polygon[i]!);
    const after = subtract(polygon[(i + 2) % polygon.length]!, polygon[(i + 1) % polygon.length]!);
    const left = cross(before, after);
    if (left < -within * (dot(before, before) + dot(after, after))) {
      return false;
    }
    turned += Math.atan2(left, dot(before, after));
  }
  return turned < 3 * Math.PI;
}

/** Without corners that repeat the one before or lie on the straight line between their neighbours. */
export function tidyPolygon(polygon: Polygon, within = 1e-9): Polygon {
  const apart = polygon.filter((point, i) => distance(point, polygon.at(i - 1)!) > within);
  return apart.filter((point, i) => {
    const before = subtract(point, apart.at(i - 1)!);
    const after = subtract(apart[(i + 1) % apart.length]!, point);
    const straight = Math.abs(cross(before, after)) <= within * Math.hypot(...before, ...after);
    return !(straight && dot(before, after) > 0);
  });
}

/** By how often a line to the left crosses the outline. This is asked thousands of times for one drawing. */
export function isInside(polygon: Polygon, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, last = polygon.length - 1; i < polygon.length; last = i++) {
    const from = polygon[last]!;
    const to = polygon[i]!;
    if (from[1] > y !== to[1] > y && x > from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0])) {
      inside = !inside;
    }
  }
  return inside;
}
