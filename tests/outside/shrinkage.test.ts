/**
 * Shrinkage along and across, each by itself, against ISO 5077:2007's definition, (after − before) / before: to keep L, buy
 * L / (1 − p). Its figures for 36 in, 37.11 at 3 % and 37.89 at 5 %, are derived from it; so is 42 in × (1 − 5 %) = 39.9.
 */
import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { ruleOfThumb } from '../../src/plan/rule-of-thumb.ts';
import { sayWashing } from '../../src/plan/say-washing.ts';
import type { Cloth } from '../../src/quilt/quilt.ts';
import { clothOf, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

/** Squares of 5 in cut size, planned as the usual rule has it: it needs no search, so what it buys is plain arithmetic. */
function squares(count: number, more: Partial<Cloth>) {
  const outline = [
    [0, 0],
    [4.5, 0],
    [4.5, 4.5],
    [0, 4.5],
  ] as const;
  const cloth = clothOf('tossed', { step: '0.01 in', ...more });
  const quilt = quiltOf([unitOf(outline, { count })], { to: 'free' }, cloth, { room: 0 });
  const cutList = makeCutList(quilt);
  const { job } = cutList.groups[0]!;
  const tally = makeTally(quilt, cutList, [ruleOfThumb(job)]);
  return { job, line: tally.cloths[0]!, problems: cutList.problems, cloth };
}

describe('cloth that is washed first', () => {
  test.each([
    [3, 37.11],
    [5, 37.89],
  ])('36 in that shrink by %d %% along are bought as %d in', (along, bought) => {
    // Eight squares of 5 in to a strip, seven strips: 35 in are needed, and what is bought of them is scaled to 36.
    const { line } = squares(56, { shrinkage: { along, across: 0 } });
    expect(line.need).toBe(35);
    expect(line.buy).toBeCloseTo(Math.ceil(35 / (1 - along / 100) / 0.01 - 1e-6) * 0.01, 9);
    expect((line.buy / line.need) * 36).toBeCloseTo(bought, 1);
  });

  test('shrinking across narrows it and leaves its length: eight squares to a strip of 42 in, seven to 39.9', () => {
    // 56 squares of 5 in from a yard at 42 in, 49 at 39 (table of squares from a yard, alandacraft.com/2020/03/22).
    const wide = squares(56, {});
    const narrow = squares(56, { shrinkage: { along: 0, across: 5 } });
    expect(wide.line.need).toBe(35);
    expect(narrow.job.cloths[0]!.width).toBeCloseTo(39.9, 12);
    expect(narrow.line.need).toBe(40);
    expect(narrow.line.buy).toBeCloseTo(40, 9);
  });

  test('is told both ways: how wide it comes to, and how much as sold makes the need', () => {
    const { cloth, line } = squares(56, { shrinkage: { along: 3, across: 5 } });
    const write = (length: number) => `${Math.round(length * 100) / 100} in`;
    expect(sayWashing(cloth, line.need, 'in', write)).toBe(
      'wash it first: 42 in wide comes to 39.9 in, and the 40 in needed are 41.24 in as sold',
    );
    expect(sayWashing(clothOf('tossed'), 40, 'in', write)).toBeNull();
  });
});

describe('cloth that is cut as bought', () => {
  test('keeps its width, its step and its blanks, and she is told that it will shrink', () => {
    const shrinkage = { along: 3, across: 5 };
    const washed = squares(56, { shrinkage });
    const unwashed = squares(56, { shrinkage, washFirst: false });
    const plain = squares(56, {});
    expect(unwashed.job).toEqual(plain.job);
    expect(unwashed.job.blanks).toEqual(washed.job.blanks);
    expect(unwashed.line.buy).toBe(35);
    expect(plain.problems).toEqual([]);
    expect(unwashed.problems.map(({ kind, text }) => [kind, text])).toEqual([
      [
        'warning',
        '“tossed” is cut unwashed: in the first wash its patches shrink by 3 % along the selvage and 5 % across it, and pucker beside those that shrink less. The blanks are not changed; wash it before cutting, or wash no cloth.',
      ],
    ]);
    expect(sayWashing(unwashed.cloth, 35, 'in', String)).toBeNull();
  });
});
