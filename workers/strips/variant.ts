/**
 * A variant is a blank as it may lie in a strip: one shape, turned and perhaps turned over, as its convex hull, with its
 * lowest point at 0 and its leftmost point at 0. Its two sides are kept as chains by height, since all that a row asks
 * of a blank is how far it reaches to the right and to the left at each height.
 */
import { cross, type Point, type Polygon, reflect, subtract, turn } from '../../src/shape/point.ts';

export interface Variant {
  /** Index of the blank in the job. */
  readonly blank: number;
  readonly shape: number;
  /** In the strip's own frame. */
  readonly turn: number;
  readonly mirror: boolean;
  readonly hull: Polygon;
  readonly width: number;
  readonly height: number;
  readonly area: number;
  /** x of the centroid: where the blank is taken to be along the strip. */
  readonly middle: number;
  /** What to add to a turned (and mirrored) outline to bring it here. */
  readonly shift: Point;
  readonly right: Chain;
  readonly left: Chain;
}

/** Heights ascending with the reach at each; straight in between. */
export interface Chain {
  readonly y: Float64Array;
  readonly x: Float64Array;
}

export function makeVariant(blank: number, shape: number, outline: Polygon, degrees: number, mirror: boolean): Variant {
  const turned = outline.map((p) => turn(p, degrees)).map((p) => (mirror ? reflect(p) : p));
  const raw = convexHull(turned);
  const minX = Math.min(...raw.map((p) => p[0]));
  const minY = Math.min(...raw.map((p) => p[1]));
  const hull = raw.map((p): Point => [snap(p[0] - minX), snap(p[1] - minY)]);
  const width = Math.max(...hull.map((p) => p[0]));
  const height = Math.max(...hull.map((p) => p[1]));
  const { area, middle } = areaAndMiddle(hull);
  const [right, left] = makeChains(hull);
  return { blank, shape, turn: degrees, mirror, hull, width, height, area, middle, shift: [-minX, -minY], right, left };
}

/** Whether two variants are the same outline in the same place, so that one of them is enough. */
export function sameVariant(a: Variant, b: Variant): boolean {
  if (a.blank !== b.blank || a.hull.length !== b.hull.length) return false;
  if (Math.abs(a.width - b.width) > 1e-7 || Math.abs(a.height - b.height) > 1e-7) return false;
  return a.hull.every((p) => b.hull.some((q) => Math.abs(p[0] - q[0]) < 1e-7 && Math.abs(p[1] - q[1]) < 1e-7));
}

/** Anticlockwise, without points on its edges (monotone chain; Andrew 1979). */
export function convexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const p of list) {
      while (kept.length > 1 && cross(subtract(kept.at(-1)!, kept.at(-2)!), subtract(p, kept.at(-2)!)) <= 1e-12) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function areaAndMiddle(hull: Polygon): { area: number; middle: number } {
  let twice = 0;
  let moment = 0;
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length]!;
    const c = cross(p, q);
    twice += c;
    moment += c * (p[0] + q[0]);
  });
  return { area: twice / 2, middle: twice > 0 ? moment / (3 * twice) : 0 };
}

/** Right and left side of a convex outline. It runs anticlockwise: going up it is the right side, going down the left. */
export function makeChains(hull: Polygon): readonly [right: Chain, left: Chain] {
  const right: Point[] = [];
  const left: Point[] = [];
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length]!;
    if (q[1] > p[1]) right.push(p, q);
    else if (q[1] < p[1]) left.push(q, p);
  });
  return [chain(right, Math.max), chain(left, Math.min)];
}

function chain(points: readonly Point[], outermost: (a: number, b: number) => number): Chain {
  const sorted = [...points].sort((a, b) => a[1] - b[1]);
  const ys: number[] = [];
  const xs: number[] = [];
  for (const [x, y] of sorted) {
    if (ys.length > 0 && y === ys[ys.length - 1]) xs[xs.length - 1] = outermost(xs[xs.length - 1]!, x);
    else {
      ys.push(y);
      xs.push(x);
    }
  }
  return { y: Float64Array.from(ys), x: Float64Array.from(xs) };
}

/** Turning leaves the last bits untidy, and a blank that should be level must not rise by 1e-16. */
function snap(value: number): number {
  return Math.round(value * 1e10) / 1e10;
}
