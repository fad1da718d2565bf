/** A patch with what must be cut round it, in the patch's own frame, before any turn or rounding. */

import { covers, largest, union } from '../shape/combine.ts';
import { type FlattenedOutline, flattenEdges } from '../shape/flatten.ts';
import { grow, growEvenly, growthLimits, withinLimits } from '../shape/grow.ts';
import { clip, type HalfPlane, outwardNormal } from '../shape/half-plane.ts';
import { edgesOf, type Outline } from '../shape/outline.ts';
import { add, distance, dot, type Point, type Polygon, reflect, scale, subtract, turn } from '../shape/point.ts';
import {
  isConvex,
  mirrorPolygon,
  movePolygon,
  polygonBox,
  polygonCentroid,
  reach,
  turnPolygon,
} from '../shape/polygon.ts';

export interface Making {
  /** Seam allowance. */
  readonly allowance: number;
  /** Extra beyond the allowance on every side but the one sewn first. 0 for patches sewn without paper. */
  readonly room: number;
  /** The edge that is sewn first, or null. */
  readonly sewnEdge: number | null;
  /** Whether it is laid on a foundation by eye, and so may lie askew. */
  readonly paper: boolean;
  readonly ruler: number;
}

/** The line along which a patch is sewn to those before it. */
export interface Seam {
  readonly from: Point;
  readonly to: Point;
  /** Of length 1, out of the patch. */
  readonly normal: Point;
}

/** All polygons are anticlockwise and share one frame. */
export interface RoughPatch {
  /** The finished patch, arcs covered finely. */
  readonly patch: Polygon;
  /** The patch with the allowance all round. */
  readonly sewn: Polygon;
  /** What the blank must cover: the sewn patch as it lies, and as it would lie under a blank laid askew. */
  readonly needed: readonly Polygon[];
  /** The patch grown by allowance and room, arcs covered finely: what a box covers. */
  readonly rough: Polygon;
  /** The same grown farther where a blank laid askew would fall short: what a slant covers. */
  readonly roughAskew: Polygon;
  /** The blank cut round a template: as roughAskew, with arcs in few straight edges. */
  readonly template: Polygon;
  readonly seam: Seam | null;
  /** The patch's edges as drawn, by index: where each runs, and whether it is straight. */
  readonly sides: readonly Side[];
  readonly allowance: number;
}

export interface Side {
  /** From its start to its end; of an arc, along the chord. */
  readonly along: Point;
  readonly straight: boolean;
}

/** How far askew a blank may be laid on its foundation and still serve. */
const ASKEW_DEGREES = 2;

/** Arcs are covered to this part of the ruler where sizes are reckoned, and to this part where a template is drawn. */
const FINE = 1 / 512;
const COARSE = 1 / 8;

/** @param outline arcs must exist and edges must not cross (outlineFault is null) */
export function roughPatch(outline: Outline, making: Making): RoughPatch {
  const fine = flattenEdges(outline, { side: 'outside', within: making.ruler * FINE });
  const coarse = flattenEdges(outline, { side: 'outside', within: making.ruler * COARSE });
  const sides = edgesOf(outline).map((edge) => ({
    along: subtract(edge.to, edge.from),
    straight: edge.arc === undefined,
  }));
  const curved = sides.map((side) => !side.straight);
  const seam = seamOf(fine, making.sewnEdge);
  const sewn = growEvenly(fine.points, making.allowance);
  const needed = [sewn, ...(making.paper ? laidAskew(fine.points, sewn, seam, making.allowance) : [])];
  return {
    patch: fine.points,
    sewn,
    needed,
    rough: grow(fine.points, { edges: distances(fine, making) }),
    roughAskew: growToCover(fine, making, needed, curved),
    template: growToCover(coarse, making, needed, curved),
    seam,
    sides,
    allowance: making.allowance,
  };
}

const distances = ({ edgeOf }: FlattenedOutline, { allowance, room, sewnEdge }: Making): readonly number[] =>
  edgeOf.map((edge) => (edge === sewnEdge ? allowance : allowance + room));

