import fc from 'fast-check';
import { expect, test } from 'vitest';
import { smallestSlant } from '../../src/cutting/slant.ts';
import { growEvenly } from '../../src/shape/grow.ts';
import { convexHull } from '../../src/shape/hull.ts';
import type { Point, Polygon } from '../../src/shape/point.ts';
import { isConvex, mirrorPolygon, polygonArea, polygonBox } from '../../src/shape/polygon.ts';
import { areaOutside } from './lay-and-flip.ts';

const always = () => true;
const slantOver = (cover: Polygon, ruler = 0.125) => smallestSlant(cover, ruler, [0, 0], always)!;
const hulls = fc
  .array(fc.tuple(fc.double({ min: 0, max: 9, noNaN: true }), fc.double({ min: 0, max: 6, noNaN: true })), {
    minLength: 3,
    maxLength: 8,
  })
  .map((points) => convexHull(points))
  .filter((hull) => hull.length >= 3 && polygonArea(hull) > 1);

test('a slant covers what it is drawn over, its parallel sides along x, its corners on the ruler’s grid', () => {
  fc.assert(
    fc.property(hulls, fc.constantFrom(0.125, 0.25, 0.5), (hull, ruler) => {
      const slant = slantOver(hull, ruler);
      expect(areaOutside(hull, slant)).toBeLessThan(1e-5);
      expect(isConvex(slant)).toBe(true);
      const { min, max } = polygonBox(slant);
      for (const [x, y] of slant) {
        expect(y === min[1] || y === max[1]).toBe(true);
        const rulers = (x - slant[0]![0]) / ruler;
        expect(Math.abs(rulers - Math.round(rulers))).toBeLessThan(1e-6);
      }
      const height = (max[1] - min[1]) / ruler;
      expect(Math.abs(height - Math.round(height))).toBeLessThan(1e-6);
    }),
    { numRuns: 150 },
  );
});

test('none of many other trapezia on the grid is smaller and covers too', () => {
  fc.assert(
    fc.property(hulls, (hull) => {
      const ruler = 0.5;
      const { min, max } = polygonBox(hull);
      // Flatter than a few of the ruler's steps, rounding decides, and a slant may be a twentieth more than the least.
      fc.pre(max[1] - min[1] > 6 * ruler);
      const best = polygonArea(slantOver(hull, ruler));
      const rows = Math.ceil((max[1] - min[1]) / ruler - 1e-6);
      let least = Number.POSITIVE_INFINITY;
      for (const y of [min[1], max[1] - rows * ruler]) {
        for (let left = -24; left <= 24; left++) {
          for (let right = -24; right <= 24; right++) {
            const from = Math.min(...hull.map((p) => p[0] - (left / rows) * (p[1] - y)));
            const to = Math.max(...hull.map((p) => p[0] - (right / rows) * (p[1] - y)));
            const near = Math.max(Math.ceil((to - from) / ruler - 1e-6), left - right);
            if (near >= 0) {
              least = Math.min(least, ((2 * near + right - left) * rows * ruler * ruler) / 2);
            }
          }
        }
      }
      // A triangle may be up to a twentieth larger, because it is one cut fewer.
      expect(best).toBeLessThanOrEqual(least * 1.05 + 1e-6);
    }),
    { numRuns: 40 },
  );
});

test('the mirror image gets the mirror image’s size', () => {
  fc.assert(
    fc.property(hulls, (hull) => {
      expect(polygonArea(slantOver(mirrorPolygon(hull)))).toBeCloseTo(polygonArea(slantOver(hull)), 9);
    }),
    { numRuns: 60 },
  );
});

test('a shape refused makes the next larger one', () => {
  const hull = growEvenly(
    [
      [0, 0],
      [6, 0],
      [5, 3],
      [1, 3],
    ],
    0.25,
  );
  const first = slantOver(hull);
  const second = smallestSlant(hull, 0.125, [0, 0], (outline) => polygonArea(outline) > polygonArea(first) + 1e-9)!;
  expect(polygonArea(second)).toBeGreaterThan(polygonArea(first));
  expect(areaOutside(hull, second)).toBeLessThan(1e-6);
  expect(smallestSlant(hull, 0.125, [0, 0], () => false)).toBeNull();
});

test('slack goes to the side away from the lean', () => {
  const hull: Polygon = [
    [0, 0],
    [3.05, 0],
    [3.05, 2.03],
    [0, 2.03],
  ];
  const corner = (lean: Point) => polygonBox(smallestSlant(hull, 0.125, lean, always)!).min;
  expect(corner([-1, 0])[0]).toBeCloseTo(0, 12);
  expect(corner([1, 0])[0]).toBeCloseTo(3.05 - 3.125, 12);
  expect(corner([0, -1])[1]).toBeCloseTo(0, 12);
  expect(corner([0, 1])[1]).toBeCloseTo(2.03 - 2.125, 12);
});
