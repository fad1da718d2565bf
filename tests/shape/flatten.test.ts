import { expect, test } from 'vitest';
import { flatten, flattenEdges } from '../../src/shape/flatten.ts';
import { mirrorOutline, type Outline } from '../../src/shape/outline.ts';
import { outlineArea } from '../../src/shape/outline-measures.ts';
import { length, type Point } from '../../src/shape/point.ts';
import { polygonArea } from '../../src/shape/polygon.ts';

/** A quarter of a ring between radii 2 and 5: one bulging arc, one hollow one. */
const quarterRing: Outline = [
  [2, 0],
  [5, 0],
  { arc: { radius: 5, turn: 'anticlockwise' } },
  [0, 5],
  [0, 2],
  { arc: { radius: 2, turn: 'clockwise' } },
];

test('outside never cuts into an arc and parts from it by no more than asked', () => {
  for (const within of [0.5, 0.1, 0.01]) {
    const outer = flatten(quarterRing, { side: 'outside', within });
    const exact = outlineArea(quarterRing);
    expect(polygonArea(outer)).toBeGreaterThanOrEqual(exact);
    expect(polygonArea(outer) - exact).toBeLessThan(within * (7 * Math.PI) * 0.5);
    for (const [middle, radius] of middles(outer)) {
      if (radius > 4) {
        expect(middle).toBeGreaterThanOrEqual(5 - 1e-9);
        expect(radius).toBeLessThanOrEqual(5 + within + 1e-9);
      }
    }
  }
});

test('inside never goes beyond an arc', () => {
  const inner = flatten(quarterRing, { side: 'inside', within: 0.02 });
  expect(polygonArea(inner)).toBeLessThan(outlineArea(quarterRing));
  for (const point of inner) {
    expect(length(point)).toBeLessThanOrEqual(5 + 1e-9);
  }
});

test('chord puts every corner on an arc', () => {
  for (const point of flatten(quarterRing, { side: 'chord', within: 0.01 })) {
    const off = Math.min(Math.abs(length(point) - 5), Math.abs(length(point) - 2));
    expect(off).toBeLessThan(1e-9);
  }
});

test('an outline drawn clockwise comes back anticlockwise, its edges still knowing where they came from', () => {
  const mirrored = mirrorOutline(quarterRing);
  expect(outlineArea(mirrored)).toBeLessThan(0);
  const { points, edgeOf } = flattenEdges(mirrored, { side: 'outside', within: 0.1 });
  expect(polygonArea(points)).toBeGreaterThan(0);
  points.forEach((point, i) => {
    const next = points[(i + 1) % points.length]!;
    const straight = edgeOf[i] === 0 || edgeOf[i] === 2;
    // Edges 0 and 2 lie on the axes; the others are arcs.
    expect(straight).toBe((point[0] === 0 && next[0] === 0) || (point[1] === 0 && next[1] === 0));
  });
});

test('straight outlines come back as they are', () => {
  const square: Outline = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ];
  expect(flatten(square, { side: 'outside', within: 0.1 })).toEqual(square);
});

/** For each edge of a polygon about the origin: how far from it the edge's line runs, and the farther of its ends. */
function middles(polygon: readonly Point[]): readonly (readonly [number, number])[] {
  return polygon.map((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    const line = Math.abs(a[0] * b[1] - a[1] * b[0]) / Math.hypot(a[0] - b[0], a[1] - b[1]);
    return line < 1e-9 ? [5, 0] : [line, Math.min(length(a), length(b))];
  });
}
