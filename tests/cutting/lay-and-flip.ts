/**
 * A blank sewn to a foundation as hands do it, for tests: reckoned apart from coverage.ts.
 * The seam is taken to run along y = 0 from x = 0 to its length, the new patch above it, the earlier patches below.
 */
import type { Point, Polygon } from '../../src/shape/point.ts';
import { mirrorPolygon, polygonArea, turnPolygon } from '../../src/shape/polygon.ts';

export interface Foundation {
  readonly seamLength: number;
  readonly allowance: number;
  /** The new patch with its allowance all round. */
  readonly sewn: Polygon;
}

/** Area of the sewn patch left bare, at the best slide along the seam that serves level and askew alike. */
export function leastBare(blank: Polygon, side: number, foundation: Foundation, askew: number): number {
  const reach = Math.max(...foundation.sewn.map(([x]) => Math.abs(x))) + 2;
  const bareAt = (slide: number): number =>
    Math.max(...[0, askew, -askew].map((degrees) => bareWhen(blank, side, foundation, degrees, slide)));
  const sample = (middle: number, step: number) =>
    Array.from({ length: 17 }, (_, k) => middle + (k - 8) * step)
      .map((slide) => ({ slide, bare: bareAt(slide) }))
      .reduce((best, each) => (each.bare < best.bare ? each : best));
  // Bare area falls and rises again along the slide, so each round may look closer about the best of the one before.
  let best = sample(0, reach / 8);
  for (let step = reach / 32; step > 1e-9 && best.bare > 1e-7; step /= 4) {
    best = sample(best.slide, step);
  }
  return best.bare;
}

function bareWhen(blank: Polygon, side: number, foundation: Foundation, degrees: number, slide: number): number {
  const laid = layRightSideDown(blank, side, foundation, degrees, slide);
  const flipped = laid.map(([x, y]): Point => [x, -y]).reverse();
  return areaOutside(foundation.sewn, flipped);
}

/**
 * Turned over, its side along the trimmed allowance (y = allowance), the rest hanging down over the earlier patches; then
 * turned askew about the middle of the seam and slid up until, over all the sewn patch's length, its raw edge lies at least
 * the allowance past the seam.
 */
function layRightSideDown(
  blank: Polygon,
  side: number,
  { seamLength, allowance, sewn }: Foundation,
  degrees: number,
  slide: number,
): Polygon {
  const [a, b] = [blank[side]!, blank[(side + 1) % blank.length]!];
  const over = mirrorPolygon(blank);
  // After mirroring, the side runs from −b to −a; it must run leftward for the blank to hang below it.
  const angle = (Math.atan2(a[1] - b[1], b[0] - a[0]) * 180) / Math.PI;
  const level = turnPolygon(over, 180 - angle);
  const top = Math.max(...level.map(([, y]) => y));
  const left = Math.min(...level.map(([x]) => x));
  const placed = level.map(([x, y]): Point => [x - left + slide, y - top + allowance]);
  const turned = turnPolygon(placed, degrees, [seamLength / 2, 0]);
  const slope = Math.tan((degrees * Math.PI) / 180);
  const rawEdgeAt = (x: number) => slope * (x - seamLength / 2) + allowance / Math.cos((degrees * Math.PI) / 180);
  const ends = sewn.filter(([, y]) => y < -allowance + 1e-9).map(([x]) => x);
  const dip = allowance - Math.min(...ends.map(rawEdgeAt));
  return turned.map(([x, y]): Point => [x, y + Math.max(0, dip)]);
}

/** Area of a polygon outside a convex one: its own, less what is left when it is cut along each side in turn. */
export function areaOutside(inner: Polygon, convex: Polygon): number {
  let left: Point[] = [...inner];
  convex.forEach((a, i) => {
    const b = convex[(i + 1) % convex.length]!;
    const off = ([x, y]: Point) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
    const kept: Point[] = [];
    left.forEach((point, k) => {
      const next = left[(k + 1) % left.length]!;
      const [here, there] = [off(point), off(next)];
      if (here >= 0) {
        kept.push(point);
      }
      if (here >= 0 !== there >= 0) {
        const part = here / (here - there);
        kept.push([point[0] + part * (next[0] - point[0]), point[1] + part * (next[1] - point[1])]);
      }
    });
    left = kept;
  });
  return polygonArea(inner) - (left.length < 3 ? 0 : polygonArea(left));
}
