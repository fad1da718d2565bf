import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  carry,
  combine,
  invert,
  type Quad,
  quadFault,
  quadToRectangle,
  stretchAt,
} from '../../src/shape/homography.ts';
import { distance, type Point } from '../../src/shape/point.ts';

/**
 * A camera told by its own numbers, derived from plain pinhole geometry (similar triangles): the page is turned about three axes,
 * stands off along the line of sight, and each place is drawn where its ray meets the picture.
 */
function camera(tilt: number, swing: number, roll: number, off: number, focal: number): (page: Point) => Point {
  const [ct, st, cs, ss, cr, sr] = [tilt, swing, roll].flatMap((angle) => [Math.cos(angle), Math.sin(angle)]) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return ([x, y]) => {
    const [x1, y1] = [x * cr - y * sr, x * sr + y * cr];
    const [y2, z2] = [y1 * ct, y1 * st];
    const [x3, z3] = [x1 * cs + z2 * ss, z2 * cs - x1 * ss];
    return [800 + (focal * x3) / (z3 + off), 600 - (focal * y2) / (z3 + off)];
  };
}

const cameras = fc
  .tuple(
    fc.double({ min: -0.8, max: 0.8, noNaN: true }),
    fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.double({ min: 22, max: 60, noNaN: true }),
    fc.double({ min: 800, max: 3000, noNaN: true }),
  )
  .map((numbers) => camera(...numbers));

const places = fc.tuple(fc.double({ min: 0, max: 10, noNaN: true }), fc.double({ min: 0, max: 8, noNaN: true }));

test('four corners of a rectangle bring every place of a slanted page back', () => {
  fc.assert(
    fc.property(cameras, places, (seen, place) => {
      const quad = [seen([0, 0]), seen([10, 0]), seen([10, 8]), seen([0, 8])] as unknown as Quad;
      expect(quadFault(quad)).toBeNull();
      const toTrue = quadToRectangle(quad, 10, 8);
      expect(distance(carry(toTrue, seen(place)), place)).toBeLessThan(1e-8);
      expect(distance(carry(invert(toTrue), place), seen(place))).toBeLessThan(1e-6);
      const round = combine(invert(toTrue), toTrue);
      expect(distance(carry(round, [123, 456]), [123, 456])).toBeLessThan(1e-6);
    }),
  );
});

test('the stretching told at a place is that of small steps about it', () => {
  fc.assert(
    fc.property(cameras, places, (seen, place) => {
      const quad = [seen([0, 0]), seen([10, 0]), seen([10, 8]), seen([0, 8])] as unknown as Quad;
      const toTrue = quadToRectangle(quad, 10, 8);
      const at = seen(place);
      const steps = Array.from({ length: 64 }, (_, i) => {
        const angle = (i * Math.PI) / 64;
        const step: Point = [at[0] + 1e-3 * Math.cos(angle), at[1] + 1e-3 * Math.sin(angle)];
        return distance(carry(toTrue, step), carry(toTrue, at)) / 1e-3;
      });
      const { most, least } = stretchAt(toTrue, at);
      expect(Math.max(...steps)).toBeLessThan(most * 1.001);
      expect(Math.max(...steps)).toBeGreaterThan(most * 0.99);
      expect(Math.min(...steps)).toBeGreaterThan(least * 0.999);
    }),
  );
});

test('what cannot be a rectangle is refused with the reason', () => {
  const square: Quad = [
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ];
  expect(quadFault(square)).toBeNull();
  expect(quadFault([square[0], square[2], square[1], square[3]])).toMatch(/cross/);
  expect(quadFault([square[0], square[1], [2, 0.01], square[3]])).toMatch(/line|inside/);
  expect(
    quadFault([
      [0, 0],
      [4, 0],
      [1, 1],
      [0, 4],
    ]),
  ).toMatch(/inside/);
  expect(quadFault([square[0], square[0], square[2], square[3]])).toMatch(/line/);
  expect(
    quadFault([
      [1, 1],
      [1, 1],
      [1, 1],
      [1, 1],
    ]),
  ).toMatch(/one place/);
  expect(() => quadToRectangle(square, 0, 4)).toThrow(/greater than 0/);
});
