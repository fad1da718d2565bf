/** Outlines as a hand would write them: anticlockwise, no corner where an edge runs straight on, arcs of one circle as one. */

import { arcOf, onArc } from '../shape/arc.ts';
import { type Edge, edgesOf, type Outline, type OutlineEntry } from '../shape/outline.ts';
import { outlineArea } from '../shape/outline-measures.ts';
import { cross, distance, dot, type Point, subtract } from '../shape/point.ts';
import { circleThrough } from './svg/trace-run.ts';

/** Radians; as in tracing, longer arcs stay parted. */
const LONGEST_ARC = 3;

/**
 * @param within how far a corner may lie off the edge that replaces its two, in the outline's unit
 * @returns the same shape; null where nothing is left of it
 */
export function tidyOutline(outline: Outline, within: number): Outline | null {
  let edges = [...edgesOf(anticlockwise(outline))];
  for (let round = 0; round < 3; round++) {
    const merged = mergeOnce(edges, within);
    if (merged.length === edges.length) break;
    edges = merged;
  }
  if (edges.length < 2 || (edges.length === 2 && edges.every((edge) => edge.arc === undefined))) return null;
  return edges.flatMap(({ from, arc }): readonly OutlineEntry[] => (arc === undefined ? [from] : [from, { arc }]));
}

/** The same outline the other way round where it runs clockwise. */
export function anticlockwise(outline: Outline): Outline {
  if (outlineArea(outline) >= 0) return outline;
  const edges = edgesOf(outline).toReversed();
  return edges.flatMap(({ to, arc }): readonly OutlineEntry[] =>
    arc === undefined
      ? [to]
      : [to, { arc: { ...arc, turn: arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise' } }],
  );
}

/** Goes once round; the corner at which it begins is looked at last. */
function mergeOnce(edges: readonly Edge[], within: number): Edge[] {
  const done: Edge[] = [];
  for (const edge of edges) {
    const last = done.at(-1);
    const both = last === undefined || edges.length - done.length < 0 ? null : asOne(last, edge, within);
    if (both === null) {
      done.push(edge);
    } else {
      done[done.length - 1] = both;
    }
  }
  const [first, last] = [done[0], done.at(-1)];
  if (done.length > 2 && first !== undefined && last !== undefined) {
    const both = asOne(last, first, within);
    if (both !== null) {
      done.pop();
      done[0] = both;
    }
  }
  return done;
}

/** Two edges that follow one another as one; null where they are not. */
function asOne(a: Edge, b: Edge, within: number): Edge | null {
  const size = distance(a.from, b.to);
  if (a.arc === undefined && b.arc === undefined) {
    const along = subtract(b.to, a.from);
    const off = Math.abs(cross(along, subtract(a.to, a.from))) / size;
    const onward = dot(subtract(a.to, a.from), along) > 0 && dot(subtract(b.to, b.from), along) > 0;
    return size > 0 && off <= Math.min(within, 0.002 * size) && onward ? { from: a.from, to: b.to } : null;
  }
  if (a.arc === undefined || b.arc === undefined || a.arc.turn !== b.arc.turn || a.arc.large || b.arc.large)
    return null;
  const [arcA, arcB] = [arcOf(a)!, arcOf(b)!];
  const circle = circleThrough(a.from, a.to, b.to);
  if (circle === null || Math.abs(arcA.sweep + arcB.sweep) > LONGEST_ARC) return null;
  const middles: readonly Point[] = [arcA, arcB].map((arc) => onArc(arc, arc.start + arc.sweep / 2));
  const off = (place: Point): number => Math.abs(distance(place, circle.centre) - circle.radius);
  const smooth = Math.abs(arcA.radius - arcB.radius) <= 0.02 * circle.radius;
  // Long arcs tell their radius far better than three corners of a short one do.
  const known = Math.abs(arcA.sweep) > Math.abs(arcB.sweep) ? arcA.radius : arcB.radius;
  const radius = Math.abs(known - circle.radius) <= within ? known : circle.radius;
  return smooth && middles.every((place) => off(place) <= within) && size > 0
    ? { from: a.from, to: b.to, arc: { radius: Math.max(radius, size / 2), turn: a.arc.turn } }
    : null;
}
