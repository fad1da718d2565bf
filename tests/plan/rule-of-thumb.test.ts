import { expect, test } from 'vitest';
import type { JobCloth, LayoutJob } from '../../src/plan/layout-job.ts';
import { ruleOfThumb } from '../../src/plan/rule-of-thumb.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { proofread } from '../../workers/proof/proofread.ts';

const box = (width: number, height: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
const job = (cloth: Partial<JobCloth>, more: Partial<LayoutJob> = {}): LayoutJob => ({
  method: 'strips',
  ruler: 0.5,
  cloths: [{ id: 'bolt', width: 10, step: 9, squaring: 1, ...cloth }],
  blanks: [
    { id: 'a', demand: 5, shapes: [{ outline: box(4, 2.25), turns: [0] }] },
    { id: 'b', demand: 2, shapes: [{ outline: box(3, 7), turns: 'any' }] },
  ],
  ...more,
});

test('kinds have strips of their own, on the ruler, after the squared end, and the sum goes up to the step', () => {
  // Five of a, two to a strip: 3 strips of 2 1/2. Two of b stand side by side in 7, or lie in two strips of 3, which is less.
  const answer = ruleOfThumb(job({}));
  expect(answer.layouts[0]!.strips).toEqual([
    { from: 0, height: 1 },
    { from: 1, height: 2.5 },
    { from: 3.5, height: 2.5 },
    { from: 6, height: 2.5 },
    { from: 8.5, height: 3 },
    { from: 11.5, height: 3 },
  ]);
  expect(answer).toMatchObject({ status: 'feasible', cost: 18, bound: 0 });
  expect(proofread(job({}), answer)).toEqual([]);
});

test('a cloth that asks for other turns is heeded', () => {
  const turned = job(
    {},
    {
      blanks: [
        { id: 'b', demand: 2, shapes: [{ outline: box(3, 7), turns: [0] }], cloths: [{ id: 'bolt', turns: [270] }] },
      ],
    },
  );
  const answer = ruleOfThumb(turned);
  expect(answer.layouts[0]!.placements[0]).toMatchObject({ turn: 270, x: 0, y: 1 + 3 });
  expect(proofread(turned, answer)).toEqual([]);
});

test('what is wider than the cloth is left out and told', () => {
  const narrow = job({ width: 3.5 });
  const answer = ruleOfThumb(narrow);
  expect(answer).toMatchObject({ status: 'partial', bound: null, unplaced: [{ blank: 'a', count: 5 }] });
  expect(proofread(narrow, answer)).toEqual([]);
});

test('nothing placed is nothing bought', () => {
  const answer = ruleOfThumb(job({ width: 2 }));
  expect([answer.layouts, answer.cost]).toEqual([[], 0]);
  expect(proofread(job({ width: 2 }), answer)).toEqual([]);
});

test('a shelf piece, or several cloths, have no such rule', () => {
  expect(() => ruleOfThumb(job({ length: 20 }))).toThrow('the rule of thumb is for one bolt; found bolt');
});
