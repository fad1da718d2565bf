/** Which edges of which patches lie on the block's straight outside. */
import { placesOf } from '../quilt/places.ts';
import type { Unit } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import { convexHull } from '../shape/hull.ts';
import { type Edge, edgesOf, mirrorOutline } from '../shape/outline.ts';
import { outlineArea } from '../shape/outline-measures.ts';
import { dot, length, type Point, type Polygon, subtract, turn } from '../shape/point.ts';

/** Indices of edges, for each unit, patch of the unit, and place of the unit. */
export type OutsideEdges = readonly (readonly (readonly (readonly number[])[])[])[];

const NONE: readonly number[] = [];

/**
 * An edge lies on the straight outside when it is straight and lies on the convex hull of the whole block. No other patch
 * can share such an edge, since all the block lies on one side of it.
 */
export function outsideEdges(units: readonly Unit[]): OutsideEdges {
  const corners = units.flatMap((unit) => {
    const asDrawn = unit.patches.flatMap((patch) => flatten(patch.outline, { side: 'chord', within: 1e-3 }));
    // A unit's own hull turned to every place makes the same block's hull as all its corners, from far fewer points.
    const hull = convexHull(asDrawn);
    return placesOf(unit).flatMap((place) => hull.map(([x, y]) => turn([place.mirrored ? -x : x, y], place.turn)));
  });
  const hull = convexHull(corners);
  const reachOf = supportOf(hull);
  const slack = 1e-5 * Math.max(...hull.map(length));
  return units.map((unit) =>
    unit.patches.map((patch) => {
      const hands = [patch.outline, mirrorOutline(patch.outline)].map((outline) => {
        const edges = edgesOf(outline);
        const sign = outlineArea(outline) >= 0 ? 1 : -1;
        return edges.map((edge) => (edge.arc === undefined ? outwardOf(edge, sign) : null));
      });
      return placesOf(unit).map((place) => {
        const outward = hands[place.mirrored ? 1 : 0]!;
        const found = outward.flatMap((edge, index) => {
          if (edge === null) {
            return [];
          }
          return reachOf(turn(edge.normal, place.turn)) <= edge.reach + slack ? [index] : [];
        });
        return found.length === 0 ? NONE : found;
      });
    }),
  );
}

/** An edge's unit normal away from its patch, and how far along it the edge lies. Turning leaves the reach as it is. */
function outwardOf(edge: Edge, sign: number): { readonly normal: Point; readonly reach: number } {
  const along = subtract(edge.to, edge.from);
  const size = length(along);
  const normal: Point = [(sign * along[1]) / size, (-sign * along[0]) / size];
  return { normal, reach: dot(edge.from, normal) };
}

/** A function that finds how far a convex anticlockwise polygon reaches in a direction, by bisection over its edges. */
function supportOf(hull: Polygon): (direction: Point) => number {
  const edgeAngles = hull.map((point, i) => {
    const [x, y] = subtract(hull[(i + 1) % hull.length]!, point);
    return Math.atan2(-x, y);
  });
  const start = edgeAngles.indexOf(Math.min(...edgeAngles));
  const sorted = [...edgeAngles.slice(start), ...edgeAngles.slice(0, start)];
  return (direction) => {
    const angle = Math.atan2(direction[1], direction[0]);
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]! < angle) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    // Edges whose normals lie before the direction lead up to the farthest corner.
    return dot(hull[(start + low) % hull.length]!, direction);
  };
}
