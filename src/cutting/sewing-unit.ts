/** A unit's patches made ready for questions about sewing: what each spans, and along what it meets the others. */

import { arcOf, type CentredArc, onArc } from '../shape/arc.ts';
import { flatten } from '../shape/flatten.ts';
import { type Edge, edgesOf, type Outline } from '../shape/outline.ts';
import { type Box, outlineArea } from '../shape/outline-measures.ts';
import { add, cross, distance, dot, type Point, type Polygon, scale, subtract, turn } from '../shape/point.ts';
import { polygonBox } from '../shape/polygon.ts';

export interface SewingUnit {
  readonly patches: readonly SewingPatch[];
  /** How far apart things may lie and still be taken for one, in the outlines' unit. */
  readonly tolerance: number;
}

export interface SewingPatch {
  /** As drawn, by index. */
  readonly edges: readonly Edge[];
  /** Anticlockwise, arcs as chords. */
  readonly polygon: Polygon;
  /** What its edges share with other patches. */
  readonly shared: readonly SharedRun[];
}

/** A stretch of a patch's edge along which another patch lies on the other side. */
export interface SharedRun {
  readonly with: number;
  /** Index of the patch's own edge. */
  readonly edge: number;
  /** Its ends, so that the patch lies to the left. */
  readonly from: Point;
  readonly to: Point;
  /** Whether it parts from its chord by more than the tolerance. */
  readonly curved: boolean;
  /** Where both edges are arcs, from `from` to `to`. */
  readonly arc: CentredArc | null;
}

/** Less shared than this part of the shorter edge is a touch, not a seam. */
const A_TOUCH = 0.02;
/** Coordinates are rounded in files: the tolerance of a unit by its longest edge, where nobody gives one. */
const ALONG = 1e-3;

/** A tolerance for outlines of which nothing else is known. */
export function usualTolerance(outlines: readonly Outline[]): number {
  const edges = outlines.flatMap((outline) => edgesOf(outline).map((edge) => distance(edge.from, edge.to)));
  return ALONG * Math.max(...edges, 0) || ALONG;
}

/**
 * @param outlines arcs must exist (outlineFault is null); either way round
 * @param touch what two edges share is passed over where it is no more than this part of the shorter
 */
export function sewingUnit(outlines: readonly Outline[], tolerance: number, touch = A_TOUCH): SewingUnit {
  const shapes = outlines.map((outline) => shapeOf(outline, tolerance));
  return {
    tolerance,
    patches: shapes.map((shape, index) => ({
      edges: shape.edges,
      polygon: shape.polygon,
      shared: shapes.flatMap((other, with_) =>
        with_ === index || !near(shape.box, other.box, tolerance)
          ? []
          : runsBetween(shape, other, with_, { tolerance, touch }),
      ),
    })),
  };
}

interface Shape {
  readonly edges: readonly Edge[];
  readonly polygon: Polygon;
  readonly box: Box;
  /** Which way round it is drawn. */
  readonly hand: 1 | -1;
}

function shapeOf(outline: Outline, tolerance: number): Shape {
  const polygon = flatten(outline, { side: 'chord', within: tolerance / 2 });
  return {
    edges: edgesOf(outline),
    polygon,
    box: polygonBox(polygon),
    hand: outlineArea(outline) >= 0 ? 1 : -1,
  };
}

/** How far an arc parts from its chord. */
const bow = (arc: CentredArc): number => arc.radius * (1 - Math.cos(Math.min(Math.PI, Math.abs(arc.sweep)) / 2));

/** Whether an edge can be sewn as a straight one. */
function isStraight(edge: Edge, tolerance: number): boolean {
  const arc = arcOf(edge);
  return arc === null || bow(arc) <= tolerance;
}

const near = (a: Box, b: Box, within: number): boolean =>
  a.min[0] <= b.max[0] + within &&
  b.min[0] <= a.max[0] + within &&
  a.min[1] <= b.max[1] + within &&
  b.min[1] <= a.max[1] + within;

