/** From the pixels of a picture to the true plane of the page in it, by what she knows of its size. */
import {
  carry,
  combine,
  type Homography,
  invert,
  type Quad,
  quadFault,
  quadToRectangle,
  stretchAt,
} from '../../shape/homography.ts';
import { distance, type Point, scale } from '../../shape/point.ts';
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit } from '../quilt.ts';

/** Points are pixels of the picture, x to the right, y down. */
export type Straightening = KnownRectangle | KnownLength;

/** Four corners of a rectangle on the page: top left, top right, bottom right, bottom left. */
export interface KnownRectangle {
  readonly kind: 'rectangle';
  readonly corners: Quad;
  readonly width: Length;
  readonly height: Length;
}

/** Two places on the page and how far they are apart, for a picture taken straight on. */
export interface KnownLength {
  readonly kind: 'length';
  readonly from: Point;
  readonly to: Point;
  readonly length: Length;
}

/** The true plane is in the quilt's unit, y up, its origin at the rectangle's bottom left or at the first place. */
export interface TrueMap {
  readonly toTrue: Homography;
  readonly toPicture: Homography;
}

/** A length under this many pixels cannot be told well enough. */
const FEWEST_PIXELS = 20;

/** Why a picture cannot be brought to true size so, in words for a person; null when it can. */
export function straighteningFault(straightening: Straightening, unit: LengthUnit): string | null {
  try {
    if (straightening.kind === 'length') {
      const { from, to, length } = straightening;
      if (!(lengthIn(unit, length) > 0)) return 'The known length must be more than nothing.';
      return distance(from, to) < FEWEST_PIXELS ? 'The two ends of the known length are too near each other.' : null;
    }
    const { corners, width, height } = straightening;
    if (!(lengthIn(unit, width) > 0 && lengthIn(unit, height) > 0)) {
      return 'The rectangle’s width and height must both be more than nothing.';
    }
    const fault = quadFault(corners);
    if (fault !== null) return `This cannot be a rectangle: ${fault}.`;
    const mirrored = quadArea(corners) < 0;
    return mirrored ? 'The corners go round the wrong way: top left, top right, bottom right, bottom left.' : null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** @throws RangeError where straighteningFault tells one */
export function trueMap(straightening: Straightening, unit: LengthUnit): TrueMap {
  const fault = straighteningFault(straightening, unit);
  if (fault !== null) {
    throw new RangeError(fault);
  }
  const toTrue = straightening.kind === 'length' ? byLength(straightening, unit) : byRectangle(straightening, unit);
  return { toTrue, toPicture: invert(toTrue) };
}

function byLength({ from, to, length }: KnownLength, unit: LengthUnit): Homography {
  const size = lengthIn(unit, length) / distance(from, to);
  return [size, 0, -size * from[0], 0, -size, size * from[1], 0, 0, 1];
}

function byRectangle({ corners, width, height }: KnownRectangle, unit: LengthUnit): Homography {
  const [topLeft, topRight, bottomRight, bottomLeft] = corners;
  const upright: Quad = [bottomLeft, bottomRight, topRight, topLeft];
  return quadToRectangle(upright, lengthIn(unit, width), lengthIn(unit, height));
}

/** How long one pixel of the picture is on the page at a place in the picture, across its worse direction. */
export const pixelLength = (map: TrueMap, place: Point): number => stretchAt(map.toTrue, place).most;

/** What takes the true plane of one straightening to that of another, through the picture. */
export function between(from: TrueMap, to: TrueMap): (place: Point) => Point {
  const map = combine(to.toTrue, from.toPicture);
  return (place) => carry(map, place);
}

/** The same for the picture made so many times smaller. */
export function shrinkStraightening(straightening: Straightening, by: number): Straightening {
  const small = (place: Point): Point => scale(place, 1 / by);
  if (straightening.kind === 'length') {
    return { ...straightening, from: small(straightening.from), to: small(straightening.to) };
  }
  return { ...straightening, corners: straightening.corners.map(small) as unknown as Quad };
}

/** With y down, what goes round as told has a positive area. */
function quadArea(quad: Quad): number {
  return quad.reduce((sum, [x, y], i) => sum + x * quad[(i + 1) % 4]![1] - y * quad[(i + 1) % 4]![0], 0) / 2;
}
