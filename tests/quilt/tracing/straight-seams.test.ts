import { expect, test } from 'vitest';
import { straightenSeams } from '../../../src/quilt/tracing/straight-seams.ts';
import { EMPTY_TRACING, type Tracing } from '../../../src/quilt/tracing/tracing.ts';
import { cross, type Point, subtract } from '../../../src/shape/point.ts';
import { clickRound } from './trace-clicks.ts';

/** Four squares about a middle corner that is clicked a little off, in a way that neither seam is straight. */
const off: Point = [2.02, 1.985];
const four = (
  [
    [[0, 0], [2, 0], off, [0, 2]],
    [[2, 0], [4, 0], [4, 2], off],
    [off, [4, 2], [4, 4], [2, 4]],
    [[0, 2], off, [2, 4], [0, 4]],
  ] as const
).reduce<Tracing>((rest, places) => clickRound(rest, places), EMPTY_TRACING);

const at = (tracing: Tracing, near: Point): Point =>
  tracing.corners.map((corner) => corner.at).find(([x, y]) => Math.hypot(x - near[0], y - near[1]) < 0.3)!;

test('two straight seams that cross are both straight afterwards, their ends where they were', () => {
  const straight = straightenSeams(four, 1 / 32);
  const middle = at(straight, [2, 2]);
  for (const [from, to] of [
    [
      [2, 0],
      [2, 4],
    ],
    [
      [0, 2],
      [4, 2],
    ],
  ] as const) {
    expect(Math.abs(cross(subtract(to, from), subtract(middle, from)))).toBeLessThan(1e-8);
    expect(at(straight, from)).toEqual(from);
  }
});

test('a bend that is meant stays, and so does what lies too far off', () => {
  expect(straightenSeams(four, 1 / 128)).toEqual(four);
  const bent = clickRound(EMPTY_TRACING, [
    [0, 0],
    [2, 0.2],
    [4, 0],
    [4, 3],
    [0, 3],
  ]);
  expect(straightenSeams(bent, 0.5)).toBe(bent);
});

test('a long seam past several corners runs from its first to its last', () => {
  const row = [0, 1, 2, 3].reduce(
    (rest, k) =>
      clickRound(rest, [
        [k, 0.01 * ((k * 7) % 3)],
        [k + 1, 0.01 * (((k + 1) * 7) % 3)],
        [k + 1, 2],
        [k, 2],
      ]),
    EMPTY_TRACING,
  );
  const heights = straightenSeams(row, 1 / 32)
    .corners.filter(({ at: [, y] }) => y < 1)
    .map(({ at: [x, y] }) => y - (0.01 * x) / 4);
  expect(heights).toHaveLength(5);
  for (const height of heights) expect(height).toBeCloseTo(0, 9);
});
