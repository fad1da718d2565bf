/** What lies on one side of a straight line: the points p with p·normal ≤ reach. */
import { add, dot, type Point, type Polygon, scale, subtract } from './point.ts';

export interface HalfPlane {
  /** Of length 1, pointing out of it. */
  readonly normal: Point;
  readonly reach: number;
}

/** Points nearer to the line than this count as on it, so that clipping makes no slivers. */
const ON_THE_LINE = 1e-12;

/** The part of a convex polygon inside the half-plane; empty when nothing is. */
export function clip(polygon: Polygon, { normal, reach }: HalfPlane): Polygon {
  const beyond = polygon.map((point) => dot(point, normal) - reach);
  const kept: Point[] = [];
  polygon.forEach((point, i) => {
    const next = (i + 1) % polygon.length;
    const here = beyond[i]!;
    const there = beyond[next]!;
    if (here <= ON_THE_LINE) {
      kept.push(point);
    }
    if ((here > ON_THE_LINE && there < -ON_THE_LINE) || (here < -ON_THE_LINE && there > ON_THE_LINE)) {
      kept.push(add(point, scale(subtract(polygon[next]!, point), here / (here - there))));
    }
  });
  return kept;
}

/** Outward unit normal of the edge from a to b of an anticlockwise polygon. */
export function outwardNormal(a: Point, b: Point): Point {
  const [x, y] = subtract(b, a);
  const size = Math.hypot(x, y);
  return [y / size, -x / size];
}

/** The half-planes whose meeting is the given convex anticlockwise polygon, edge by edge. */
export function halfPlanesOf(polygon: Polygon): readonly HalfPlane[] {
  return polygon.map((point, i) => {
    const normal = outwardNormal(point, polygon[(i + 1) % polygon.length]!);
    return { normal, reach: dot(point, normal) };
  });
}
