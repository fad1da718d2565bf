/** Where the lines of a tracing run. */

import { arcOf, onArc, passes } from '../../shape/arc.ts';
import { arcOfBulge, bulgeThrough } from '../../shape/arc-through.ts';
import type { Arc, Edge, Outline, OutlineEntry } from '../../shape/outline.ts';
import { add, cross, distance, dot, type Point, scale, subtract } from '../../shape/point.ts';
import { cornerOf, type Line, lineOf, type Step, stepStart, type Tracing } from './tracing.ts';

/** A bulge beyond this is most of a circle: no patch has such an edge, and a slip of the hand makes one. */
const MOST_BULGE = 4;

/** The bulge of a line from its beginning to its end (arc-through.ts); 0 where it is straight, or where no sound arc passes. */
export function bulgeOf(tracing: Tracing, { from, to, through }: Line): number {
  if (through === undefined) return 0;
  const bulge = bulgeThrough(cornerOf(tracing, from).at, through, cornerOf(tracing, to).at);
  return Math.abs(bulge) <= MOST_BULGE ? bulge : 0;
}

/** A line as an edge, from its beginning to its end. */
export function edgeOfLine(tracing: Tracing, line: Line): Edge {
  const from = cornerOf(tracing, line.from).at;
  const to = cornerOf(tracing, line.to).at;
  const arc = arcOfBulge(from, to, bulgeOf(tracing, line));
  return arc === null ? { from, to } : { from, to, arc: arc.arc };
}

/** The place halfway along an edge. */
export function middleOf(edge: Edge): Point {
  const arc = arcOf(edge);
  return arc === null ? scale(add(edge.from, edge.to), 0.5) : onArc(arc, arc.start + arc.sweep / 2);
}

/** The place on an edge that is nearest to a point. */
export function nearestOn(edge: Edge, to: Point): Point {
  const arc = arcOf(edge);
  if (arc !== null) {
    const angle = Math.atan2(to[1] - arc.centre[1], to[0] - arc.centre[0]);
    if (passes(arc, angle)) return onArc(arc, angle);
    return distance(to, edge.from) <= distance(to, edge.to) ? edge.from : edge.to;
  }
  const along = subtract(edge.to, edge.from);
  const part = dot(subtract(to, edge.from), along) / dot(along, along);
  return add(edge.from, scale(along, Math.min(1, Math.max(0, part))));
}

/** The outline that steps go round, as they are walked: its edge i is step i. */
export function outlineOfSteps(tracing: Tracing, steps: readonly Step[]): Outline {
  return steps.flatMap((step): readonly OutlineEntry[] => {
    const corner = cornerOf(tracing, stepStart(tracing, step)).at;
    const arc = arcOfStep(tracing, step);
    return arc === null ? [corner] : [corner, arc];
  });
}

function arcOfStep(tracing: Tracing, step: Step): Arc | null {
  const { arc } = edgeOfLine(tracing, lineOf(tracing, step.line));
  if (arc === undefined) return null;
  const other = arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise';
  return { arc: step.backward ? { ...arc, turn: other } : arc };
}

/** How far a point lies to the left of the way from one place to another. */
export const leftOf = (from: Point, to: Point, point: Point): number =>
  cross(subtract(to, from), subtract(point, from)) / distance(from, to);
