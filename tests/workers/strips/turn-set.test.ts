/** The layout job's own rule for turns in strips, read again with other means. */
import { describe, expect, test } from 'vitest';
import type { Polygon } from '../../../src/shape/point.ts';
import { turnSet } from '../../../workers/strips/turn-set.ts';
import { spin } from '../../checker/check-lies.ts';
import { type Draw, numbers, pickFrom } from '../numbers.ts';

const box: Polygon = [
  [0, 0],
  [4, 0],
  [4, 2],
  [0, 2],
];
/** 3, 4, 5: its edges stand at 0, 90 and about 36.87 degrees. */
const corner: Polygon = [
  [0, 0],
  [4, 0],
  [0, 3],
];
const slant = (Math.atan2(3, 4) * 180) / Math.PI;

test('listed turns are themselves, within one round, each once, ascending', () => {
  expect(turnSet(box, [450, 0, -90, 360, 180])).toEqual([0, 90, 180, 270]);
});

test('an interval is its centre, its ends, and no more where no edge comes level', () => {
  expect(turnSet(box, [{ centre: 40, within: 5 }])).toEqual([35, 40, 45]);
});

test('an interval takes in every turn that lays an edge along or square to the strip, its own ends included', () => {
  expect(turnSet(corner, [{ centre: 45, within: 10 }])).toEqual([35, expect.closeTo(slant, 9), 45, 55]);
  expect(turnSet(box, [{ centre: 5, within: 5 }])).toEqual([0, 5, 10]);
  expect(turnSet(box, [{ centre: 358, within: 5 }])).toEqual([0, 3, 353, 358]);
});

test('any turn is every multiple of 15 degrees and every turn that lays an edge level', () => {
  const multiples = Array.from({ length: 24 }, (_, i) => 15 * i);
  expect(turnSet(box, 'any')).toEqual(multiples);
  const levels = [0, 90, 180, 270].map((quarter) => quarter + slant);
  const expected = [...multiples, ...levels].sort((a, b) => a - b);
  expect(turnSet(corner, 'any')).toEqual(expected.map((t) => expect.closeTo(t, 9)));
});

describe('random outlines and intervals', () => {
  const isLevel = (outline: Polygon, turn: number) =>
    outline.some((p, i) => {
      const q = outline[(i + 1) % outline.length]!;
      const [x, y] = spin([q[0] - p[0], q[1] - p[1]], turn);
      return Math.min(Math.abs(x), Math.abs(y)) < 1e-9;
    });
  const outlineOf = (draw: Draw): Polygon =>
    Array.from({ length: draw(3, 6) }, (_, i, { length } = { length: 6 }) => {
      const angle = (2 * Math.PI * (i + draw(0, 50) / 100)) / length;
      return [Math.cos(angle) * draw(1, 5), Math.sin(angle) * draw(1, 5)] as const;
    });

  test('hold nothing but centre, ends and level turns, and leave out none of them', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const draw = numbers(seed);
      const outline = outlineOf(draw);
      const [centre, within] = [draw(0, 359), pickFrom(draw, [0, 1, 5, 30, 90])];
      const found = turnSet(outline, [{ centre, within }]);
      const off = (t: number) => ((t - centre + 540) % 360) - 180;
      for (const t of found) {
        const named = [0, within, -within].some(
          (d) => Math.abs(off(t) - d) < 1e-9 || Math.abs(Math.abs(off(t) - d) - 360) < 1e-9,
        );
        expect(Math.abs(off(t))).toBeLessThanOrEqual(within + 1e-9);
        expect(named || isLevel(outline, t)).toBe(true);
      }
      for (const [p, i] of outline.map((each, index) => [each, index] as const)) {
        const q = outline[(i + 1) % outline.length]!;
        const edge = (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
        for (const quarter of [0, 90, 180, 270]) {
          const t = (((quarter - edge) % 360) + 360) % 360;
          if (Math.abs(off(t)) > within - 1e-9) continue;
          expect(found.some((f) => Math.abs(f - t) < 1e-6 || Math.abs(f - t) > 360 - 1e-6)).toBe(true);
        }
      }
    }
  });
});
