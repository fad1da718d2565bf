import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { printDirection } from '../../src/cutting/facing.ts';
import { hiddenRoles, withHiddenFreed } from '../../src/cutting/given-up.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { withoutFacing, withTolerance } from '../../src/cutting/variants.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';
import { edgesOf, mirrorOutline } from '../../src/shape/outline.ts';
import { blockOf, clothOf, patchOf, quiltOf, ringWedge, unitOf } from './sample-quilt.ts';

const wedge = ringWedge(20, 4, 8);
const ring = (own: object): Quilt =>
  quiltOf([unitOf(wedge, { count: 20 }, { patches: [patchOf(1, wedge, own)] })], { to: 'outward' }, clothOf('one-way'));
const demands = (quilt: Quilt) => makeCutList(quilt).groups.flatMap(({ blanks }) => blanks.map(({ demand }) => demand));

test('one wedge of a ring may face another way than the other nineteen', () => {
  expect(demands(ring({}))).toEqual([20]);
  const one = readQuilt(writeQuilt(ring({ facingAt: { 3: { to: 'inward' } } })));
  expect(demands(one)).toEqual([19, 1]);
  expect(makeCutList(one).groups[0]!.blanks[1]!.uses.map(({ place }) => place)).toEqual([3]);
  expect(demands(withoutFacing(one))).toEqual([20]);
  const wider = withTolerance(one, 5).blocks[0]!.units![0]!.patches[0]!;
  expect(wider.facingAt).toEqual({ 3: { to: 'inward', within: 5 } });
  expect(hiddenRoles(ring({ hidden: true, facingAt: { 3: { to: 'inward' } } }), () => true)).toEqual(['r']);
  expect(demands(withHiddenFreed(ring({ hidden: true, facingAt: { 3: { to: 'inward' } } }), () => true))).toEqual([20]);
});

test('turned on from where it points: anticlockwise, and the other way round on a mirrored place', () => {
  const hand = (mirrored: boolean) => {
    const outline = mirrored ? mirrorOutline(wedge) : wedge;
    return { middle: [0, 6] as const, axis: 0, edges: edgesOf(outline), turn: 0, mirrored };
  };
  expect(printDirection({ to: 'outward', turned: 30 }, hand(false))).toBe(30);
  expect(printDirection({ to: 'outward', turned: 30 }, hand(true))).toBe(330);
  expect(printDirection({ to: 'free', turned: 30 }, hand(false))).toBe('free');
});

test('a patch that a form draws may face its own way, and keeps it while other numbers change', () => {
  const file = new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url);
  const dial = readQuilt(readFileSync(file, 'utf8'));
  const [block] = dial.blocks;
  const own = { C1: { facingAt: { 0: { to: 'inward' } } }, Z9: { hidden: true } } as const;
  const changed = readQuilt(writeQuilt({ ...dial, blocks: [{ ...block!, own }] }));
  const [before, after] = [dial, changed].map((quilt) => makeCutList(quilt));
  const blanks = (list: typeof before) => list!.groups.flatMap((group) => group.blanks).length;
  expect(blanks(after)).toBe(blanks(before) + 1);
  const free = (quilt: Quilt) => makeCutList(withoutFacing(quilt)).groups.map(({ job }) => job);
  expect(free(changed)).toEqual(free(dial));
});

test('pieces of a loose block face by their own axis wherever they lie, and none has an outside edge', () => {
  const square = (x: number) =>
    [
      [x, 5],
      [x + 2, 5],
      [x + 2, 7],
      [x, 7],
    ] as const;
  const units = [0, 9].map((x, i) =>
    unitOf(square(x), { count: 6, over: 0 }, { id: 'AB'[i]!, axis: 0, patches: [patchOf(1, square(x))] }),
  );
  const quilt = quiltOf(units, { to: 'outward' }, clothOf('one-way'), { blocks: [blockOf(units, { loose: true })] });
  expect(demands(readQuilt(writeQuilt(quilt)))).toEqual([12]);
  const solid = quiltOf(units, { to: 'free' }, clothOf('solid'), { blocks: [blockOf(units, { loose: true })] });
  expect(makeCutList(solid).groups[0]!.job.blanks[0]!.shapes![0]!.turns).toBe('any');
});
