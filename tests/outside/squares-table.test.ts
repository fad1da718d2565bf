/** How many squares a yard gives, and a fat quarter: published tables against the engine. */
import { describe, expect, test } from 'vitest';
import { planned, rectangle } from './engine.ts';

/**
 * Squares of side a from 36 in of cloth 39, 40, 41 and 42 in wide, selvages off.
 * Source: alandacraft.com/2020/03/22, read; it equals ⌊W/a⌋·⌊36/a⌋.
 */
const YARD: readonly (readonly [a: number, ...counts: number[]])[] = [
  [1, 1404, 1440, 1476, 1512],
  [1.5, 624, 624, 648, 672],
  [2, 342, 360, 360, 378],
  [2.5, 210, 224, 224, 224],
  [3, 156, 156, 156, 168],
  [3.5, 110, 110, 110, 120],
  [4, 81, 90, 90, 90],
  [4.5, 64, 64, 72, 72],
  [5, 49, 56, 56, 56],
  [5.5, 42, 42, 42, 42],
  [6, 36, 36, 36, 42],
  [6.5, 30, 30, 30, 30],
  [7, 25, 25, 25, 30],
  [7.5, 20, 20, 20, 20],
  [8, 16, 20, 20, 20],
  [8.5, 16, 16, 16, 16],
  [9, 16, 16, 16, 16],
  [9.5, 12, 12, 12, 12],
  [10, 9, 12, 12, 12],
  [10.5, 9, 9, 9, 12],
  [11, 9, 9, 9, 9],
  [12, 9, 9, 9, 9],
];

const squares = (a: number, demand: number, width: number) =>
  planned({
    method: 'strips',
    seconds: 5,
    cloths: [{ id: 'yard', width }],
    blanks: [{ id: 'square', outline: rectangle(a, a), demand }],
  });

describe.each([39, 40, 41, 42].map((width, column) => [width, column] as const))(
  'cloth %d in wide',
  (width, column) => {
    test('gives every published number of squares from no more than a yard', async () => {
      for (const [a, ...counts] of YARD) {
        const answer = await squares(a, counts[column]!, width);
        expect([a, answer.cost <= 36 + 1e-6, answer.unplaced]).toEqual([a, true, []]);
      }
    });

    test('gives one square more only for one strip more, and proves it', async () => {
      // Derived: squares that may not be turned fill strips of their own height, ⌊W/a⌋ to a strip.
      for (const [a, ...counts] of YARD.filter(([side]) => side >= 3)) {
        const answer = await squares(a, counts[column]! + 1, width);
        const least = (Math.floor(36 / a) + 1) * a;
        expect([a, answer.status, answer.cost]).toEqual([a, 'optimal', expect.closeTo(least, 6)]);
      }
    });
  },
);

/** Squares of side a from a fat quarter of 18 by 22 in. Source: quilterscache.com/M/MathChartsPage.html, read. */
const FAT_QUARTER = [
  [2, 99],
  [2.5, 56],
  [3, 42],
  [3.5, 30],
  [4, 20],
  [4.5, 16],
  [5, 12],
  [6, 9],
  [6.5, 6],
] as const;

test('a fat quarter gives every published number of squares, whichever way it lies', async () => {
  for (const [width, length] of [
    [22, 18],
    [18, 22],
  ] as const) {
    for (const [a, demand] of FAT_QUARTER) {
      const answer = await planned({
        method: 'strips',
        seconds: 5,
        cloths: [{ id: 'fat quarter', width, length, firstCut: 'either' }],
        blanks: [{ id: 'square', outline: rectangle(a, a), demand }],
      });
      expect([a, answer.status, answer.unplaced]).toEqual([a, 'optimal', []]);
    }
  }
});
