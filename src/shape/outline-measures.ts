/** Exact measures of outlines: corners by the shoelace formula, plus the circular segment between each arc and its chord. */
import { arcOf, type CentredArc, onArc, passes } from './arc.ts';
import { type Edge, edgesOf, type Outline } from './outline.ts';
import { cross, distance, type Point } from './point.ts';

export interface Box {
  readonly min: Point;
  readonly max: Point;
}

interface Moments {
  readonly area: number;
  readonly x: number;
  readonly y: number;
}

/** Signed area: positive where the outline runs anticlockwise. */
export const outlineArea = (outline: Outline): number => moments(outline).area;

/** The middle of the area. @throws RangeError where the outline encloses nothing */
export function outlineCentroid(outline: Outline): Point {
  const { area, x, y } = moments(outline);
  if (area === 0) {
    throw new RangeError('an outline that encloses no area has no middle');
  }
  return [x / area, y / area];
}

/** Length round the outline, arcs measured along the arc. */
export function outlinePerimeter(outline: Outline): number {
  return edgesOf(outline).reduce((sum, edge) => sum + edgeLength(edge), 0);
}

export function edgeLength(edge: Edge): number {
  const arc = arcOf(edge);
  return arc === null ? distance(edge.from, edge.to) : arc.radius * Math.abs(arc.sweep);
}

/** The smallest upright box that holds the outline, arcs and all. */
export function outlineBox(outline: Outline): Box {
  const points = edgesOf(outline).flatMap((edge) => [edge.from, ...extremes(arcOf(edge))]);
  const xs = points.map((point) => point[0]);
  const ys = points.map((point) => point[1]);
  return { min: [Math.min(...xs), Math.min(...ys)], max: [Math.max(...xs), Math.max(...ys)] };
}

/** Where an arc is farthest right, up, left and down, if it goes there. */
function extremes(arc: CentredArc | null): readonly Point[] {
  if (arc === null) {
    return [];
  }
  return [0, 1, 2, 3]
    .map((quarter) => (quarter * Math.PI) / 2)
    .filter((angle) => passes(arc, angle, 0))
    .map((angle) => onArc(arc, angle));
}

/** Area and first moments, taken about the first corner so that a patch far from the centre loses no digits. */
function moments(outline: Outline): Moments {
  const edges = edgesOf(outline);
  const origin = edges[0]!.from;
  let area = 0;
  let x = 0;
  let y = 0;
  for (const edge of edges) {
    const a: Point = [edge.from[0] - origin[0], edge.from[1] - origin[1]];
    const b: Point = [edge.to[0] - origin[0], edge.to[1] - origin[1]];
    const part = cross(a, b) / 2;
    const segment = segmentMoments(arcOf(edge), origin);
    area += part + segment.area;
    x += (part * (a[0] + b[0])) / 3 + segment.x;
    y += (part * (a[1] + b[1])) / 3 + segment.y;
  }
  return { area, x: x + area * origin[0], y: y + area * origin[1] };
}

/** A segment of angle φ has area r²(φ − sin φ)/2 and, about its circle's centre, the moment 2r³sin³(φ/2)/3 along its middle. */
function segmentMoments(arc: CentredArc | null, origin: Point): Moments {
  if (arc === null) {
    return { area: 0, x: 0, y: 0 };
  }
  const { radius, sweep, start } = arc;
  const area = (radius ** 2 * (sweep - Math.sin(sweep))) / 2;
  const reach = (2 * radius ** 3 * Math.sin(sweep / 2) ** 3) / 3;
  const middle = start + sweep / 2;
  return {
    area,
    x: area * (arc.centre[0] - origin[0]) + reach * Math.cos(middle),
    y: area * (arc.centre[1] - origin[1]) + reach * Math.sin(middle),
  };
}
