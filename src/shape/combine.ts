/** The one door to clipper: unions, differences and common parts of polygons that need not be convex. */
import { Clipper, EndType, FillRule, JoinType, type Path64 } from 'clipper2-ts';
import type { Polygon } from './point.ts';
import { polygonArea, polygonPerimeter } from './polygon.ts';

/** Clipper reckons in whole numbers; this many to the unit, so that its rounding stays below 1e-8. */
const FINENESS = 1e8;

const toPath = (polygon: Polygon): Path64 =>
  polygon.map(([x, y]) => ({ x: Math.round(x * FINENESS), y: Math.round(y * FINENESS) }));
const fromPath = (path: Path64): Polygon => path.map(({ x, y }) => [x / FINENESS, y / FINENESS]);

/** The union of anticlockwise polygons: outer boundaries anticlockwise, holes clockwise. */
export function union(polygons: readonly Polygon[]): readonly Polygon[] {
  return Clipper.union(polygons.map(toPath), FillRule.NonZero).map(fromPath);
}

/** Corners are drawn out as far as this many times the step, so that they come back where they were. */
const SHARPEST = 50;
/** Steps are reckoned with fewer digits: their squares must be whole numbers that are told exactly. */
const COARSER = 1e-3;

/**
 * The union with gaps closed that are no wider than twice `gap`: hairs between neighbours whose coordinates were rounded. Anticlockwise,
 * with holes clockwise; corners keep their place within a hundredth of the gap or 1e-5.
 */
export function unionClosed(polygons: readonly Polygon[], gap: number): readonly Polygon[] {
  const scaled = (polygon: Polygon): Polygon => polygon.map(([x, y]) => [x * COARSER, y * COARSER]);
  const step = gap * FINENESS * COARSER;
  const grown = Clipper.inflatePaths(
    polygons.map((each) => toPath(scaled(each))),
    step,
    JoinType.Miter,
    EndType.Polygon,
    SHARPEST,
  );
  const whole = Clipper.union(grown, FillRule.NonZero);
  return Clipper.inflatePaths(whole, -step, JoinType.Miter, EndType.Polygon, SHARPEST).map((path) =>
    fromPath(path).map(([x, y]) => [x / COARSER, y / COARSER]),
  );
}

/** What of the first polygon lies outside the second. */
export function difference(first: Polygon, second: Polygon): readonly Polygon[] {
  return Clipper.difference([toPath(first)], [toPath(second)], FillRule.NonZero).map(fromPath);
}

/** What two polygons have in common. */
export function intersection(first: Polygon, second: Polygon): readonly Polygon[] {
  return Clipper.intersect([toPath(first)], [toPath(second)], FillRule.NonZero).map(fromPath);
}

/** Boundaries as a union gives them, moved out by so much all round with round corners; in, where it is negative. */
export function widen(boundaries: readonly Polygon[], by: number): readonly Polygon[] {
  const paths = Clipper.inflatePaths(boundaries.map(toPath), by * FINENESS, JoinType.Round, EndType.Polygon);
  return paths.map(fromPath);
}

/** Whether nothing of a polygon lies outside a cover, but for a rim as thin as the figures are rounded. */
export function covers(cover: Polygon, polygon: Polygon): boolean {
  const bare = difference(polygon, cover).reduce((sum, each) => sum + Math.abs(polygonArea(each)), 0);
  return bare <= 1e-6 * polygonPerimeter(polygon);
}

/** The polygon of greatest area among several, which for a union of overlapping polygons is its outer boundary. */
export function largest(polygons: readonly Polygon[]): Polygon {
  return polygons.reduce((best, each) => (polygonArea(each) > polygonArea(best) ? each : best), [] as Polygon);
}
