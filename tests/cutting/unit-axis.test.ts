import { expect, test } from 'vitest';
import { unitAxis } from '../../src/cutting/unit-axis.ts';
import { moveOutline } from '../../src/shape/outline.ts';
import { turn } from '../../src/shape/point.ts';
import { oblong, patchOf, ringWedge, unitOf } from './sample-quilt.ts';

test('a unit’s axis is the bisector of the sector that it spans', () => {
  for (const degrees of [0, 18, 99, 271, 359]) {
    const wedge = moveOutline(ringWedge(20, 2, 8), (corner) => turn(corner, degrees));
    expect(unitAxis(unitOf(wedge, { count: 1 }))).toBeCloseTo(degrees, 9);
  }
});

test('a unit that reaches the centre spans the sector of its other corners', () => {
  const point = [
    [0, 0],
    [2, 4],
    [0, 10],
    [-2, 4],
  ] as const;
  expect(unitAxis(unitOf(point, { count: 8 }))).toBeCloseTo(0, 9);
});

test('a sector of more than half the circle is bisected the long way', () => {
  const patches = [0, 80, 160, 240].map((degrees, i) =>
    patchOf(
      i + 1,
      moveOutline(ringWedge(4, 2, 8), (corner) => turn(corner, degrees)),
    ),
  );
  expect(unitAxis(unitOf([], { count: 1 }, { patches }))).toBeCloseTo(120, 6);
});

test('its own axis goes first, and a unit all round the centre has none', () => {
  expect(unitAxis(unitOf(ringWedge(20, 2, 8), { count: 1 }, { axis: -30 }))).toBe(330);
  expect(unitAxis(unitOf(oblong(0, 0, 4, 4), { count: 1 }))).toBeNull();
});
