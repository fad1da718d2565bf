/** Takes a simple polygon apart into convex pieces, so that overlap is only ever asked of convex ones. */
import type { Point, Polygon } from '../../src/shape/point.ts';
import { hull, isConvex } from './convex.ts';

/** The polygon itself where it is convex, else triangles that fill it exactly (ears cut off one by one). */
export function convexParts(outline: Polygon): readonly Polygon[] {
  if (isConvex(outline)) return [hull(outline)];
  const rest = signedArea(outline) < 0 ? [...outline].reverse() : [...outline];
  const parts: Polygon[] = [];
  while (rest.length > 3) {
    const ear = rest.findIndex((_, i) => isEar(rest, i));
    // A simple polygon always has an ear; where rounding hides it, the sharpest corner that turns left is taken.
    const at = ear >= 0 ? ear : rest.findIndex((_, i) => area(corner(rest, i)) > 0);
    const cut = Math.max(at, 0);
    const triangle = corner(rest, cut);
    if (area(triangle) > 0) parts.push(triangle);
    rest.splice(cut, 1);
  }
  if (area(rest) > 0) parts.push(rest);
  return parts;
}

function corner(points: Polygon, index: number): readonly [Point, Point, Point] {
  const n = points.length;
  return [points[(index + n - 1) % n]!, points[index]!, points[(index + 1) % n]!];
}

function isEar(points: Polygon, index: number): boolean {
  const triangle = corner(points, index);
  const size = area(triangle);
  if (size < 0) return false;
  // A flat corner is cut off freely: it takes no area away.
  if (size === 0) return true;
  return !points.some((point) => !triangle.includes(point) && isInside(point, triangle));
}

function isInside(p: Point, [a, b, c]: readonly [Point, Point, Point]): boolean {
  return area([a, b, p]) >= 0 && area([b, c, p]) >= 0 && area([c, a, p]) >= 0;
}

const area = (points: Polygon): number => signedArea(points);

function signedArea(points: Polygon): number {
  // Measured from the first point, so that figures far from the origin do not lose their last digits.
  const [x0, y0] = points[0]!;
  let twice = 0;
  for (let i = 0; i < points.length; i++) {
    const [ax, ay] = points[i]!;
    const [bx, by] = points[(i + 1) % points.length]!;
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return twice / 2;
}
