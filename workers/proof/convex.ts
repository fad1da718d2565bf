/** Convex polygons, always anticlockwise: their hull, and how far apart two of them are. */
import type { Point, Polygon } from '../../src/shape/point.ts';

/** The convex hull, anticlockwise, without points along its edges (Andrew's monotone chain). */
export function hull(points: Polygon): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const lower = chain(sorted);
  const upper = chain(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(sorted: Polygon): Point[] {
  const kept: Point[] = [];
  for (const point of sorted) {
    while (kept.length >= 2 && turnsLeft(kept[kept.length - 2]!, kept[kept.length - 1]!, point) <= 0) kept.pop();
    kept.push(point);
  }
  return kept;
}

const turnsLeft = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/**
 * How far two convex polygons are apart along the best parting direction that is square to an edge of either. Below zero it
 * is minus the overlap's depth: the least shift that parts them, which for convex polygons is always square to an edge
 * (an edge of their Minkowski difference). Zero is touching.
 */
export function gap(a: Polygon, b: Polygon): number {
  return Math.max(gapBeyondEdges(a, b), gapBeyondEdges(b, a));
}

function gapBeyondEdges(a: Polygon, b: Polygon): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < a.length; i++) {
    const from = a[i]!;
    const to = a[i + 1 === a.length ? 0 : i + 1]!;
    const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (size === 0) continue;
    // Outward from an anticlockwise polygon is to the right of its edges.
    const nx = (to[1] - from[1]) / size;
    const ny = (from[0] - to[0]) / size;
    let nearest = Number.POSITIVE_INFINITY;
    for (const p of b) nearest = Math.min(nearest, (p[0] - from[0]) * nx + (p[1] - from[1]) * ny);
    best = Math.max(best, nearest);
  }
  return best;
}

/** Whether a polygon is convex as drawn, either way round; points along an edge are allowed. */
export function isConvex(outline: Polygon): boolean {
  let sense = 0;
  for (let i = 0; i < outline.length; i++) {
    const [a, b, c] = [0, 1, 2].map((k) => outline[(i + k) % outline.length]!) as [Point, Point, Point];
    const side = Math.sign(turnsLeft(a, b, c));
    if (side !== 0 && sense !== 0 && side !== sense) return false;
    if (side !== 0) sense = side;
  }
  return true;
}
