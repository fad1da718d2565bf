import { expect, test } from 'vitest';
import { priceOf } from '../../src/plan/price-of.ts';
import type { Version } from '../../src/plan/side-by-side.ts';
import type { ClothTally, Proof, Tally } from '../../src/plan/tally.ts';

const line = (
  cloth: string,
  steps: number,
  state: Proof['state'] = 'least',
  price: number | null = steps * 3,
  atLeast: number | null = null,
) => ({ cloth, name: cloth, steps, buy: steps * 9, price, proof: { state, atLeast } }) as unknown as ClothTally;
const tally = (...cloths: readonly ClothTally[]): Tally => ({ cloths, price: 1, currency: '$' }) as unknown as Tally;
const version = (of: Tally, kind: Version['kind'] = 'facing ignored', whole = false) =>
  ({ kind, tally: of, whole }) as Version;

test('what a version saves is told cloth by cloth and together', () => {
  const price = priceOf(tally(line('a', 4), line('b', 3)), version(tally(line('a', 2), line('b', 3))));
  expect(price).toMatchObject({ morePrice: -6, moreSteps: -2, proof: 'exact' });
  expect(price.cloths.map(({ cloth, more, morePrice }) => [cloth, more, morePrice])).toEqual([
    ['a', -18, -6],
    ['b', 0, 0],
  ]);
});

test('a price is exact only where both purchases are proved least', () => {
  const gap = (state: Proof['state']) => tally(line('a', 4, state));
  expect(priceOf(gap('least'), version(gap('gap'))).proof).toBe('bound');
  expect(priceOf(gap('gap'), version(gap('least'))).proof).toBe('open');
  expect(priceOf(gap('least'), version(gap('least'), 'rule of thumb')).proof).toBe('bound');
});

test('cloths that a version does not plan are left out, and money is told only where all that changes has a price', () => {
  const wanted = tally(line('a', 4), line('b', 3, 'least', null));
  expect(priceOf(wanted, version(tally(line('a', 5)))).cloths).toHaveLength(1);
  expect(priceOf(wanted, version(tally(line('a', 5), line('b', 3, 'least', null)))).morePrice).toBe(3);
  expect(priceOf(wanted, version(tally(line('a', 5), line('b', 2, 'least', null)))).morePrice).toBeNull();
});

test('how far a version might yet be bettered is told where that is proved', () => {
  const wanted = tally(line('a', 4), line('b', 3));
  const beside = version(tally(line('a', 4, 'gap', 12, 3), line('b', 3)));
  const price = priceOf(wanted, beside);
  expect([price.leastPrice, price.cloths[0]!.atLeast]).toEqual([18, 27]);
  expect(priceOf(wanted, version(tally(line('a', 4, 'gap'), line('b', 3)))).leastPrice).toBeNull();
  expect(priceOf(wanted, { ...beside, kind: 'rule of thumb' })).toMatchObject({ leastPrice: null, proof: 'bound' });
});

test('a cloth that another stands in for in a whole version is bought none of; one that cannot be bought is left out', () => {
  const owned = { ...line('c', 0, 'least', null), steps: null };
  const price = priceOf(tally(line('a', 4), line('b', 3), owned), version(tally(line('a', 6)), 'rule of thumb', true));
  expect(price.cloths.map(({ cloth, more }) => [cloth, more])).toEqual([
    ['a', 18],
    ['b', -27],
  ]);
  expect([price.morePrice, price.moreSteps]).toEqual([-3, -1]);
});
