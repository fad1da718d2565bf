import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { JoinedLength } from '../../src/quilt/quilt.ts';
import type { Point } from '../../src/shape/point.ts';
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

type Piece = readonly [id: string, demand: number, joined: string | null, size: Point];

describe('with a shortest piece', () => {
  const pieces = (...of: Parameters<typeof strips>) =>
    strips(...of).groups[0]!.blanks.map(({ id, demand, joined, shapes }): Piece => {
      return [id, demand, joined, shapes[0]!.outline[2]!];
    });

  test('what whole strips leave over is made up by one last piece', () => {
    // Five strips and four joins of 2 in make 192 in of 220; the fifth join takes 2 in of the last piece (derived).
    expect(pieces(40, 'in', { length: 220, join: 2, shortest: 12 })).toEqual([
      ['Binding', 5, 'binding', [40, 2.5]],
      ['Binding, last', 1, 'binding', [30, 2.5]],
    ]);
  });

  test('the last piece is no shorter than that, and ends on the ruler', () => {
    expect(pieces(40, 'in', { length: 85, shortest: 12 })[1]).toEqual(['Binding, last', 1, 'binding', [12, 2.5]]);
    expect(pieces(40, 'in', { length: 100.03, shortest: 12 })[1]).toEqual([
      'Binding, last',
      1,
      'binding',
      [20.125, 2.5],
    ]);
  });

  test('a last piece of the whole width is a strip like the others', () => {
    expect(pieces(40, 'in', { length: 120, shortest: 12 })).toEqual([['Binding', 3, 'binding', [40, 2.5]]]);
    expect(pieces(40, 'in', { length: 85, shortest: 40 })).toEqual([['Binding', 3, 'binding', [40, 2.5]]]);
  });

  test('a length of one piece is cut to its length, however short', () => {
    expect(pieces(40, 'in', { length: 10, shortest: 12 })).toEqual([['Binding', 1, 'binding', [10, 2.5]]]);
  });

  test('pieces longer than the cloth is wide run along it, side by side', () => {
    // Four sides of 60 in without a join: 4 pieces, 60 in of cloth however many more there were (derived).
    expect(pieces(40, 'in', { length: 240, width: 5, shortest: 60 })).toEqual([['Binding', 4, 'binding', [5, 60]]]);
    // Ten pieces of 50 in would lie in two rows of 8 and 2; eight of 62 1/2 in take one row (derived).
    expect(pieces(40, 'in', { length: 500, width: 5, shortest: 50 })).toEqual([['Binding', 8, 'binding', [5, 62.5]]]);
  });

  test.each([2.5, 7, 11, 19.5, 40])(
    'every piece is long enough and all together make the length, shortest %d',
    (shortest) => {
      for (let length = 41; length < 400; length += 7.3) {
        const found = pieces(40, 'in', { length, join: 2.5, shortest });
        const lengths = found.flatMap(([, count, , corner]) => Array<number>(count).fill(corner[0]));
        expect(Math.min(...lengths)).toBeGreaterThanOrEqual(shortest);
        expect(Math.max(...lengths)).toBeLessThanOrEqual(40);
        const made = lengths.reduce((sum, each) => sum + each, 0) - (lengths.length - 1) * 2.5;
        expect(made).toBeGreaterThanOrEqual(length - 1e-9);
        // One piece fewer would not do, even were all of them whole.
        expect((lengths.length - 1) * 40 - (lengths.length - 2) * 2.5).toBeLessThan(length);
      }
    },
  );
});