function seamOf({ points, edgeOf }: FlattenedOutline, sewnEdge: number | null): Seam | null {
  const index = sewnEdge === null ? -1 : edgeOf.indexOf(sewnEdge);
  if (index < 0) {
    return null;
  }
  const from = points[index]!;
  const to = points[(index + 1) % points.length]!;
  return { from, to, normal: outwardNormal(from, to) };
}

/**
 * The sewn patch as it lies under a blank turned askew either way, seen from the blank. A blank with a seam turns about the
 * seam's middle. Its raw edge then dips below the allowance towards one end, where nothing can be asked of it; so she slides
 * it out until the allowance is whole again. Both places count, and so do all between them.
 * A first patch, which has no seam, turns about its own middle.
 */
function laidAskew(patch: Polygon, sewn: Polygon, seam: Seam | null, allowance: number): readonly Polygon[] {
  return [ASKEW_DEGREES, -ASKEW_DEGREES].flatMap((degrees) => {
    if (seam === null) {
      return [turnPolygon(sewn, degrees, polygonCentroid(patch))];
    }
    const rawEdge: HalfPlane = { normal: seam.normal, reach: dot(seam.from, seam.normal) + allowance };
    const turned = turnPolygon(sewn, degrees, scale(add(seam.from, seam.to), 0.5));
    // She slides it square to the seam, which from the blank looks turned as all the rest does.
    const outward = turn(seam.normal, degrees);
    const dip = (reach(turned, seam.normal) - rawEdge.reach) / dot(outward, seam.normal);
    const slid = movePolygon(turned, scale(outward, -dip));
    return isConvex(turned) ? [clip(turned, rawEdge), slid] : [slid];
  });
}

/**
 * Grown by its distances, and farther where `needed` reaches farther. The raw edge of the sewn side never is: it is laid
 * level with the trimmed allowance of the patches before, so more there would only push the blank away.
 */
function growToCover(
  flattened: FlattenedOutline,
  making: Making,
  needed: readonly Polygon[],
  curved: readonly boolean[],
): Polygon {
  const { points, edgeOf } = flattened;
  const edges = distances(flattened, making);
  if (!isConvex(points)) {
    // Coarse tangents touch their arc where fine ones may stand out from it by as much as they are fine.
    const grown = grow(points, { edges: edges.map((by, i) => (curved[edgeOf[i]!] ? by + making.ruler * FINE : by)) });
    const bare = needed.filter((each) => !covers(grown, each));
    return bare.length === 0 ? grown : largest(union([grown, ...bare]));
  }
  const limits = growthLimits(points, { edges }).map((limit, i) => {
    const raw = making.sewnEdge !== null && edgeOf[i] === making.sewnEdge;
    return raw ? limit : { ...limit, reach: Math.max(limit.reach, ...needed.map((each) => reach(each, limit.normal))) };
  });
  const { min, max } = polygonBox(points);
  return withinLimits(limits, points, Math.max(...edges) + distance(min, max));
}

/** Turned anticlockwise about the frame's origin. */
export function turnRough(rough: RoughPatch, degrees: number): RoughPatch {
  return degrees === 0
    ? rough
    : change(
        rough,
        (polygon) => turnPolygon(polygon, degrees),
        (step) => turn(step, degrees),
      );
}

/** The other hand: x to −x. */
export function mirrorRough(rough: RoughPatch): RoughPatch {
  return change(rough, mirrorPolygon, reflect);
}

function change(rough: RoughPatch, all: (polygon: Polygon) => Polygon, direction: (step: Point) => Point): RoughPatch {
  const ends = rough.seam === null ? null : all([rough.seam.from, rough.seam.to]);
  return {
    patch: all(rough.patch),
    sewn: all(rough.sewn),
    needed: rough.needed.map(all),
    rough: all(rough.rough),
    roughAskew: all(rough.roughAskew),
    template: all(rough.template),
    seam: ends === null ? null : { from: ends[0]!, to: ends[1]!, normal: direction(rough.seam!.normal) },
    sides: rough.sides.map((side) => ({ ...side, along: direction(side.along) })),
    allowance: rough.allowance,
  };
}
