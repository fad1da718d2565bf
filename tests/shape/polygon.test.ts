import { expect, test } from 'vitest';
import { clip, halfPlanesOf } from '../../src/shape/half-plane.ts';
import { convexHull } from '../../src/shape/hull.ts';
import type { Polygon } from '../../src/shape/point.ts';
import {
  isConvex,
  mirrorPolygon,
  movePolygon,
  polygonArea,
  polygonCentroid,
  tidyPolygon,
  turnPolygon,
} from '../../src/shape/polygon.ts';
import { sameOutline } from '../../src/shape/same-outline.ts';

const shape: Polygon = [
  [1, 0],
  [5, 0],
  [4, 3],
  [2, 3],
];

test('a trapezium has the area and middle of the textbook', () => {
  expect(polygonArea(shape)).toBe(9);
  // The middle of a trapezium lies h(a + 2b)/3(a + b) above its side a.
  expect(polygonCentroid(shape)[1]).toBeCloseTo((3 * (4 + 2 * 2)) / (3 * (4 + 2)), 12);
});

test('outlines are the same wherever they lie and wherever they begin, and not when turned', () => {
  const shifted = movePolygon([...shape.slice(2), ...shape.slice(0, 2)], [7, -3]);
  expect(sameOutline(shape, shifted)).toBe(true);
  expect(sameOutline(shape, turnPolygon(shape, 180))).toBe(false);
  expect(sameOutline(shape, mirrorPolygon(shape))).toBe(true);
  expect(
    sameOutline(
      shape,
      movePolygon(shape, [0, 0]).map(([x, y]) => [x, y * (1 + 1e-5)]),
    ),
  ).toBe(false);
});

test('turning the other hand stays anticlockwise', () => {
  expect(polygonArea(mirrorPolygon(shape))).toBe(9);
});

test('the hull leaves out what lies inside or on an edge', () => {
  const hull = convexHull([...shape, [3, 1], [3, 0], [3, 3]]);
  expect(hull).toHaveLength(4);
  expect(polygonArea(hull)).toBe(9);
});

test('a pentagram goes round twice and is not convex', () => {
  const star = Array.from({ length: 5 }, (_, k) => [Math.cos(k * 0.8 * Math.PI), Math.sin(k * 0.8 * Math.PI)] as const);
  expect(isConvex(star)).toBe(false);
  expect(isConvex(shape)).toBe(true);
});

test('a polygon clipped by its own sides is itself, and by a line beyond is nothing', () => {
  expect(
    sameOutline(
      halfPlanesOf(shape).reduce<Polygon>(clip, [
        [-9, -9],
        [9, -9],
        [9, 9],
        [-9, 9],
      ]),
      shape,
    ),
  ).toBe(true);
  expect(clip(shape, { normal: [0, 1], reach: -1 })).toEqual([]);
});

test('needless corners go', () => {
  expect(
    tidyPolygon([
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 0],
      [2, 2],
    ]),
  ).toEqual([
    [0, 0],
    [2, 0],
    [2, 2],
  ]);
});
