import { expect, test } from 'vitest';
import { meetings } from '../../src/shape/crossing.ts';
import type { Edge } from '../../src/shape/outline.ts';

const up: Edge = { from: [0, -3], to: [0, 3] };
const bow: Edge = { from: [2, 0], to: [-2, 0], arc: { radius: 2, turn: 'anticlockwise' } };

test('a line meets an arc only where the arc goes', () => {
  const found = meetings(up, bow, 1e-9);
  expect(found).toHaveLength(1);
  expect(found[0]![1]).toBeCloseTo(2, 12);
});

test('two arcs meet where both go', () => {
  const beside: Edge = { from: [3, 0], to: [-1, 0], arc: { radius: 2, turn: 'anticlockwise' } };
  const found = meetings(bow, beside, 1e-9);
  expect(found).toHaveLength(1);
  expect(found[0]![0]).toBeCloseTo(0.5, 12);
  expect(found[0]![1]).toBeCloseTo(Math.sqrt(15) / 2, 12);
});

test('arcs of one circle meet where they overlap', () => {
  const part: Edge = { from: [0, 2], to: [-2, 0], arc: { radius: 2, turn: 'anticlockwise' } };
  const other: Edge = { from: [-2, 0], to: [2, 0], arc: { radius: 2, turn: 'anticlockwise' } };
  expect(meetings(bow, part, 1e-9).length).toBeGreaterThan(0);
  expect(meetings(part, other, 1e-9).every(([x]) => Math.abs(x + 2) < 1e-9)).toBe(true);
});

test('parallel lines meet only where one runs along the other', () => {
  expect(meetings(up, { from: [1, -3], to: [1, 3] }, 1e-9)).toHaveLength(0);
  expect(meetings(up, { from: [0, 1], to: [0, 5] }, 1e-9)).toEqual([[0, 2]]);
});
