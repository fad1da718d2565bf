import { distance, type Polygon, subtract } from './point.ts';
import { movePolygon, polygonBox } from './polygon.ts';

/** How far two outlines may part and still count as one. */
export const SAME_WITHIN = 1e-6;

/** Moved so that its box begins at the origin. */
export function toOrigin(polygon: Polygon): Polygon {
  return movePolygon(polygon, subtract([0, 0], polygonBox(polygon).min));
}

/** Whether two polygons coincide once both are moved to the origin, wherever each begins to be told. */
export function sameOutline(a: Polygon, b: Polygon, within = SAME_WITHIN): boolean {
  return samePlace(toOrigin(a), toOrigin(b), within);
}

/** Whether two polygons coincide where they lie, wherever each begins to be told. Both anticlockwise. */
export function samePlace(a: Polygon, b: Polygon, within = SAME_WITHIN): boolean {
  const size = a.length;
  if (size !== b.length) {
    return false;
  }
  return b.some((_, shift) => a.every((point, i) => distance(point, b[(i + shift) % size]!) <= within));
}
