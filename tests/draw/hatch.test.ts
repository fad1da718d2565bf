import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rectangle } from '../../src/draw/display-list.ts';
import { hatch } from '../../src/draw/hatch.ts';
import type { Polygon } from '../../src/shape/point.ts';

test('hatching stays inside what it fills and lies 45 degrees steep', () => {
  const side = fc.double({ min: 0.5, max: 50, noNaN: true });
  fc.assert(
    fc.property(side, side, fc.double({ min: -20, max: 20, noNaN: true }), (width, height, left) => {
      for (const run of hatch(rectangle(left, 2, width, height), 0.7)) {
        const [from, to] = [run.start, run.steps[0]!.to];
        for (const [x, y] of [from, to]) {
          expect(x).toBeGreaterThanOrEqual(left - 1e-9);
          expect(x).toBeLessThanOrEqual(left + width + 1e-9);
          expect(y).toBeGreaterThanOrEqual(2 - 1e-9);
          expect(y).toBeLessThanOrEqual(2 + height + 1e-9);
        }
        expect(to[0] - from[0]).toBeCloseTo(to[1] - from[1], 6);
      }
    }),
  );
});

test('the lines are as long together as the area divided by the gap', () => {
  const square: Polygon = rectangle(0, 0, 100, 100);
  const total = hatch(square, 0.5)
    .map(({ start, steps }) => Math.hypot(steps[0]!.to[0] - start[0], steps[0]!.to[1] - start[1]))
    .reduce((sum, length) => sum + length, 0);
  expect(total).toBeGreaterThan((100 * 100) / 0.5 - 300);
  expect(total).toBeLessThan((100 * 100) / 0.5 + 300);
});
