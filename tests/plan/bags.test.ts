import { expect, test } from 'vitest';
import type { Blank, PatchUse } from '../../src/cutting/cut-list.ts';
import { sayBags } from '../../src/plan/bagged-strips.ts';
import { fillBags } from '../../src/plan/bags.ts';
import type { Block, Quilt } from '../../src/quilt/quilt.ts';
import { use } from './cut-group.ts';

const block = (id: string, count: number, turns?: readonly number[]): Block => ({
  id,
  name: id.toUpperCase(),
  count,
  ...(turns && { turns }),
});
const quiltOf = (...blocks: readonly Block[]) =>
  ({ blocks, joined: [{ id: 'binding', name: 'Binding' }] }) as unknown as Quilt;
const blank = (id: string, uses: readonly PatchUse[], joined: string | null = null) =>
  ({ id, uses, joined }) as unknown as Blank;
const names = (quilt: Quilt, blanks: readonly Blank[], sequence: readonly string[], first?: string) =>
  fillBags(quilt, blanks, sequence, first).map(({ name }) => name);

test('each kind fills the bags in the same order; what is over is a spare, and a binding has its own bag', () => {
  const blanks = [blank('A1', [use('x'), use('x')]), blank('J', [], 'binding')];
  expect(names(quiltOf(block('x', 2)), blanks, ['A1', 'A1', 'A1', 'J', 'A1', 'A1'])).toEqual([
    'X 1',
    'X 1',
    'X 2',
    'Binding',
    'X 2',
    'Spares',
  ]);
});

test('the block that can be whole first is filled first', () => {
  const blanks = [blank('A1', [use('x'), use('y')]), blank('B1', [use('x')])];
  expect(names(quiltOf(block('x', 1), block('y', 1)), blanks, ['A1', 'A1', 'B1'])).toEqual(['Y', 'X', 'X']);
  expect(names(quiltOf(block('x', 1), block('y', 1)), blanks, ['A1', 'A1', 'B1'], 'x')).toEqual(['X', 'Y', 'X']);
});

test('copies turned otherwise in the quilt get the blanks that lie so', () => {
  const blanks = [blank('A1.1', [use('x', 0, 2)]), blank('A1.2', [use('x', 90, 1)])];
  expect(names(quiltOf(block('x', 3, [0, 90])), blanks, ['A1.2', 'A1.1', 'A1.1'])).toEqual(['X 2', 'X 1', 'X 3']);
});

test('no order of whole blocks is ever earlier than this one, where all copies are alike', () => {
  const blanks = [blank('A1', [use('x'), use('x')]), blank('B1', [use('x')])];
  const sequence = ['A1', 'B1', 'B1', 'A1', 'A1', 'A1', 'B1', 'A1', 'A1'];
  const bags = names(quiltOf(block('x', 3)), blanks, sequence);
  sequence.forEach((_, at) => {
    const cut = sequence.slice(0, at + 1);
    const count = (id: string) => cut.filter((each) => each === id).length;
    const whole = ['X 1', 'X 2', 'X 3'].filter(
      (bag) => bags.slice(0, at + 1).filter((each) => each === bag).length === 3,
    );
    expect(whole.length).toBe(Math.min(Math.floor(count('A1') / 2), count('B1')));
  });
});

test('bags are told in runs', () => {
  const blanks = [blank('A1', [use('x'), use('x')]), blank('B1', [use('x')])];
  const sequence = ['A1', 'A1', 'A1', 'A1', 'A1', 'A1', 'A1', 'B1'];
  const told = (ids: readonly string[]) => {
    const bags = fillBags(quiltOf(block('x', 3)), blanks, ids);
    return sayBags(ids.map((id, i) => ({ blank: id, bag: bags[i]! })));
  };
  expect(told(sequence)).toBe('A1: 2 each to X 1 to 3, 1 to Spares; B1: 1 to X 1');
  expect(told(['A1', 'A1'])).toBe('all to X 1');
  expect(told(['A1', 'A1', 'A1', 'A1'])).toBe('2 each to X 1 and 2');
});
