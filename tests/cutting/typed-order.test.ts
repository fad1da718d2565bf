import { expect, test } from 'vitest';
import { checkTypedOrder } from '../../src/cutting/typed-order.ts';
import { withUnitOrder, withUnitParted } from '../../src/quilt/unit-order.ts';
import { blockOf, oblong, patchOf, unitOf } from './sample-quilt.ts';

/** Three in a row and a long one under them. */
const patches = [oblong(-1, 1, 1, 1), oblong(0, 1, 1, 1), oblong(1, 1, 1, 1), oblong(0, 0, 3, 1)].map((outline, i) =>
  patchOf(i + 1, outline),
);
const unit = unitOf([], { count: 2 }, { patches, paper: true });
const faultOf = (text: string): string => {
  const checked = checkTypedOrder(text, unit);
  return 'fault' in checked ? checked.fault : '';
};

test('an order typed by hand is checked, and told at the first patch that is wrong', () => {
  expect(checkTypedOrder('A2, A1 A3;4', unit)).toMatchObject({ order: [1, 0, 2, 3] });
  expect(faultOf('1 3 2 4')).toMatch(/^A3 shares no straight seam/);
  expect(faultOf('1 2 4 3')).toMatch(/^A3 meets the patches sewn before it \(A2 and A4\) along 2 lines/);
  expect(faultOf('4 1 2 3')).toMatch(/^A2 meets the patches sewn before it \(A1 and A4\) along 2 lines/);
});

test('what is no order is told in terms of the numbers', () => {
  expect(faultOf('1 2 3')).toBe('4 is missing.');
  expect(faultOf('1 2 2 4')).toBe('2 is there twice; expected each of 1, 2, 3 and 4 once.');
  expect(faultOf('1 2 B3 4')).toBe('Expected the numbers 1, 2, 3 and 4, each once; found “B3”.');
});

test('a listed unit is numbered in another order, or parted into units with letters of their own', () => {
  const block = blockOf([unit, unitOf(oblong(9, 9, 1, 1), { count: 1 }, { id: 'B' })]);
  const turned = withUnitOrder(block, 'A', [2, 1, 0, 3]).units![0]!;
  expect(turned.patches.map(({ number, outline }) => [number, outline])).toEqual(
    [2, 1, 0, 3].map((index, i) => [i + 1, patches[index]!.outline]),
  );
  const parted = withUnitParted(block, 'A', [
    [0, 1],
    [3, 2],
  ]).units!;
  expect(parted.map(({ id, repeat, patches: all }) => [id, repeat.count, all.map(({ number }) => number)])).toEqual([
    ['A', 2, [1, 2]],
    ['C', 2, [1, 2]],
    ['B', 1, [1]],
  ]);
});
