/** Affine maps as SVG writes them, and its transform lists. */

import { cosAndSin } from '../../shape/angle.ts';
import type { Point } from '../../shape/point.ts';

/** Takes (x, y) to (a x + c y + e, b x + d y + f). */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function followedBy(inner: Matrix, outer: Matrix): Matrix {
  const [a, b, c, d, e, f] = inner;
  const [A, B, C, D, E, F] = outer;
  return [A * a + C * b, B * a + D * b, A * c + C * d, B * c + D * d, A * e + C * f + E, B * e + D * f + F];
}

export const apply = ([a, b, c, d, e, f]: Matrix, [x, y]: Point): Point => [a * x + c * y + e, b * x + d * y + f];

/** A step without the place it starts from. */
export const applyStep = ([a, b, c, d]: Matrix, [x, y]: Point): Point => [a * x + c * y, b * x + d * y];

export const moving = (x: number, y: number): Matrix => [1, 0, 0, 1, x, y];
export const scaling = (x: number, y: number): Matrix => [x, 0, 0, y, 0, 0];

const MOST_STEPS = 200;
const STEP = /([a-zA-Z]+)\s*\(([^()]*)\)/y;
const BETWEEN = /[\s,]*/y;

/** A transform attribute; null where it cannot be read, so that a shape is rather left out than put in the wrong place. */
export function parseTransform(text: string): Matrix | null {
  let whole = IDENTITY;
  let at = skip(BETWEEN, text, 0);
  for (let step = 0; at < text.length; step++) {
    STEP.lastIndex = at;
    const found = STEP.exec(text);
    const matrix = found === null || step >= MOST_STEPS ? null : stepMatrix(found[1]!, numbersOf(found[2]!));
    if (matrix === null) return null;
    whole = followedBy(matrix, whole);
    at = skip(BETWEEN, text, STEP.lastIndex);
  }
  return whole.every(Number.isFinite) ? whole : null;
}

function skip(what: RegExp, text: string, from: number): number {
  what.lastIndex = from;
  what.exec(text);
  return what.lastIndex;
}

/** Numbers as SVG lists them: parted by commas or blanks, or run together where a sign or a point parts them. */
export function numbersOf(text: string): readonly number[] {
  return (text.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g) ?? []).map(Number);
}

function stepMatrix(kind: string, values: readonly number[]): Matrix | null {
  const [a = 0, b, c] = values;
  switch (`${kind} ${values.length}`) {
    case 'matrix 6':
      return values as unknown as Matrix;
    case 'translate 1':
    case 'translate 2':
      return moving(a, b ?? 0);
    case 'scale 1':
    case 'scale 2':
      return scaling(a, b ?? a);
    case 'rotate 1':
      return rotating(a);
    case 'rotate 3':
      return followedBy(followedBy(moving(-b!, -c!), rotating(a)), moving(b!, c!));
    case 'skewX 1':
      return [1, 0, tangent(a), 1, 0, 0];
    case 'skewY 1':
      return [1, tangent(a), 0, 1, 0, 0];
    default:
      return null;
  }
}

function rotating(degrees: number): Matrix {
  const [c, s] = cosAndSin(degrees);
  return [c, s, -s, c, 0, 0];
}

function tangent(degrees: number): number {
  const [c, s] = cosAndSin(degrees);
  return s / c;
}
