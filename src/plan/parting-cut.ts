/** The one straight cut across a strip that parts a blank from all that come after it. */
import { convexHull } from '../shape/hull.ts';
import type { Point, Polygon } from '../shape/point.ts';

/** A cut by where it meets the strip's near edge (y = 0) and its far edge (y = height). */
export interface Cut {
  readonly near: number;
  readonly far: number;
}

export interface CutRules {
  readonly height: number;
  /** Of the strip. */
  readonly length: number;
  /** Marks on whole multiples of it are preferred where they do as well. null: none. */
  readonly ruler: number | null;
  /** What counts as touching. */
  readonly tolerance: number;
}

/**
 * The cut that has `first` before it and all `rest` after it, or null where no straight cut does. A square cut is chosen
 * where one will do, then one along an edge of the blank, then one along an edge of a blank after it, then any other, the
 * steepest. Outlines that are not convex count as their hulls.
 * @param first in the strip's frame: x along it, y from its near edge
 */
export function partingCut(first: Polygon, rest: readonly Polygon[], rules: CutRules): Cut | null {
  const own = convexHull(first);
  const others = rest.map((outline) => convexHull(outline));
  const end = Math.max(...own.map((point) => point[0]));
  const start = Math.min(...others.flat().map((point) => point[0]), rules.length);
  if (others.length === 0 || end <= start + rules.tolerance) {
    const at = squareMark(end, start, rules);
    return { near: at, far: at };
  }
  const parts = (cut: Cut) =>
    own.every((point) => beyond(cut, point, rules.height) <= rules.tolerance) &&
    others.every((other) => other.every((point) => beyond(cut, point, rules.height) >= -rules.tolerance));
  const along = [edgesOf(own), others.flatMap(edgesOf), pairs(own, others.flat())];
  for (const lines of along) {
    const cuts = lines.flatMap((line) => cutAlong(line, rules.height)).filter(parts);
    if (cuts.length > 0) {
      return cuts.reduce((best, cut) => (lean(cut) < lean(best) ? cut : best));
    }
  }
  return null;
}

/** At the blank's end, or on the next mark of the ruler where that still spares what follows. */
function squareMark(end: number, start: number, { ruler, tolerance }: CutRules): number {
  if (ruler === null) {
    return end;
  }
  const mark = Math.ceil(end / ruler - 1e-6) * ruler;
  return mark <= start + tolerance ? mark : end;
}

/** How far along the strip a point lies beyond the cut; negative before it. */
function beyond({ near, far }: Cut, [x, y]: Point, height: number): number {
  return x - (near + ((far - near) * y) / height);
}

const lean = (cut: Cut): number => Math.abs(cut.far - cut.near);

type Line = readonly [Point, Point];

const edgesOf = (polygon: Polygon): readonly Line[] =>
  polygon.map((point, i) => [point, polygon[(i + 1) % polygon.length]!]);

const pairs = (a: readonly Point[], b: readonly Point[]): readonly Line[] =>
  a.flatMap((p) => b.map((q): Line => [p, q]));

/** The line prolonged to both edges of the strip; none where it runs along the strip. */
function cutAlong([a, b]: Line, height: number): readonly Cut[] {
  const rise = b[1] - a[1];
  if (Math.abs(rise) <= 1e-9 * height) {
    return [];
  }
  const slope = (b[0] - a[0]) / rise;
  return [{ near: a[0] - slope * a[1], far: a[0] + slope * (height - a[1]) }];
}
