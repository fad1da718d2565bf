/**
 * Corners set onto the numbers they were drawn by. Drawing programs round what they write, and a square of 2.0001 in would need
 * the next larger mark of the ruler; so what lies within a hair of a whole mark about the centre is put onto it.
 */
import type { LengthUnit } from '../quilt/quilt.ts';
import { edgesOf, type Outline, type OutlineEntry } from '../shape/outline.ts';
import { degreesFromUp, distance, fromUp, type Point, scale } from '../shape/point.ts';
import type { Neat } from './snap.ts';

/** Marks, in the quilt's unit. */
const MARK: Readonly<Record<LengthUnit, number>> = { in: 1 / 64, cm: 0.05 };
/** A hair: two decimals of a millimetre, two of a pixel, rounded. In the quilt's unit. */
const HAIR: Readonly<Record<LengthUnit, number>> = { in: 4e-4, cm: 1e-3 };
/** Degrees of which the rays of common rounds are whole multiples. */
const RAY = 0.25;

export const neatIn = (unit: LengthUnit): Neat => ({
  place: neatPlace(unit),
  arcs: (outline) => neatArcs(outline, unit),
});

/** Whichever is nearest: whole marks across and up, or a ray at a whole distance from the centre; else the distance alone. */
function neatPlace(unit: LengthUnit): Neat['place'] {
  const hair = HAIR[unit];
  const near = (value: number): number => Math.round(value / MARK[unit]) * MARK[unit];
  const isNear = (value: number): boolean => Math.abs(value - near(value)) <= hair;
  return (place) => {
    const [x, y] = place;
    const radius = Math.hypot(x, y);
    const square: Point = [near(x), near(y)];
    const onRay = scale(fromUp(Math.round(degreesFromUp(place) / RAY) * RAY), near(radius));
    const best = distance(square, place) < distance(onRay, place) ? square : onRay;
    if (distance(best, place) <= Math.SQRT2 * hair) return best;
    if (isNear(radius)) return scale(place, near(radius) / radius);
    return [Math.abs(x) <= hair ? 0 : x, Math.abs(y) <= hair ? 0 : y];
  };
}

/** Arcs about the centre get the very distance of their ends as radius. */
function neatArcs(outline: Outline, unit: LengthUnit): Outline {
  if (outline.length === 0) return outline;
  return edgesOf(outline).flatMap(({ from, to, arc }): readonly OutlineEntry[] => {
    if (arc === undefined) return [from];
    const [a, b] = [Math.hypot(...from), Math.hypot(...to)];
    const half = distance(from, to) / 2;
    // How far the bulge would move; both arcs must lie on the same side of their chord as they do now.
    const about =
      Math.abs(a - b) <= HAIR[unit] && a > half && Math.abs(bulge(a, half) - bulge(arc.radius, half)) <= 3 * HAIR[unit];
    return [from, about && isAbout(from, to, arc.turn) ? { arc: { ...arc, radius: (a + b) / 2 } } : { arc }];
  });
}

const bulge = (radius: number, half: number): number => radius - Math.sqrt(Math.max(0, radius ** 2 - half ** 2));

/** Whether an arc of less than a half turn that bulges away from the centre runs from one to the other as told. */
const isAbout = (from: Point, to: Point, turn: 'clockwise' | 'anticlockwise'): boolean =>
  from[0] * to[1] - from[1] * to[0] > 0 === (turn === 'anticlockwise');
