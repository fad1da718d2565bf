/** A unit's patches made ready for questions about sewing: what each spans, and along what it meets the others. */

import { arcOf, onArc } from '../shape/arc.ts';
import { flatten } from '../shape/flatten.ts';
import { type Edge, edgesOf, type Outline } from '../shape/outline.ts';
import { type Box, outlineArea } from '../shape/outline-measures.ts';
import { add, cross, distance, dot, type Point, type Polygon, scale, subtract } from '../shape/point.ts';
import { polygonBox } from '../shape/polygon.ts';

export interface SewingUnit {
  readonly patches: readonly SewingPatch[];
  /** How far apart things may lie and still be taken for one, in the outlines' unit. */
  readonly tolerance: number;
}

export interface SewingPatch {
  /** As drawn, by index. An arc that bows no more than the tolerance is straight. */
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
  readonly curved: boolean;
}

/** Less shared than this part of the shorter edge is a touch, not a seam. */
const A_TOUCH = 0.02;
/** Arcs are compared at so many places. */
const MARKS = 32;
/** Coordinates are rounded in files: the tolerance of a unit by its longest edge, where nobody gives one. */
const ALONG = 1e-3;

/** A tolerance for outlines of which nothing else is known. */
export function usualTolerance(outlines: readonly Outline[]): number {
  const edges = outlines.flatMap((outline) => edgesOf(outline).map((edge) => distance(edge.from, edge.to)));
  return ALONG * Math.max(...edges, 0) || ALONG;
}

/** @param outlines arcs must exist (outlineFault is null); either way round */
export function sewingUnit(outlines: readonly Outline[], tolerance: number): SewingUnit {
  const shapes = outlines.map((outline) => shapeOf(outline, tolerance));
  return {
    tolerance,
    patches: shapes.map((shape, index) => ({
      edges: shape.edges,
      polygon: shape.polygon,
      shared: shapes.flatMap((other, with_) =>
        with_ === index || !near(shape.box, other.box, tolerance) ? [] : runsBetween(shape, other, with_, tolerance),
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
    edges: edgesOf(outline).map((edge) => (bow(edge) <= tolerance ? { from: edge.from, to: edge.to } : edge)),
    polygon,
    box: polygonBox(polygon),
    hand: outlineArea(outline) >= 0 ? 1 : -1,
  };
}

/** How far an edge parts from its chord. */
function bow(edge: Edge): number {
  const arc = arcOf(edge);
  return arc === null ? 0 : arc.radius * (1 - Math.cos(arc.sweep / 2));
}

const near = (a: Box, b: Box, within: number): boolean =>
  a.min[0] <= b.max[0] + within &&
  b.min[0] <= a.max[0] + within &&
  a.min[1] <= b.max[1] + within &&
  b.min[1] <= a.max[1] + within;

function runsBetween(one: Shape, other: Shape, index: number, tolerance: number): readonly SharedRun[] {
  return one.edges.flatMap((edge, e) =>
    other.edges.flatMap((facing) => {
      const ends =
        edge.arc === undefined && facing.arc === undefined
          ? straightRun(edge, facing, one.hand === other.hand, tolerance)
          : edge.arc !== undefined && facing.arc !== undefined
            ? curvedRun(edge, facing, tolerance)
            : null;
      if (ends === null) {
        return [];
      }
      const [from, to] = one.hand > 0 ? [ends.from, ends.to] : [ends.to, ends.from];
      return [{ with: index, edge: e, from, to, curved: edge.arc !== undefined }];
    }),
  );
}

interface Ends {
  readonly from: Point;
  readonly to: Point;
}

/** Neighbours drawn the same way round run along their common edge in opposite ways; those that do not lie over one another. */
function straightRun(a: Edge, b: Edge, sameHand: boolean, tolerance: number): Ends | null {
  const [sizeA, sizeB] = [distance(a.from, a.to), distance(b.from, b.to)];
  const along = scale(subtract(a.to, a.from), 1 / sizeA);
  const [start, end] = [dot(subtract(b.from, a.from), along), dot(subtract(b.to, a.from), along)];
  if (start > end !== sameHand) {
    return null;
  }
  const from = Math.max(0, Math.min(start, end));
  const to = Math.min(sizeA, Math.max(start, end));
  if (to - from <= Math.max(2 * tolerance, A_TOUCH * Math.min(sizeA, sizeB))) {
    return null;
  }
  const offAt = (t: number): number => {
    const share = (t - start) / (end - start);
    return cross(along, subtract(add(b.from, scale(subtract(b.to, b.from), share)), a.from));
  };
  return Math.abs(offAt(from)) > tolerance || Math.abs(offAt(to)) > tolerance
    ? null
    : { from: add(a.from, scale(along, from)), to: add(a.from, scale(along, to)) };
}

function curvedRun(a: Edge, b: Edge, tolerance: number): Ends | null {
  const arc = arcOf(a)!;
  const facing = arcOf(b)!;
  const places = Array.from({ length: MARKS + 1 }, (_, k) => onArc(arc, arc.start + (arc.sweep * k) / MARKS));
  const reach = facing.sweep / 2;
  const middle = onArc(facing, facing.start + reach);
  const on = places.filter((place) => {
    const turned = Math.abs(turnBetween(subtract(middle, facing.centre), subtract(place, facing.centre)));
    return (
      Math.abs(distance(place, facing.centre) - facing.radius) <= tolerance &&
      turned <= Math.abs(reach) + tolerance / facing.radius
    );
  });
  const [from, to] = [on[0], on.at(-1)];
  return from === undefined || to === undefined || on.length < 3 ? null : { from, to };
}

const turnBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));
