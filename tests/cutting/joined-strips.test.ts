import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { JoinedLength } from '../../src/quilt/quilt.ts';
import { clothOf, quiltOf } from './sample-quilt.ts';

function strips(width: number, unit: 'in' | 'cm', joined: Partial<JoinedLength>) {
  const binding: JoinedLength = {
    id: 'binding',
    name: 'Binding',
    role: 'r',
    length: 0,
    width: 2.5,
    join: 0,
    ...joined,
  };
  const quilt = quiltOf([], { to: 'free' }, clothOf('solid', { width }), {
    unit,
    blocks: [],
    joined: [binding],
    spares: 3,
  });
  return makeCutList(quilt);
}
const count = (...of: Parameters<typeof strips>) => strips(...of).groups[0]!.blanks[0]!.demand;

test('published bindings come out strip for strip', () => {
  // castillejacotton.blogspot.com/2013/06: 50×60, 40 usable, 2 in lost a join.
  expect(count(40, 'in', { length: 2 * (50 + 60), join: 2 })).toBe(6);
  // sylviasquiltdepot.com: 46×46, 40 usable.
  expect(count(40, 'in', { length: 4 * 46 })).toBe(5);
  // eternalmaker.com/fabric-measuring-tips: 1.5 × 1 m, cloth 110 cm, 12 cm strips.
  expect(count(110, 'cm', { length: 2 * (150 + 100), width: 12 })).toBe(5);
});

test('n strips have n − 1 joins', () => {
  expect(count(40, 'in', { length: 40, join: 2 })).toBe(1);
  expect(count(40, 'in', { length: 78, join: 2 })).toBe(2);
  expect(count(40, 'in', { length: 78.01, join: 2 })).toBe(3);
});

test('strips go right across the cloth as washed, and spares are not added', () => {
  const [group] = strips(40, 'in', { length: 100, join: 2 }).groups;
  expect(group!.blanks[0]).toMatchObject({ id: 'Binding', joined: 'binding', spares: 0, demand: 3, uses: [] });
  expect(group!.blanks[0]!.shapes).toEqual([
    {
      kind: 'strip',
      outline: [
        [0, 0],
        [40, 0],
        [40, 2.5],
        [0, 2.5],
      ],
    },
  ]);
  expect(group!.job.blanks[0]!.shapes![0]!.turns).toEqual([0]);
});

test('a join as wide as the cloth is told', () => {
  expect(strips(40, 'in', { length: 100, join: 40 }).problems[0]!.text).toContain('“Binding” cannot be joined up');
});
