/** Corners, arcs and patches as forms draw them. Angles are degrees anticlockwise from up, as everywhere. */
import { isArc, mirrorOutline, type OutlineEntry } from '../../shape/outline.ts';
import { fromUp, type Point, scale } from '../../shape/point.ts';
import type { Patch, Unit } from '../quilt.ts';

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

/** A role and an outline, to be numbered in the order in which they are sewn. */
export type Piece = readonly [role: string, outline: readonly OutlineEntry[]];

/** Pieces as a unit's patches, numbered from 1. */
export const numbered = (pieces: readonly Piece[]): readonly Patch[] =>
  pieces.map(([role, outline], i) => patch(i + 1, role, outline));

/** Units with the letters A, B, … Z, AA, … in turn. */
export const lettered = (units: readonly Omit<Unit, 'id'>[]): readonly Unit[] =>
  units.map((unit, i) => ({ id: letters(i), ...unit }));

function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}

/** Reflected in the vertical and walked backwards, so that an anticlockwise outline stays so. */
export function mirrored(outline: readonly OutlineEntry[]): readonly OutlineEntry[] {
  // Backwards, an arc that stands last would come first, and an outline begins with a corner.
  const corner = outline[0]!;
  const rest = outline.slice(1).reverse();
  return mirrorOutline([corner, ...rest.map(turnedBack)]);
}

function turnedBack(entry: OutlineEntry): OutlineEntry {
  return isArc(entry)
    ? { arc: { ...entry.arc, turn: entry.arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise' } }
    : entry;
}

/** An upright oblong by its corners. */
export const oblong = (left: number, bottom: number, right: number, top: number): readonly Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

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
