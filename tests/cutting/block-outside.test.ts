import { expect, test } from 'vitest';
import { outsideEdges } from '../../src/cutting/block-outside.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { blockOf, clothOf, oblong, quiltOf, ringWedge, roleOf, unitOf } from './sample-quilt.ts';

/** A square of four triangles that meet in the middle: each has its long side on the outside. */
const quarter: Outline = [
  [0, 0],
  [3, 3],
  [-3, 3],
];

test('of a nine-patch the middle has no edge on the outside, the sides have one, the corners two', () => {
  const units = [
    unitOf(oblong(0, 0, 2, 2), { count: 1 }),
    unitOf(oblong(0, 2, 2, 2), { count: 4 }, { id: 'B' }),
    unitOf(oblong(2, 2, 2, 2), { count: 4 }, { id: 'C' }),
  ];
  const outside = outsideEdges(units).map((unit) => unit[0]!);
  expect(outside[0]).toEqual([[]]);
  expect(outside[1]).toEqual([[2], [2], [2], [2]]);
  expect(outside[2]).toEqual([
    [1, 2],
    [1, 2],
    [1, 2],
    [1, 2],
  ]);
});

test('a ring has no straight outside; its square ground has', () => {
  expect(outsideEdges([unitOf(ringWedge(12, 3, 6), { count: 12 })]).flat(2)).toEqual(Array(12).fill([]));
  const form = { kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13, wedges: 20, side: 28 } as const;
  const outside = outsideEdges(drawForm(form, 'in'));
  expect(
    outside
      .slice(0, 3)
      .flat(2)
      .every((edges) => edges.length === 0),
  ).toBe(true);
  expect(outside[3]![0]).toEqual([[1], [1], [1], [1]]);
});

test('a mirrored place has the same edges outside', () => {
  const right: Outline = [
    [0, 0],
    [3, 3],
    [0, 3],
  ];
  expect(outsideEdges([unitOf(right, { count: 4, mirrored: 'also' })])[0]![0]).toEqual(Array(8).fill([1]));
});

test('an edge on the outside keeps to the grain, along or across, until it is freed', () => {
  const turnsWith = (biasAllowed: boolean, within = 0) => {
    const facing = { to: 'free', within } as const;
    const quilt = quiltOf([unitOf(quarter, { count: 4 })], facing, clothOf('solid'), {
      roles: [roleOf('r', facing, { biasAllowed })],
    });
    return makeCutList(quilt).groups[0]!.job.blanks[0]!.shapes!.map((shape) => shape.turns);
  };
  expect(new Set(turnsWith(false).map((turns) => JSON.stringify(turns)))).toEqual(new Set(['[0,90,180,270]']));
  expect(turnsWith(true)[0]).toBe('any');
  expect(turnsWith(false, 3)[0]).toContainEqual({ centre: 90, within: 3 });
});

test('turned by any of its turns, the outside edge lies along or across', () => {
  const quilt = quiltOf([unitOf(quarter, { count: 4 })], { to: 'free' }, clothOf('solid'));
  const blank = makeCutList(quilt).groups[0]!.blanks[0]!;
  for (const { patch } of blank.shapes) {
    const longest = patch!
      .map((a, i) => [a, patch![(i + 1) % patch!.length]!] as const)
      .sort(([a, b], [c, d]) => Math.hypot(d[0] - c[0], d[1] - c[1]) - Math.hypot(b[0] - a[0], b[1] - a[1]))[0]!;
    const [x, y] = [longest[1][0] - longest[0][0], longest[1][1] - longest[0][1]];
    expect(Math.min(Math.abs(x), Math.abs(y))).toBeLessThan(1e-9);
  }
});

test('the block’s own turn in the quilt changes nothing: the grain goes with the edge', () => {
  const at = (turns: readonly number[]) =>
    makeCutList(
      quiltOf([], { to: 'free' }, clothOf('solid'), { blocks: [blockOf([unitOf(quarter, { count: 4 })], { turns })] }),
    ).groups[0]!.job;
  expect(at([45])).toEqual(at([0]));
});
