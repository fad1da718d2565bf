import { expect, test } from 'vitest';
import { arcFault, centreArc, onArc } from '../../src/shape/arc.ts';
import { distance, type Point } from '../../src/shape/point.ts';

const from: Point = [1, 0];
const to: Point = [0, 1];

test('a small anticlockwise arc has its centre on the left of its chord', () => {
  const arc = centreArc(from, to, { radius: 1, turn: 'anticlockwise' });
  expect(arc.centre[0]).toBeCloseTo(0, 12);
  expect(arc.centre[1]).toBeCloseTo(0, 12);
  expect(arc.sweep).toBeCloseTo(Math.PI / 2, 12);
});

test('each of clockwise and large puts the centre on the other side', () => {
  const clockwise = centreArc(from, to, { radius: 1, turn: 'clockwise' });
  expect(clockwise.centre[0]).toBeCloseTo(1, 12);
  expect(clockwise.sweep).toBeCloseTo(-Math.PI / 2, 12);
  const large = centreArc(from, to, { radius: 1, turn: 'anticlockwise', large: true });
  expect(large.centre[0]).toBeCloseTo(1, 12);
  expect(large.sweep).toBeCloseTo((3 * Math.PI) / 2, 12);
});

test('every arc starts at its first corner and ends at its second', () => {
  for (const turn of ['clockwise', 'anticlockwise'] as const) {
    for (const large of [false, true]) {
      const arc = centreArc([3, -2], [4, 1], { radius: 2.5, turn, large });
      expect(distance(onArc(arc, arc.start), [3, -2])).toBeLessThan(1e-12);
      expect(distance(onArc(arc, arc.start + arc.sweep), [4, 1])).toBeLessThan(1e-12);
    }
  }
});

test('an arc whose chord outruns its diameter cannot exist, and the least radius is named', () => {
  expect(arcFault([0, 0], [5, 0], { radius: 2, turn: 'clockwise' })).toContain('at least 2.5');
  expect(() => centreArc([0, 0], [5, 0], { radius: 2, turn: 'clockwise' })).toThrow(RangeError);
  expect(arcFault([0, 0], [4, 0], { radius: 2, turn: 'clockwise' })).toBeNull();
});

test('an arc needs two ends and a radius above nothing', () => {
  expect(arcFault([1, 1], [1, 1], { radius: 2, turn: 'clockwise' })).toContain('same corner');
  expect(arcFault([0, 0], [1, 1], { radius: -2, turn: 'clockwise' })).toContain('greater than 0');
  expect(arcFault([0, 0], [1, 1], { radius: Number.NaN, turn: 'clockwise' })).toContain('greater than 0');
});
