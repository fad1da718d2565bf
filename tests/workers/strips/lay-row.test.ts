/** Lengths of rows: closed forms of plane geometry, and every choice of cuts tried one by one. */
import { describe, expect, test } from 'vitest';
import type { Polygon } from '../../../src/shape/point.ts';
import { fitRow, type LaidRow } from '../../../workers/strips/lay-row.ts';
import { makeVariant, type Variant } from '../../../workers/strips/variant.ts';
import { thicknessShared } from '../../checker/rings.ts';
import { numbers } from '../numbers.ts';
import { listedSlants } from '../oracle/listed-rows.ts';
import { slantedJob } from '../oracle/slanted-job.ts';
import { waysToLie } from '../oracle/slanted-rows.ts';

const lying = (outline: Polygon, turn: number) => makeVariant(0, 0, outline, turn, false, true);
const alternated = (outline: Polygon, n: number) => Array.from({ length: n }, (_, i) => lying(outline, 180 * (i % 2)));
const oneWay = (outline: Polygon, n: number) => Array.from({ length: n }, () => lying(outline, 0));

const wedge = (a: number, b: number, h: number): Polygon => [
  [0, 0],
  [b, 0],
  [(b + a) / 2, h],
  [(b - a) / 2, h],
];

describe('isosceles trapezoids with parallel sides a < b', () => {
  test.each([
    [1, 3, 2.5, 20],
    [0.5, 2, 6, 9],
    [2, 2.25, 1, 7],
  ])('a %d, b %d, h %d, %d of them: derived lengths', (a, b, h, n) => {
    // Derived: alternated n(a + b)/2 + (b − a)/2, one way n·b. 20 of (1, 3): 41 against 60.
    expect(fitRow(alternated(wedge(a, b, h), n), h, 1000)!.length).toBeCloseTo((n * (a + b)) / 2 + (b - a) / 2, 9);
    expect(fitRow(oneWay(wedge(a, b, h), n), h, 1000)!.length).toBeCloseTo(n * b, 9);
  });
});

test.each([
  // Derived: h + 3/4 high with the allowances; so many from 42 in, alternated and one way.
  [2, 25, 13],
  [3, 18, 9],
  [4, 14, 7],
  [5, 11, 6],
])('60° triangles of finished height %d in: %d alternated or %d one way fill 42 in', (finished, both, one) => {
  const h = finished + 0.75;
  const side = (2 * h) / Math.sqrt(3);
  const triangle: Polygon = [
    [0, 0],
    [side, 0],
    [side / 2, h],
  ];
  for (const [row, n] of [
    [alternated, both],
    [oneWay, one],
  ] as const) {
    expect(fitRow(row(triangle, n), h, 42)?.length).toBeLessThanOrEqual(42);
    expect(fitRow(row(triangle, n + 1), h, 42)).toBeNull();
  }
});

test.each([0.25, 0.5, 1, 2])(
  'a wedge raised by %d beside another one way gains what its side leans over that height',
  (rise) => {
    // Derived: side by side two triangles of base b and height h take 2b; raised, the second comes nearer by rise·b/(2h).
    const [b, h] = [3, 5];
    const triangle = wedge(0, b, h).slice(0, 3);
    const row = fitRow(oneWay(triangle, 2), h + rise, 100)!;
    expect(row.length).toBeCloseTo(2 * b - (rise * b) / (2 * h), 9);
    expect(row.blanks.map((blank) => blank.y).sort()).toEqual([0, rise]);
  },
);

describe('random rows of three', () => {
  const rows = Array.from({ length: 60 }, (_, seed) => {
    const draw = numbers(seed + 1);
    const ways = waysToLie(slantedJob(seed + 1).kinds);
    const chosen = [0, 1, 2].map(() => ways[draw(0, ways.length - 1)]!);
    const height = Math.max(...chosen.map((way) => way.height)) + draw(0, 4) / 4;
    const variants = new Map(chosen.map((way) => [way, makeVariant(way.kind, 0, way.hull, 0, false, true)]));
    return { seed, height, chosen, variants: chosen.map((way) => variants.get(way)!) };
  });

  test('are as short as the shortest over all slants of cuts and all heights low or high', () => {
    for (const { seed, height, chosen, variants } of rows) {
      const least = shortest(variants, height, listedSlants(chosen));
      const row = fitRow(variants, height, 1000)!;
      // To a square cut after the last blank, beyond every cut before it.
      expect([seed, row.middle]).toEqual([seed, expect.closeTo(least, 7)]);
      expect(row.length).toBeLessThanOrEqual(row.middle + 1e-9);
    }
  });

  test('lie within the strip, in order, and share nothing', () => {
    for (const { seed, height, variants } of rows) {
      const row = fitRow(variants, height, 1000)!;
      expect(row.blanks.map((blank) => blank.variant)).toEqual(variants);
      const rings = placed(row);
      for (const [i, ring] of rings.entries()) {
        for (const [x, y] of ring) {
          expect(x >= -1e-9 && x <= row.length + 1e-9 && y >= -1e-9 && y <= height + 1e-9, `seed ${seed}`).toBe(true);
        }
        for (const other of rings.slice(0, i)) expect(thicknessShared(ring, other)).toBeLessThan(1e-6);
      }
    }
  });
});

const placed = (row: LaidRow) =>
  row.blanks.map(({ variant, x, y }) => variant.hull.map(([u, v]) => [u + x, v + y] as const));

/** The least over every slant of every cut and every blank low or high, each laid as far left as the cut before it lets it. */
function shortest(variants: readonly Variant[], height: number, slants: readonly number[]): number {
  const next = (index: number, near: number, slant: number): number => {
    const variant = variants[index];
    if (!variant) return slant === 0 ? near : Infinity;
    const ends = [0, height - variant.height].flatMap((rise) => {
      const ring = variant.hull.map(([x, y]) => [x, y + rise] as const);
      const x = Math.max(...ring.map(([u, v]) => near + slant * v - u));
      return slants.map((after) => {
        const cut = Math.max(near, near + (slant - after) * height, ...ring.map(([u, v]) => x + u - after * v));
        return next(index + 1, cut, after);
      });
    });
    return Math.min(...ends);
  };
  return next(0, 0, 0);
}
