import { expect, test } from 'vitest';
import { pathData } from '../../src/draw/path-data.ts';

test('y is turned over, numbers are kept short and a closed run closes', () => {
  const d = pathData({
    kind: 'path',
    class: 'seam',
    runs: [{ start: [0, 0], steps: [{ to: [1 / 3, 2] }, { to: [0, 2] }], closed: true }],
  });
  expect(d).toBe('M0 0L0.3333 -2L0 -2Z');
});

test('an arc that is clockwise to the eye has the sweep flag that SVG 2 calls positive angles', () => {
  const run = (clockwise: boolean) => ({
    start: [1, 0] as const,
    steps: [{ to: [0, 1] as const, arc: { radius: 1, large: false, clockwise } }],
    closed: false,
  });
  expect(pathData({ kind: 'path', class: 'seam', runs: [run(false)] })).toBe('M1 0A1 1 0 0 0 0 -1');
  expect(pathData({ kind: 'path', class: 'seam', runs: [run(true)] })).toBe('M1 0A1 1 0 0 1 0 -1');
});
