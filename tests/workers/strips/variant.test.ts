/** Blanks as they may lie, against the outside checker's own way of laying them. */
import { expect, test } from 'vitest';
import type { Polygon } from '../../../src/shape/point.ts';
import { choicesOn, makeFamily } from '../../../workers/strips/family.ts';
import { makeVariant } from '../../../workers/strips/variant.ts';
import { layOutline } from '../../checker/check-lies.ts';
import { rectangle } from '../../outside/engine.ts';
import { randomJob } from '../fuzz/random-job.ts';

const close = (a: Polygon, b: Polygon): boolean =>
  a.every((p) => b.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-7));

test('a variant is the hull of the outline turned and turned over, its box at the origin, and says how it came there', () => {
  for (let seed = 1; seed <= 60; seed++) {
    for (const blank of randomJob(seed).blanks) {
      const outline = blank.outline ?? blank.shapes![0]!.outline;
      for (const turn of [0, 37, 90, 180, 291]) {
        for (const mirror of [false, true]) {
          const variant = makeVariant(0, 0, outline, turn, mirror, true);
          const [x, y] = variant.shift;
          const lying = layOutline(outline, { blank: '', shape: 0, turn, mirror, x, y }, true);
          const xs = lying.map((p) => p[0]);
          const ys = lying.map((p) => p[1]);
          expect([Math.min(...xs), Math.min(...ys)]).toEqual([expect.closeTo(0, 7), expect.closeTo(0, 7)]);
          expect([variant.width, variant.height]).toEqual([
            expect.closeTo(Math.max(...xs), 7),
            expect.closeTo(Math.max(...ys), 7),
          ]);
          expect(close(variant.hull, lying)).toBe(true);
        }
      }
    }
  }
});

const familyOf = (job: Parameters<typeof makeFamily>[0], along = false) =>
  makeFamily(job, 0, {
    along,
    span: along ? 100 : job.cloths[0]!.width,
    stack: along ? job.cloths[0]!.width : null,
    segment: along ? 100 : null,
  });

test('ways to lie that come to the same outline are kept once', () => {
  const blanks = [{ id: 'box', outline: rectangle(4, 2), demand: 1, turns: [0, 90, 180, 270], mirror: true }];
  const { variants } = familyOf({ method: 'strips', cloths: [{ id: 'bolt', width: 10 }], blanks });
  expect(variants.map((v) => [v.width, v.height])).toEqual([
    [4, 2],
    [2, 4],
  ]);
});

test('a blank with a notch lies as its hull, and what is wider than the strip is long does not lie at all', () => {
  const notched: Polygon = [
    [0, 0],
    [2, 1],
    [4, 0],
    [2, 5],
  ];
  const job = {
    method: 'strips',
    cloths: [{ id: 'bolt', width: 4.5 }],
    blanks: [{ id: 'dart', outline: notched, demand: 1, turns: [0, 90] }],
  } as const;
  const { variants } = familyOf(job);
  expect(variants.map((v) => [v.width, v.height, v.hull.length])).toEqual([[4, 5, 3]]);
});

test('turns and sides that a cloth asks for take the place of the shape’s own', () => {
  const blank = {
    id: 'a',
    demand: 1,
    cloths: ['one', { id: 'two', turns: 'any', mirror: true }],
    shapes: [{ outline: rectangle(2, 1), turns: [90] }, { outline: rectangle(3, 1) }],
  } as const;
  expect(choicesOn(blank, 'one').map((c) => [c.index, c.turns, c.mirror])).toEqual([
    [0, [90], false],
    [1, [0], false],
  ]);
  expect(choicesOn(blank, 'two').map((c) => [c.turns, c.mirror])).toEqual([
    ['any', true],
    ['any', true],
  ]);
  expect(choicesOn(blank, 'three')).toEqual([]);
});
