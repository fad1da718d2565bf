import { expect, test } from 'vitest';
import { makeTally } from '../../src/plan/make-tally.ts';
import type { Cloth } from '../../src/quilt/quilt.ts';

import { answerOf, blank, four, groupOf, linen, onBolt, quiltWith, tally } from './sample-cloth.ts';

test('shrinkage: steps are counted in washed cloth and paid for as sold', () => {
  const group = groupOf(
    [blank('A1', 5, 3)],
    [{ id: 'linen', cloth: 'linen', piece: null }],
    [{ id: 'linen', width: 38, step: 9 * 0.95, squaring: 1 }],
  );
  const layout = { ...four, length: 8.8 };
  const cloth = tally(quiltWith({ ...linen, shrinkage: { along: 5, across: 5 } }), group, answerOf([layout]))
    .cloths[0]!;
  // ISO 5077: to keep L buy L/(1 − p); 8.8 in at 5 % are 9.26 in, over one step of 9.
  expect(cloth.steps).toBe(2);
  expect(cloth.buy).toBe(18);
  expect(cloth.price).toBe(6);
  expect(cloth.over).toBeCloseTo(2 * 8.55 - 8.8, 9);
});

test('each line is rounded as the shop rounds it, and the total is the sum of the lines', () => {
  // A quarter yard at 12.50 a yard is 3.125: each line is 3.13, and the two together 6.26, not 6.25.
  const dear: Cloth = { ...linen, price: { amount: 12.5, per: 'yd', currency: '$' } };
  const ramie: Cloth = { ...dear, id: 'ramie' };
  const of = (id: string) => groupOf([blank(id, 5, 3)], [{ id, cloth: id, piece: null }], [{ id, width: 40, step: 9 }]);
  const groups = [of('linen'), of('ramie')];
  const answers = ['linen', 'ramie'].map((cloth) => {
    const placements = four.placements.map((one) => ({ ...one, blank: cloth }));
    return answerOf([{ ...four, cloth, placements }]);
  });
  const result = makeTally(quiltWith(dear, ramie), { groups, problems: [] }, answers);
  expect(result.cloths.map((cloth) => cloth.price)).toEqual([3.13, 3.13]);
  expect(result.price).toBe(6.26);
});

test('prices in two currencies are not added up', () => {
  const euros: Cloth = { ...linen, id: 'ramie', price: { amount: 10, per: 'm', currency: '€' } };
  const other = groupOf(
    [blank('A1', 5, 3)],
    [{ id: 'ramie', cloth: 'ramie', piece: null }],
    [{ id: 'ramie', width: 40, step: 9 }],
  );
  const result = makeTally(quiltWith(linen, euros), { groups: [onBolt([blank('A1', 5, 3)]), other], problems: [] }, [
    answerOf([four]),
    answerOf([{ ...four, cloth: 'ramie' }]),
  ]);
  // A quarter yard is 0.2286 m.
  expect(result.cloths.map((cloth) => cloth.price)).toEqual([3, 2.29]);
  expect(result).toMatchObject({ price: null, currency: null });
});
