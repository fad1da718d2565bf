/** How slanted blanks nest in a strip: closed forms of plane geometry, against the engine. */
import { describe, expect, test } from 'vitest';
import type { LayoutAnswer, Turns } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { planned } from './engine.ts';

const alternated: Turns = [0, 180];
const oneWay: Turns = [0];

/** As many as asked for from strips across a bolt. */
const across = (outline: Polygon, turns: Turns, demand: number, width: number) =>
  planned({
    method: 'strips',
    seconds: 5,
    cloths: [{ id: 'bolt', width }],
    blanks: [{ id: 'blank', outline, demand, turns }],
  });

/** Proved to take so many strips of one height. */
function expectStrips(answer: LayoutAnswer, count: number, height: number): void {
  expect([answer.status, answer.cost]).toEqual(['optimal', expect.closeTo(count * height, 6)]);
}

describe('isosceles trapezoids with parallel sides a < b', () => {
  // Derived: alternated n(a + b)/2 + (b − a)/2, one way n·b. 20 of (1, 3): 41 against 60.
  const trapezoid: Polygon = [
    [0, 0],
    [3, 0],
    [2, 2.5],
    [1, 2.5],
  ];

  test.each([
    ['alternated', alternated, 41],
    ['one way', oneWay, 60],
  ])('20 of them %s fit a strip of the closed form’s length and none shorter', async (_, turns, length) => {
    expectStrips(await across(trapezoid, turns, 20, length), 1, 2.5);
    expectStrips(await across(trapezoid, turns, 20, length - 0.01), 2, 2.5);
  });

  test.each<[string, Turns, number]>([
    ['alternated', [90, 270], 41],
    ['one way', [90], 60],
  ])(
    '20 of them %s fit along a ribbon of the closed form’s length and 19 along a shorter one',
    async (_, turns, length) => {
      const along = (ribbon: number) =>
        planned({
          method: 'strips',
          seconds: 5,
          cloths: [{ id: 'ribbon', width: 2.5, length: ribbon, firstCut: 'along' }],
          blanks: [{ id: 'blank', outline: trapezoid, demand: 20, turns }],
        });
      expect((await along(length)).status).toBe('optimal');
      const shorter = await along(length - 0.01);
      expect([shorter.status, shorter.unplaced.map((entry) => entry.count)]).toEqual(['partial', [1]]);
    },
  );
});

test.each([
  // Derived, with the strip 3/4 in higher than the finished triangle (three allowances of 1/4 in).
  [2, 25, 13],
  [3, 18, 9],
  [4, 14, 7],
  [5, 11, 6],
])(
  '60° triangles of finished height %d in from one strip of 42 in: %d alternated, %d one way',
  async (h, both, one) => {
    const height = h + 0.75;
    const side = (2 * height) / Math.sqrt(3);
    const triangle: Polygon = [
      [0, 0],
      [side, 0],
      [side / 2, height],
    ];
    expectStrips(await across(triangle, alternated, both, 42), 1, height);
    expectStrips(await across(triangle, alternated, both + 1, 42), 2, height);
    expectStrips(await across(triangle, oneWay, one, 42), 1, height);
    expectStrips(await across(triangle, oneWay, one + 1, 42), 2, height);
  },
);

test.each([
  // Derived: the pitch along the strip is w/sin 45°, and the slant takes w more once.
  [2, 14],
  [2.5, 11],
  [3, 9],
])('45° diamonds from one strip of 42 in that is %d in high: %d, one way or both', async (w, count) => {
  const side = w * Math.SQRT2;
  const diamond: Polygon = [
    [0, 0],
    [side, 0],
    [side + w, w],
    [w, w],
  ];
  for (const turns of [oneWay, alternated]) {
    expectStrips(await across(diamond, turns, count, 42), 1, w);
    expectStrips(await across(diamond, turns, count + 1, 42), 2, w);
  }
});
