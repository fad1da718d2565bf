import fc from 'fast-check';
import { expect, test } from 'vitest';
import { difference } from '../../src/shape/combine.ts';
import { grow, growEvenly, sharpTips } from '../../src/shape/grow.ts';
import { convexHull } from '../../src/shape/hull.ts';
import { distance, dot, type Point, type Polygon } from '../../src/shape/point.ts';
import { isConvex, polygonArea, polygonBox, turnPolygon } from '../../src/shape/polygon.ts';
import { samePlace } from '../../src/shape/same-outline.ts';

const square: Polygon = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
const wedge: Polygon = [
  [0, 0],
  [8, -1],
  [8, 1],
];

test('a square stays a square, each edge moved by its own distance', () => {
  expect(polygonBox(growEvenly(square, 0.25))).toEqual({ min: [-0.25, -0.25], max: [4.25, 4.25] });
  expect(growEvenly(square, 0.25)).toHaveLength(4);
  const oblong: Polygon = [
    [-4, -1],
    [6, -1],
    [6, 7],
    [-4, 7],
  ];
  expect(samePlace(grow(square, { edges: [1, 2, 3, 4] }), oblong, 1e-12)).toBe(true);
});

test('a sharp tip is cut square across its bisector, the distance beyond the point and no farther', () => {
  const grown = growEvenly(wedge, 0.5);
  expect(polygonBox(grown).min[0]).toBeCloseTo(-0.5, 12);
  expect(grown.filter((point) => Math.abs(point[0] + 0.5) < 1e-9)).toHaveLength(2);
  expect(polygonBox(grow(wedge, { edges: [0.5, 0.5, 0.5], tips: [0.8, 0.5, 0.5] })).min[0]).toBeCloseTo(-0.8, 12);
});

test('right angles and blunt corners are no tips', () => {
  expect(sharpTips(square)).toHaveLength(0);
  expect(sharpTips(wedge).map((tip) => tip.corner)).toEqual([0, 1, 2]);
});

const radii = fc.array(fc.double({ min: 1, max: 9, noNaN: true }), { minLength: 3, maxLength: 9 });
const around = (radius: number, part: number): Point => [
  radius * Math.cos(2 * Math.PI * part),
  radius * Math.sin(2 * Math.PI * part),
];

test('everything within the distance of a polygon, convex or not, is inside it once grown', () => {
  fc.assert(
    fc.property(radii, fc.double({ min: 0.1, max: 0.7, noNaN: true }), (sizes, by) => {
      const star = sizes.map((size, i) => around(size, i / sizes.length));
      const grown = growEvenly(star, by);
      for (const corner of star) {
        const disc = Array.from({ length: 24 }, (_, k) => {
          const [x, y] = around(by, k / 24);
          return [corner[0] + x, corner[1] + y] as Point;
        });
        const outside = difference(disc, grown);
        expect(outside.reduce((sum, each) => sum + Math.abs(polygonArea(each)), 0)).toBeLessThan(1e-5);
      }
    }),
    { numRuns: 60 },
  );
});

test('a convex polygon grown as one and grown piece by piece is the same', () => {
  // The dent makes the second one go the long way round; it is too slight to show in the result or to sharpen a right angle.
  fc.assert(
    fc.property(radii, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (sizes, by) => {
      const hull = convexHull(sizes.map((size, i) => around(size, i / sizes.length)));
      fc.pre(polygonArea(hull) > 1 && hull.every((point, i) => distance(point, hull.at(i - 1)!) > 0.3));
      const grown = growEvenly(hull, by);
      expect(isConvex(grown)).toBe(true);
      const [a, b] = [hull[0]!, hull[1]!];
      const dent: Point = [(a[0] + b[0]) / 2 - (b[1] - a[1]) * 1e-8, (a[1] + b[1]) / 2 + (b[0] - a[0]) * 1e-8];
      const dented = [a, dent, ...hull.slice(1)];
      expect(isConvex(dented)).toBe(false);
      expect(polygonArea(growEvenly(dented, by))).toBeCloseTo(polygonArea(grown), 3);
    }),
    { numRuns: 60 },
  );
});

test('growing and turning may change places', () => {
  for (const degrees of [30, 90, 123.4, 180, 270]) {
    const first = turnPolygon(growEvenly(wedge, 0.5), degrees);
    const second = growEvenly(turnPolygon(wedge, degrees), 0.5);
    expect(samePlace(first, second)).toBe(true);
  }
});

test('a hollow keeps its shape where it is wide and fills where it is narrow', () => {
  const notched: Polygon = [
    [0, 0],
    [10, 0],
    [10, 4],
    [6, 4],
    [5, 1],
    [4, 4],
    [0, 4],
  ];
  const grown = growEvenly(notched, 0.25);
  expect(isConvex(grown)).toBe(false);
  // The notch's two sides, moved in by 1/4 each, meet where it is 1/2 wide measured square to them.
  const bottom = grown.filter((point) => Math.abs(point[0] - 5) < 1e-6).map((point) => point[1]);
  expect(Math.min(...bottom.filter((y) => y > 0))).toBeCloseTo(1 + 0.25 * Math.sqrt(10), 6);
  const filled = growEvenly(notched, 1.2);
  expect(filled.some((point) => dot(point, [0, 1]) < 4 && dot(point, [0, 1]) > 2)).toBe(false);
});
