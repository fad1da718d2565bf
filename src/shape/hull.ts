import { cross, type Point, type Polygon, subtract } from './point.ts';

/** The convex hull, anticlockwise, without points that lie on its edges (Andrew's monotone chain). */
export function convexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    while (kept.length >= 2 && cross(subtract(kept.at(-1)!, kept.at(-2)!), subtract(point, kept.at(-1)!)) <= 0) {
      kept.pop();
    }
    kept.push(point);
  }
  return kept;
}
