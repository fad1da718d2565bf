/** The outer edge of a unit as it stands in its block: what it is joined to, and where it is to meet its neighbours. */

import { type Place, placesOf } from '../quilt/places.ts';
import type { Unit } from '../quilt/quilt.ts';
import { arcOf, onArc, passes } from '../shape/arc.ts';
import { flatten } from '../shape/flatten.ts';
import { type Edge, edgesOf, type Outline } from '../shape/outline.ts';
import { type Box, outlineArea } from '../shape/outline-measures.ts';
import { add, cross, distance, dot, type Point, type Polygon, reflect, scale, subtract, turn } from '../shape/point.ts';
import { isInside, polygonBox } from '../shape/polygon.ts';

interface PlacedPatch {
  readonly unit: string;
  readonly place: number;
  readonly polygon: Polygon;
  readonly box: Box;
}

/** A point of the outer edge, and the way out of the unit there. */
export interface EdgePoint {
  readonly at: Point;
  /** Of length 1. */
  readonly outward: Point;
}

export interface OuterEdge extends EdgePoint {
  readonly from: Point;
  readonly to: Point;
  readonly units: readonly string[];
}

/** All patches of a block where they lie in it. */
export class BlockMap {
  private readonly patches: readonly PlacedPatch[];
  private readonly corners: readonly { readonly unit: string; readonly place: number; readonly at: Point }[];
  /** Nearer than this counts as touching. */
  readonly near: number;

  constructor(units: readonly Unit[]) {
    const flat = units.map((unit) =>
      unit.patches.map((patch) => flatten(patch.outline, { side: 'chord', within: 1e-3 })),
    );
    const size = Math.max(1, ...flat.flat(2).map((point) => Math.hypot(...point)));
    this.near = 2e-4 * size;
    const placed = units.flatMap((unit, u) =>
      placesOf(unit).flatMap((place) =>
        unit.patches.map((patch, p) => ({ unit: unit.id, place, patch, polygon: flat[u]![p]! })),
      ),
    );
    this.patches = placed.map(({ unit, place, polygon }) => {
      const there = polygon.map((point) => toBlock(point, place));
      return { unit, place: place.index, polygon: there, box: polygonBox(there) };
    });
    this.corners = placed.flatMap(({ unit, place, patch }) =>
      edgesOf(patch.outline).map(({ from }) => ({ unit, place: place.index, at: toBlock(from, place) })),
    );
  }

  /** The unit whose patch lies there; null where there is none. */
  unitAt(point: Point): string | null {
    const found = this.patches.find(
      ({ box, polygon }) =>
        point[0] >= box.min[0] &&
        point[0] <= box.max[0] &&
        point[1] >= box.min[1] &&
        point[1] <= box.max[1] &&
        isInside(polygon, point[0], point[1]),
    );
    return found?.unit ?? null;
  }

  /** Corners of other units' patches, or of the same unit's at other places, as seen from a place of a unit. */
  foreignCorners(unit: string, place: Place): readonly Point[] {
    return this.corners
      .filter((corner) => corner.unit !== unit || corner.place !== place.index)
      .map(({ at }) => fromBlock(at, place));
  }

  /** What lies at a point that is told in the frame of a unit's place. */
  seenFrom(place: Place, point: Point): string | null {
    return this.unitAt(turn(point, place.turn));
  }
}

/** From the drawing of a unit into its block. */
const toBlock = (point: Point, place: Place): Point => turn(place.mirrored ? reflect(point) : point, place.turn);
/** Into the frame of the unit as it is held at the place: mirrored already, not yet turned. */
const fromBlock = (point: Point, place: Place): Point => turn(point, -place.turn);

/**
 * @param outlines the unit's patches as held at the places (mirrored where they are)
 * @param places all those at which the unit is the same
 */
export function outerEdges(
  map: BlockMap,
  outlines: readonly Outline[],
  places: readonly Place[],
): readonly OuterEdge[] {
  const inside = insideTest(outlines);
  return outlines.flatMap((outline) =>
    handedEdges(outline).flatMap((edge) => {
      const middle = edgePoint(edge, middleOf(edge));
      const beyond = add(middle.at, scale(middle.outward, 4 * map.near));
      if (inside(beyond)) return [];
      const units = new Set(places.map((place) => map.seenFrom(place, beyond)));
      return [{ ...middle, from: edge.from, to: edge.to, units: [...units].filter((id) => id !== null).sort() }];
    }),
  );
}

