/** Corners, arcs and patches as forms draw them. Angles are degrees anticlockwise from up, as everywhere. */
import type { OutlineEntry } from '../../shape/outline.ts';
import { fromUp, type Point, scale } from '../../shape/point.ts';
import type { Patch } from '../quilt.ts';

export const CENTRE: Point = [0, 0];

/** The place at a radius from the block's centre. */
export const at = (radius: number, degrees: number): Point => scale(fromUp(degrees), radius);

/** An arc that bulges out of its outline, which runs anticlockwise. */
export const bow = (radius: number): OutlineEntry => ({ arc: { radius, turn: 'anticlockwise' } });

/** An arc that its outline is hollowed by. */
export const hollow = (radius: number): OutlineEntry => ({ arc: { radius, turn: 'clockwise' } });

export const patch = (number: number, role: string, outline: readonly OutlineEntry[]): Patch => ({
  number,
  role,
  outline,
});

/** Where the ray from `from` through `through`, both inside, leaves the circle about the centre. */
export function whereLineLeavesCircle(from: Point, through: Point, radius: number): Point {
  const dx = through[0] - from[0];
  const dy = through[1] - from[1];
  const a = dx * dx + dy * dy;
  const b = from[0] * dx + from[1] * dy;
  const c = from[0] ** 2 + from[1] ** 2 - radius * radius;
  const t = (-b + Math.sqrt(b * b - a * c)) / a;
  return [from[0] + t * dx, from[1] + t * dy];
}
