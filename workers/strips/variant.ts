/**
 * A variant is a blank as it may lie in a strip: one shape, turned and perhaps turned over, as its convex hull, with its
 * lowest point at 0 and its leftmost point at 0.
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
  /** Whether cuts along its edges are considered: it lies at a turn asked for, or with an edge along or square to the strip. */
  readonly levelled: boolean;
  /** What to add to a turned (and mirrored) outline to bring it here. */
  readonly shift: Point;
  /** Three stages only: what lies in it from the near edge up, where a whole stack is treated as one box (stack-variant.ts). */
  readonly stack?: readonly Variant[];
}

/** @param asked whether the turn was asked for, rather than one of those that stand for any turn */
export function makeVariant(
  blank: number,
  shape: number,
  outline: Polygon,
  degrees: number,
  mirror: boolean,
  asked: boolean,
): Variant {
  const turned = outline.map((p) => turn(p, degrees)).map((p) => (mirror ? reflect(p) : p));
  const raw = convexHull(turned);
  const minX = Math.min(...raw.map((p) => p[0]));
  const minY = Math.min(...raw.map((p) => p[1]));
  const hull = raw.map((p): Point => [snap(p[0] - minX), snap(p[1] - minY)]);
  const width = Math.max(...hull.map((p) => p[0]));
  const height = Math.max(...hull.map((p) => p[1]));
  const levelled = asked || hull.some((p, i) => isLevel(p, hull[(i + 1) % hull.length]!));
  return {
    blank,
    shape,
    turn: degrees,
    mirror,
    hull,
    width,
    height,
    area: areaOf(hull),
    levelled,
    shift: [-minX, -minY],
  };
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
      while (kept.length > 1 && cross(subtract(kept.at(-1)!, kept.at(-2)!), subtract(p, kept.at(-2)!)) <= 1e-12)
        kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function isLevel(a: Point, b: Point): boolean {
  return Math.abs(a[0] - b[0]) < 1e-9 || Math.abs(a[1] - b[1]) < 1e-9;
}

function areaOf(hull: Polygon): number {
  return hull.reduce((sum, p, i) => sum + cross(p, hull[(i + 1) % hull.length]!), 0) / 2;
}

/** Turning leaves the last bits untidy, and a blank that should be level must not rise by 1e-16. */
function snap(value: number): number {
  return Math.round(value * 1e10) / 1e10;
}