/**
 * Where the outer edge, on its way past, meets a seam of its own or, at every place alike, a corner of a neighbour. Its own corners
 * need no mark.
 */
export function meetingPoints(
  map: BlockMap,
  unit: string,
  outlines: readonly Outline[],
  places: readonly Place[],
): readonly EdgePoint[] {
  const inside = insideTest(outlines);
  const edges = outlines.flatMap(handedEdges);
  const foreign = places.map((place) => map.foreignCorners(unit, place));
  const close = (a: Point, b: Point): boolean => distance(a, b) <= 4 * map.near;
  const shared = (foreign[0] ?? []).filter((point) =>
    foreign.every((each) => each.some((other) => close(point, other))),
  );
  const own = edges.map(({ from }) => from);
  const found: EdgePoint[] = [];
  for (const point of [...own, ...shared]) {
    if (found.some(({ at }) => close(at, point))) continue;
    const here = edges
      .filter((edge) => liesOn(edge, point, map.near))
      .filter((edge) => {
        // Beside a corner, not at it: there a seam's own side looks out of the unit too.
        const { at, outward } = edgePoint(edge, inward(edge, point, 20 * map.near));
        return !inside(add(at, scale(outward, 4 * map.near)));
      })
      .map((edge) => edgePoint(edge, point));
    const [first] = here;
    if (first !== undefined && here.every(({ outward }) => dot(outward, first.outward) > 0.9998)) {
      const isOwnEnd = here.length === 1 && own.some((corner) => close(corner, point));
      if (!isOwnEnd) found.push({ at: point, outward: first.outward });
    }
  }
  return found;
}

function insideTest(outlines: readonly Outline[]): (point: Point) => boolean {
  const polygons = outlines.map((outline) => flatten(outline, { side: 'chord', within: 1e-4 }));
  return ([x, y]) => polygons.some((polygon) => isInside(polygon, x, y));
}

function middleOf(edge: Edge): Point {
  const arc = arcOf(edge);
  return arc === null ? scale(add(edge.from, edge.to), 0.5) : onArc(arc, arc.start + arc.sweep / 2);
}

/** An edge that knows which way its outline runs: anticlockwise, or clockwise once mirrored. */
type HandedEdge = Edge & { readonly hand: number };

function handedEdges(outline: Outline): readonly HandedEdge[] {
  const hand = Math.sign(outlineArea(outline));
  return edgesOf(outline).map((edge) => ({ ...edge, hand }));
}

function edgePoint(edge: HandedEdge, at: Point): EdgePoint {
  const arc = arcOf(edge);
  const { hand } = edge;
  if (arc === null) {
    const [x, y] = subtract(edge.to, edge.from);
    const size = Math.hypot(x, y);
    return { at, outward: [(hand * y) / size, (-hand * x) / size] };
  }
  const out = scale(subtract(at, arc.centre), 1 / distance(at, arc.centre));
  return { at, outward: scale(out, hand * Math.sign(arc.sweep)) };
}

/** From a point of the edge a little way toward its middle. */
function inward(edge: Edge, point: Point, by: number): Point {
  const arc = arcOf(edge);
  const step = subtract(middleOf(edge), point);
  const far = Math.hypot(...step);
  if (far <= by) return point;
  const near = add(point, scale(step, by / far));
  return arc === null ? near : onArc(arc, Math.atan2(near[1] - arc.centre[1], near[0] - arc.centre[0]));
}

function liesOn(edge: Edge, point: Point, near: number): boolean {
  const arc = arcOf(edge);
  if (arc !== null) {
    const angle = Math.atan2(point[1] - arc.centre[1], point[0] - arc.centre[0]);
    return Math.abs(distance(point, arc.centre) - arc.radius) <= near && passes(arc, angle, near / arc.radius);
  }
  const along = subtract(edge.to, edge.from);
  const size = Math.hypot(...along);
  const step = subtract(point, edge.from);
  const part = dot(step, along) / size;
  return Math.abs(cross(along, step)) / size <= near && part >= -near && part <= size + near;
}
