/** Circular arcs told in the ways a person can give them: by a place on the way, by how far they bulge, by their radius. */
import { centreArc } from './arc.ts';
import type { Arc } from './outline.ts';
import { add, cross, distance, dot, type Point, scale, subtract } from './point.ts';

/** An arc that bulges by less than this part of its chord is a straight edge. */
const STRAIGHT = 1e-4;

/**
 * The bulge of the arc from `from` to `to` by way of `by`: its sagitta as a part of half the chord, which is the tangent of a
 * quarter of its sweep; positive where the arc bulges to the right of the way, so that it turns anticlockwise. 0 for a straight one.
 * Infinite where `by` lies on the chord's line beyond its ends.
 */
export function bulgeThrough(from: Point, by: Point, to: Point): number {
  const a = subtract(from, by);
  const b = subtract(to, by);
  const turned = cross(b, a);
  // The angle at `by` is half of what the arc leaves of the circle, so the quarter of the sweep is half of what it lacks of 180°.
  const angle = Math.atan2(Math.abs(turned), dot(a, b));
  const bulge = Math.tan((Math.PI - angle) / 2);
  if (distance(from, to) === 0 || Math.abs(bulge) < STRAIGHT) {
    return 0;
  }
  return turned > 0 ? bulge : -bulge;
}

/** The place in the middle of the arc of that bulge. */
export function middleOfArc(from: Point, to: Point, bulge: number): Point {
  const half = scale(subtract(to, from), 0.5);
  return add(add(from, half), scale([half[1], -half[0]], bulge));
}

/** How far the arc stands off its chord, always positive. */
export const sagittaOf = (from: Point, to: Point, bulge: number): number => (Math.abs(bulge) * distance(from, to)) / 2;

/** The radius of the arc of that bulge; infinite for a straight edge. */
export function radiusOf(from: Point, to: Point, bulge: number): number {
  return (distance(from, to) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
}

/** The bulge of the shorter arc of that radius. @throws RangeError where the chord outruns the diameter */
export function bulgeOfRadius(from: Point, to: Point, radius: number): number {
  const half = distance(from, to) / 2;
  if (!(radius >= half * (1 - 1e-9))) {
    throw new RangeError(`an arc between these two corners needs a radius of at least half their distance`);
  }
  return half / (radius + Math.sqrt(Math.max(0, radius * radius - half * half)));
}

/** As outlines write arcs; null for a straight edge. */
export function arcOfBulge(from: Point, to: Point, bulge: number): Arc | null {
  if (Math.abs(bulge) < STRAIGHT || !Number.isFinite(bulge)) {
    return null;
  }
  const turn = bulge > 0 ? 'anticlockwise' : 'clockwise';
  const radius = radiusOf(from, to, bulge);
  return { arc: Math.abs(bulge) > 1 ? { radius, turn, large: true } : { radius, turn } };
}

/** The centre of the arc of that bulge; null for a straight edge. */
export function centreOfBulge(from: Point, to: Point, bulge: number): Point | null {
  const arc = arcOfBulge(from, to, bulge);
  return arc === null ? null : centreArc(from, to, arc.arc).centre;
}
