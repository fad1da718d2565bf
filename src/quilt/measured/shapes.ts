/** The one list of measured shapes, in the order in which they are offered. */
import { kite, parallelogram, trapezium } from './four-sided.ts';
import { rectangle } from './rectangle.ts';
import { regularPolygon } from './regular-polygon.ts';
import { ringWedge } from './ring-wedge.ts';
import type { ShapeSpec } from './shape-spec.ts';
import { triangleByHeight, triangleBySides } from './triangle.ts';

export const SHAPES: readonly ShapeSpec[] = [
  rectangle,
  triangleByHeight,
  triangleBySides,
  trapezium,
  parallelogram,
  kite,
  ringWedge,
  regularPolygon,
];

/** The shape that a word means, whatever its case: a shape's name, its title, or another word for it. */
export function shapeCalled(word: string): ShapeSpec | undefined {
  const plain = word.trim().toLowerCase();
  return SHAPES.find(({ shape, title, alias }) => [shape, title.toLowerCase(), ...alias].includes(plain));
}
