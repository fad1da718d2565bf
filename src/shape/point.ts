import { cosAndSin, degreesOf } from './angle.ts';

/** A place or a step in the plane, in the unit of whatever it belongs to. x to the right, y up. */
export type Point = readonly [x: number, y: number];

/** A closed polygon without repeated last point. Straight edges only; edge i runs from point i to point i + 1. */
export type Polygon = readonly Point[];

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
export const subtract = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const scale = (a: Point, by: number): Point => [a[0] * by, a[1] * by];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
export const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
export const length = (a: Point): number => Math.hypot(a[0], a[1]);
export const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Turns a point anticlockwise about the origin. Quarter turns are exact, so that boxes stay boxes. */
export function turn(a: Point, degrees: number): Point {
  const [c, s] = cosAndSin(degrees);
  return [a[0] * c - a[1] * s, a[0] * s + a[1] * c];
}

/** Reflects in the vertical axis: x to −x. */
export const reflect = (a: Point): Point => [-a[0], a[1]];

/** The direction that stands `degrees` anticlockwise from up (+y). */
export const fromUp = (degrees: number): Point => turn([0, 1], degrees);

/** Degrees anticlockwise from up (+y), in [0, 360). */
export function degreesFromUp(a: Point): number {
  return modulo(degreesOf(a[1], -a[0]), 360);
}

/** The remainder that is never negative. */
export const modulo = (value: number, by: number): number => ((value % by) + by) % by;
