/** Polygons grown outward, each edge by its own distance. */
import { largest, union } from './combine.ts';
import { clip, type HalfPlane, outwardNormal } from './half-plane.ts';
import { add, cross, dot, type Point, type Polygon, scale, subtract } from './point.ts';
import { isConvex, polygonBox, tidyPolygon } from './polygon.ts';

export interface Growth {
  /** For each edge, how far it moves out. Not negative. */
  readonly edges: readonly number[];
  /** For each corner, how far beyond it a sharp tip is cut. Default: the larger of its two edges'. */
  readonly tips?: readonly number[];
}

/** Corners sharper than a right angle are tips. A right angle is none: a grown square stays a square. */
const RIGHT_ANGLE_SLACK = 1e-6;

/**
 * Moves the edges of a simple anticlockwise polygon outward. Sharp tips are cut square across their bisector at the given
 * distance beyond the point, never mitred: a mitre of angle θ would run d/sin(θ/2). The result holds every place that is
 * within the least distance of the polygon. Hollows that the growth closes are filled.
 */
export function grow(polygon: Polygon, growth: Growth): Polygon {
  return isConvex(polygon)
    ? withinLimits(growthLimits(polygon, growth), polygon, Math.max(0, ...growth.edges, ...(growth.tips ?? [])))
    : growHollow(polygon, growth);
}

/** By the same distance all round. */
export function growEvenly(polygon: Polygon, by: number): Polygon {
  return grow(polygon, { edges: polygon.map(() => by) });
}

/** The lines that bound a grown convex polygon: one an edge, then one a sharp tip. Corner i is where edge i begins. */
export function growthLimits(polygon: Polygon, { edges, tips }: Growth): readonly HalfPlane[] {
  const sides = polygon.map((point, i) => {
    const normal = outwardNormal(point, polygon[(i + 1) % polygon.length]!);
    return { normal, reach: dot(point, normal) + edges[i]! };
  });
  const cuts = sharpTips(polygon).map(({ corner, bisector }) => ({
    normal: bisector,
    reach: dot(polygon[corner]!, bisector) + tipOf(corner, edges, tips),
  }));
  return [...sides, ...cuts];
}

export interface Tip {
  readonly corner: number;
  /** Of length 1, from the point outward. */
  readonly bisector: Point;
}

/** The corners sharper than a right angle. */
export function sharpTips(polygon: Polygon): readonly Tip[] {
  return polygon.flatMap((point, corner) => {
    const back = unit(subtract(polygon.at(corner - 1)!, point));
    const on = unit(subtract(polygon[(corner + 1) % polygon.length]!, point));
    const sharp = cross(on, back) > 0 && dot(on, back) > RIGHT_ANGLE_SLACK;
    return sharp ? [{ corner, bisector: unit(scale(add(on, back), -1)) }] : [];
  });
}

const tipOf = (corner: number, edges: readonly number[], tips: readonly number[] | undefined): number =>
  tips?.[corner] ?? Math.max(edges[corner]!, edges.at(corner - 1)!);

/** The part of the plane within all the limits, given that it lies within 10 × `most` + 1 of the polygon. */
export function withinLimits(limits: readonly HalfPlane[], polygon: Polygon, most: number): Polygon {
  const { min, max } = polygonBox(polygon);
  const far = 10 * most + 1;
  const start: Polygon = [
    [min[0] - far, min[1] - far],
    [max[0] + far, min[1] - far],
    [max[0] + far, max[1] + far],
    [min[0] - far, max[1] + far],
  ];
  return tidyPolygon(limits.reduce<Polygon>(clip, start));
}

/** The polygon, a quadrilateral swept out by each edge, and a piece for each bulging corner, all made one. */
function growHollow(polygon: Polygon, { edges, tips }: Growth): Polygon {
  const pieces: Polygon[] = [polygon];
  const sharp = new Map(sharpTips(polygon).map(({ corner, bisector }) => [corner, bisector]));
  polygon.forEach((point, i) => {
    const next = polygon[(i + 1) % polygon.length]!;
    const normal = outwardNormal(point, next);
    const out = scale(normal, edges[i]!);
    pieces.push([point, add(point, out), add(next, out), next].reverse());
    const normalBefore = outwardNormal(polygon.at(i - 1)!, point);
    const bulges = cross(normalBefore, normal) > 0;
    if (bulges) {
      const outBefore = scale(normalBefore, edges.at(i - 1)!);
      const bisector = sharp.get(i);
      const rim =
        bisector === undefined
          ? mitre(outBefore, normalBefore, out, normal)
          : squareTip(outBefore, normalBefore, out, normal, bisector, tipOf(i, edges, tips));
      pieces.push([point, add(point, outBefore), ...rim.map((step) => add(point, step)), add(point, out)]);
    }
  });
  return tidyPolygon(largest(union(pieces)), 1e-7);
}

/** Where the two moved edges meet, as a step from the corner; nothing where they meet behind one of the edges' ends. */
function mitre(outBefore: Point, normalBefore: Point, out: Point, normal: Point): readonly Point[] {
  const along: Point = [-normal[1], normal[0]];
  const reach = dot(subtract(outBefore, out), normalBefore) / dot(along, normalBefore);
  const meeting = add(out, scale(along, reach));
  const ahead = dot(subtract(meeting, outBefore), [-normalBefore[1], normalBefore[0]]);
  return reach < 0 && ahead > 0 ? [meeting] : [];
}

/** Where the line square across the bisector meets the two moved edges. */
function squareTip(
  outBefore: Point,
  normalBefore: Point,
  out: Point,
  normal: Point,
  bisector: Point,
  tip: number,
): readonly Point[] {
  const alongBefore: Point = [-normalBefore[1], normalBefore[0]];
  const along: Point = [-normal[1], normal[0]];
  const first = add(outBefore, scale(alongBefore, (tip - dot(outBefore, bisector)) / dot(alongBefore, bisector)));
  const second = add(out, scale(along, (tip - dot(out, bisector)) / dot(along, bisector)));
  return [first, second];
}

function unit(a: Point): Point {
  const size = Math.hypot(a[0], a[1]);
  return [a[0] / size, a[1] / size];
}
