/** Outlines with arcs turned into polygons, on the side that the purpose asks for. */
import { arcOf, type CentredArc, onArc } from './arc.ts';
import { type Edge, edgesOf, type Outline } from './outline.ts';
import { outlineArea } from './outline-measures.ts';
import type { Point, Polygon } from './point.ts';

export interface Flattening {
  /**
   * outside: never less than the true shape (tangents round bulging arcs, chords across hollow ones). inside: never more.
   * chord: every corner on the arc, as for drawing.
   */
  readonly side: 'outside' | 'inside' | 'chord';
  /** The farthest that polygon and arc may part. Greater than 0. */
  readonly within: number;
}

export interface FlattenedOutline {
  /** Anticlockwise. */
  readonly points: Polygon;
  /** Which edge of the outline each edge of the polygon came from. */
  readonly edgeOf: readonly number[];
}

/** The outline as an anticlockwise polygon. @throws RangeError for arcs that cannot exist */
export function flatten(outline: Outline, flattening: Flattening): Polygon {
  return flattenEdges(outline, flattening).points;
}

/** The same, telling where each edge came from. */
export function flattenEdges(outline: Outline, flattening: Flattening): FlattenedOutline {
  const anticlockwise = outlineArea(outline) >= 0;
  const points: Point[] = [];
  const edgeOf: number[] = [];
  edgesOf(outline).forEach((edge, index) => {
    for (const point of [edge.from, ...between(edge, anticlockwise, flattening)]) {
      points.push(point);
      edgeOf.push(index);
    }
  });
  if (anticlockwise) {
    return { points, edgeOf };
  }
  // Walked backwards, the edge that leaves a point is the one that arrived there.
  points.reverse();
  edgeOf.reverse();
  return { points, edgeOf: [...edgeOf.slice(1), edgeOf[0]!] };
}

/** Corners to set between the ends of an edge. */
function between(edge: Edge, anticlockwise: boolean, { side, within }: Flattening): readonly Point[] {
  const arc = arcOf(edge);
  if (arc === null) {
    return [];
  }
  const bulges = arc.sweep > 0 === anticlockwise;
  const tangents = side !== 'chord' && bulges === (side === 'outside');
  return tangents ? tangentCorners(arc, within) : chordCorners(arc, within);
}

/** The arc in equal parts, its tangents at their ends meeting R/cos(part/2) from the centre: R(1/cos − 1) beyond it. */
function tangentCorners(arc: CentredArc, within: number): readonly Point[] {
  const size = Math.abs(arc.sweep);
  const fewest = Math.max(Math.ceil(size / (2 * Math.acos(arc.radius / (arc.radius + within)))), Math.ceil(size / 2));
  // An even number touches the arc at its middle, so that the height of a symmetrical wedge comes out exact.
  const parts = fewest > 3 ? 2 * Math.ceil(fewest / 2) : fewest;
  const part = arc.sweep / parts;
  const reach = arc.radius / Math.cos(part / 2);
  return Array.from({ length: parts }, (_, k) => onArc(arc, arc.start + (k + 0.5) * part, reach));
}

/** The arc in equal parts; a part's chord falls short of it by R(1 − cos(part/2)). */
function chordCorners(arc: CentredArc, within: number): readonly Point[] {
  const size = Math.abs(arc.sweep);
  const widest = 2 * Math.acos(Math.max(0, 1 - within / arc.radius));
  const parts = Math.max(Math.ceil(size / widest - 1e-9), Math.ceil(size / 2));
  const part = arc.sweep / parts;
  return Array.from({ length: parts - 1 }, (_, k) => onArc(arc, arc.start + (k + 1) * part));
}