interface Closeness {
  readonly tolerance: number;
  readonly touch: number;
}

function runsBetween(one: Shape, other: Shape, index: number, closeness: Closeness): readonly SharedRun[] {
  const { tolerance } = closeness;
  const sameHand = one.hand === other.hand;
  return one.edges.flatMap((edge, e) =>
    other.edges.flatMap((facing) => {
      const curves = edge.arc !== undefined && facing.arc !== undefined;
      const lines = isStraight(edge, tolerance) && isStraight(facing, tolerance);
      const ends = curves
        ? curvedRun(edge, facing, sameHand, closeness)
        : lines
          ? straightRun(edge, facing, sameHand, closeness)
          : null;
      if (ends === null) {
        return [];
      }
      const run = one.hand > 0 ? ends : turnedBack(ends);
      return [{ with: index, edge: e, ...run, curved: curves && !isStraight(edge, tolerance) }];
    }),
  );
}

type Ends = Pick<SharedRun, 'from' | 'to' | 'arc'>;

const turnedBack = ({ from, to, arc }: Ends): Ends => ({
  from: to,
  to: from,
  arc: arc && { ...arc, start: arc.start + arc.sweep, sweep: -arc.sweep },
});

/** Neighbours drawn the same way round run along their common edge in opposite ways; those that do not lie over one another. */
function straightRun(a: Edge, b: Edge, sameHand: boolean, { tolerance, touch }: Closeness): Ends | null {
  const [sizeA, sizeB] = [distance(a.from, a.to), distance(b.from, b.to)];
  const along = scale(subtract(a.to, a.from), 1 / sizeA);
  const [start, end] = [dot(subtract(b.from, a.from), along), dot(subtract(b.to, a.from), along)];
  if (start > end !== sameHand) {
    return null;
  }
  const from = Math.max(0, Math.min(start, end));
  const to = Math.min(sizeA, Math.max(start, end));
  if (to - from <= Math.max(2 * tolerance, touch * Math.min(sizeA, sizeB))) {
    return null;
  }
  const offAt = (t: number): number => {
    const share = (t - start) / (end - start);
    return cross(along, subtract(add(b.from, scale(subtract(b.to, b.from), share)), a.from));
  };
  return Math.abs(offAt(from)) > tolerance || Math.abs(offAt(to)) > tolerance
    ? null
    : { from: add(a.from, scale(along, from)), to: add(a.from, scale(along, to)), arc: null };
}

/** Neighbours' arcs turn opposite ways on their way round, as straight edges run opposite ways. */
function curvedRun(a: Edge, b: Edge, sameHand: boolean, { tolerance, touch }: Closeness): Ends | null {
  const [arc, facing] = [arcOf(a)!, arcOf(b)!];
  if ((arc.sweep > 0 === facing.sweep > 0) === sameHand) {
    return null;
  }
  // Told in radians from the middle of the first arc, the way it goes.
  const way = Math.sign(arc.sweep);
  const half = Math.abs(arc.sweep) / 2;
  const middle = turn(subtract(a.from, arc.centre), (way * half * 180) / Math.PI);
  const gone = (place: Point): number => way * turnBetween(middle, subtract(place, arc.centre));
  const reach = Math.abs(facing.sweep) / 2;
  const centre = gone(onArc(facing, facing.start + facing.sweep / 2));
  const from = Math.max(-half, centre - reach);
  const to = Math.min(half, centre + reach);
  const least = Math.max(2 * tolerance, touch * arc.radius * 2 * Math.min(half, reach));
  if ((to - from) * arc.radius <= least) {
    return null;
  }
  const place = (angle: number): Point => onArc(arc, arc.start + way * (half + angle));
  const places = [from, (from + to) / 2, to].map(place);
  const off = places.map((each) => Math.abs(distance(each, facing.centre) - facing.radius));
  if (Math.max(...off) > tolerance) {
    return null;
  }
  const run = { ...arc, start: arc.start + way * (half + from), sweep: way * (to - from) };
  return { from: places[0]!, to: places[2]!, arc: run };
}

const turnBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));
