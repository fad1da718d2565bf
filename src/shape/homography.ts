/**
 * Maps of the plane that keep straight lines straight: what a camera held at a slant does to a flat page, and the way back.
 * After P. Heckbert, "Fundamentals of Texture Mapping and Image Warping", 1989, section 2.2.3 (square to quadrilateral).
 */
import { cross, distance, type Point, scale, subtract } from './point.ts';

/** Row by row: x′ = (m0 x + m1 y + m2) / w, y′ = (m3 x + m4 y + m5) / w, w = m6 x + m7 y + m8. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

export type Quad = readonly [Point, Point, Point, Point];

/** The smallest of the triangles that three corners make, as a part of the largest: below it a pixel's slip is a yard's. */
const FLATTEST = 0.01;

/**
 * Why four corners, told round the shape, cannot be those of a rectangle seen at a slant, in words for a person; null when they
 * can. A flat page in front of a camera is always seen as a convex shape.
 */
export function quadFault(quad: Quad): string | null {
  const size = Math.max(...quad.map((a) => Math.max(...quad.map((b) => distance(a, b)))));
  if (!(size > 0) || !Number.isFinite(size)) {
    return 'the four corners lie on one place';
  }
  const areas = quad.map(
    (corner, i) => cross(subtract(quad[(i + 1) % 4]!, corner), subtract(quad[(i + 2) % 4]!, corner)) / size ** 2,
  );
  const largest = Math.max(...areas.map(Math.abs));
  if (areas.some((area) => Math.abs(area) < FLATTEST * largest) || largest < 1e-4) {
    return 'three of the four corners lie almost on one line';
  }
  const left = areas.filter((area) => area > 0).length;
  if (left === 2) {
    return 'the sides of the rectangle cross: its corners must go round it in order';
  }
  return left === 0 || left === 4 ? null : 'one corner lies inside the triangle of the other three';
}

/**
 * The map that takes four corners to a rectangle: the first to (0, 0), the second to (width, 0), the third to
 * (width, height), the fourth to (0, height).
 * @throws RangeError where the corners cannot be a rectangle's, or a side is not greater than 0
 */
export function quadToRectangle(quad: Quad, width: number, height: number): Homography {
  if (!(width > 0 && height > 0)) {
    throw new RangeError(`a rectangle of ${width} by ${height} has no area; both sides must be greater than 0`);
  }
  return combine([width, 0, 0, 0, height, 0, 0, 0, 1], invert(squareToQuad(quad)));
}

/** @throws RangeError as quadToRectangle */
function squareToQuad(quad: Quad): Homography {
  const fault = quadFault(quad);
  if (fault !== null) {
    throw new RangeError(fault);
  }
  // About their middle and in their own size, so that no digits are lost far from the origin.
  const middle = scale(
    quad.reduce<Point>((sum, each) => [sum[0] + each[0], sum[1] + each[1]], [0, 0]),
    1 / 4,
  );
  const size = Math.max(...quad.map((each) => distance(each, middle)));
  const [a, b, c, d] = quad.map((each) => scale(subtract(each, middle), 1 / size)) as [Point, Point, Point, Point];
  const toB = subtract(b, c);
  const toD = subtract(d, c);
  const skew: Point = [a[0] - b[0] + c[0] - d[0], a[1] - b[1] + c[1] - d[1]];
  const area = cross(toB, toD);
  const g = cross(skew, toD) / area;
  const h = cross(toB, skew) / area;
  const small: Homography = [
    b[0] - a[0] + g * b[0],
    d[0] - a[0] + h * d[0],
    a[0],
    b[1] - a[1] + g * b[1],
    d[1] - a[1] + h * d[1],
    a[1],
    g,
    h,
    1,
  ];
  return combine([size, 0, middle[0], 0, size, middle[1], 0, 0, 1], small);
}

/** Where a point goes. Points on the map's horizon go nowhere: their coordinates are not finite. */
export function carry(map: Homography, [x, y]: Point): Point {
  const w = map[6] * x + map[7] * y + map[8];
  return [(map[0] * x + map[1] * y + map[2]) / w, (map[3] * x + map[4] * y + map[5]) / w];
}

/** The map that does `first` and then `then`. */
export function combine(then: Homography, first: Homography): Homography {
  const at = (row: number, column: number): number =>
    then[3 * row]! * first[column]! + then[3 * row + 1]! * first[3 + column]! + then[3 * row + 2]! * first[6 + column]!;
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)];
}

/** The way back, scaled so that its last entry is 1 where that can be. */
export function invert([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  const rows: Homography = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  const by = Math.abs(rows[8]) > 1e-12 ? rows[8] : Math.max(...rows.map(Math.abs));
  return rows.map((each) => each / by) as unknown as Homography;
}

/** The greatest and the least stretching that the map does to a small step at a place: lengths after, for each length before. */
export function stretchAt(map: Homography, [x, y]: Point): { readonly most: number; readonly least: number } {
  const w = map[6] * x + map[7] * y + map[8];
  const [u, v] = carry(map, [x, y]);
  const a = (map[0] - map[6] * u) / w;
  const b = (map[1] - map[7] * u) / w;
  const c = (map[3] - map[6] * v) / w;
  const d = (map[4] - map[7] * v) / w;
  // Singular values of the 2 by 2 derivative.
  const sum = Math.hypot(a + d, c - b);
  const difference = Math.hypot(a - d, c + b);
  return { most: (sum + difference) / 2, least: Math.abs(sum - difference) / 2 };
}
