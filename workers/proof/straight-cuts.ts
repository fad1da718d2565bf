/**
 * Whether a strip can be cut into its blanks by straight subcuts, one after the other from its start: each parts one blank
 * from all that come after it.
 */
import type { Point, Polygon } from '../../src/shape/point.ts';
import { gap, hull } from './convex.ts';

/** A strip in its own frame: u runs along it from its start, v across it. */
export interface StripFrame {
  readonly length: number;
  readonly near: number;
  readonly far: number;
}

/**
 * The blanks that are left when no further subcut parts one off; none when the strip can be cut whole.
 * @param hulls in the strip's frame, convex, anticlockwise
 * @param touch how deep a cut may run into a blank and still pass along it
 */
export function uncuttable(hulls: readonly Polygon[], strip: StripFrame, touch: number): readonly number[] {
  const order = hulls.map((_, index) => index).sort((a, b) => middle(hulls[a]!) - middle(hulls[b]!));
  if (cutsInOrder(order, hulls, strip, touch)) return [];
  // A blank that can be parted off now may as well be: whatever order the others need stays open to them. So taking any
  // such blank, again and again, finds an order whenever there is one.
  let rest = order;
  while (rest.length > 1) {
    // What a cut parts from all others sticks out from them, so it has a corner on the hull of all.
    const outermost = new Set(hull(rest.flatMap((index) => hulls[index]!)));
    const next = rest.findIndex((index) => {
      if (!hulls[index]!.some((point) => outermost.has(point))) return false;
      const others = rest.filter((other) => other !== index).flatMap((other) => hulls[other]!);
      return isParted(hulls[index]!, hull(others), strip, touch);
    });
    if (next < 0) return rest;
    rest = rest.filter((_, at) => at !== next);
  }
  return [];
}

/** The order of the middles nearly always serves, and its hulls grow from the end in one pass. */
function cutsInOrder(order: readonly number[], hulls: readonly Polygon[], strip: StripFrame, touch: number): boolean {
  let after: Polygon = [];
  for (const index of [...order].reverse()) {
    const blank = hulls[index]!;
    if (after.length > 0 && !isParted(blank, after, strip, touch)) return false;
    after = hull([...after, ...blank]);
  }
  return true;
}

/**
 * Whether one straight cut has `blank` on the side of the strip's start and `after` on the side of its end. A cut runs from
 * edge to edge: it must meet the near or the far edge between the strip's ends. That it meets the near edge there is to
 * say that the edge's start lies with the blank and the edge's end with what comes after, so both points are given to the
 * two sides and the question is only whether these are apart. A line along the strip, and one that runs from the strip's one
 * end to its other, fail by themselves. A cut that leaves by an end is let pass: low blanks at the end of a tall strip
 * may need it.
 */
function isParted(blank: Polygon, after: Polygon, strip: StripFrame, touch: number): boolean {
  return [strip.near, strip.far].some((v) => {
    const start: Point = [0, v];
    const end: Point = [strip.length, v];
    return gap(hull([...blank, start]), hull([...after, end])) >= -touch;
  });
}

const middle = (polygon: Polygon): number => polygon.reduce((sum, point) => sum + point[0], 0) / polygon.length;
