import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point, Polygon } from '../../src/shape/point.ts';
import { turn } from '../../src/shape/point.ts';
import { gap, hull, isConvex } from '../../workers/proof/convex.ts';
import { convexParts } from '../../workers/proof/convex-parts.ts';

const square = (x: number, y: number, side: number): Polygon => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];

const area = (outline: Polygon): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const next = outline[(i + 1) % outline.length]!;
      return sum + x * next[1] - next[0] * y;
    }, 0),
  ) / 2;

describe('the gap between convex polygons', () => {
  test.each([0, 30, 90, 137, 180, 270])('is the least shift that parts or joins them, turned by %d°', (degrees) => {
    const turned = (polygon: Polygon) => hull(polygon.map((point) => turn(point, degrees)));
    const between = (a: Polygon, b: Polygon) => gap(turned(a), turned(b));
    expect(between(square(0, 0, 2), square(3, 0, 2))).toBeCloseTo(1, 12);
    expect(between(square(0, 0, 2), square(2, 1, 2))).toBeCloseTo(0, 12);
    expect(between(square(0, 0, 2), square(1.5, 1, 2))).toBeCloseTo(-0.5, 12);
    expect(between(square(0, 0, 9), square(4, 1, 1))).toBeCloseTo(-2, 12);
  });

  test('a tip is as deep as it reaches', () => {
    const tip: Polygon = [
      [1.75, 1],
      [4, 0.5],
      [4, 1.5],
    ];
    expect(gap(square(0, 0, 2), tip)).toBeCloseTo(-0.25, 12);
  });
});

const ring = fc
  .array(fc.integer({ min: 10, max: 100 }), { minLength: 3, maxLength: 12 })
  .map((radii) => radii.map((radius, i): Point => turn([radius, 0], (360 * i) / radii.length)));

test('the hull is convex, goes anticlockwise and holds every point', () => {
  fc.assert(
    fc.property(ring, (points) => {
      const around = hull(points);
      expect(isConvex(around)).toBe(true);
      for (const [i, a] of around.entries()) {
        const b = around[(i + 1) % around.length]!;
        for (const p of points) {
          expect((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])).toBeGreaterThan(-1e-9);
        }
      }
    }),
  );
});

test('convex parts fill the outline exactly and none is notched, either way round', () => {
  fc.assert(
    fc.property(ring, fc.boolean(), (points, clockwise) => {
      const outline = clockwise ? [...points].reverse() : points;
      const parts = convexParts(outline);
      expect(parts.every(isConvex)).toBe(true);
      expect(parts.reduce((sum, part) => sum + area(part), 0)).toBeCloseTo(area(outline), 6);
      for (const [i, a] of parts.entries()) {
        for (const b of parts.slice(0, i)) expect(gap(a, b)).toBeGreaterThan(-1e-9);
      }
    }),
  );
});

test('a comb with points along its edges comes apart into its own area', () => {
  const comb: Polygon = [
    [0, 0],
    [3, 0],
    [6, 0],
    [6, 3],
    [5, 3],
    [5, 1],
    [4, 1],
    [4, 3],
    [3, 3],
    [3, 1],
    [2, 1],
    [2, 3],
    [0, 3],
    [0, 1.5],
  ];
  expect(convexParts(comb).reduce((sum, part) => sum + area(part), 0)).toBeCloseTo(area(comb), 12);
});
