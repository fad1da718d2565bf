import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { boxedFromBolts, inHand, withoutFacing, withRoom, withTolerance } from '../../src/cutting/variants.ts';
import type { Facing, Quilt } from '../../src/quilt/quilt.ts';
import { blockOf, clothOf, oblong, patchOf, quiltOf, ringWedge, roleOf, unitOf } from './sample-quilt.ts';

const wedges = unitOf(ringWedge(12, 3, 6), { count: 12 }, { paper: true });
const ring = (facing: Facing, more: Partial<Quilt> = {}) => quiltOf([wedges], facing, clothOf('one-way'), more);
const turnsOf = (quilt: Quilt) =>
  makeCutList(quilt).groups.flatMap((group) => group.job.blanks.map((blank) => blank.shapes![0]!.turns));

describe('facing ignored', () => {
  test('upright wedges, each a blank of its own, become one blank at any turn', () => {
    expect(turnsOf(ring({ to: 'upright' }))).toHaveLength(12);
    expect(turnsOf(withoutFacing(ring({ to: 'upright' })))).toEqual(['any']);
  });

  test('a patch’s own facing is ignored too', () => {
    const patches = [patchOf(1, ringWedge(12, 3, 6), { facing: { to: 'upright' } })];
    const quilt = ring({ to: 'free' }, { blocks: [blockOf([{ ...wedges, patches }])] });
    expect(turnsOf(quilt)).toHaveLength(12);
    expect(turnsOf(withoutFacing(quilt))).toEqual(['any']);
  });

  test('edges on the block’s outside that followed the print need not keep to the grain, those that kept to it do', () => {
    const square = unitOf(oblong(0, 0, 6, 6), { count: 1 });
    const whole = (print: 'one-way' | 'tossed') => quiltOf([square], { to: 'upright' }, clothOf(print));
    expect(turnsOf(withoutFacing(whole('one-way')))).toEqual(['any']);
    expect(turnsOf(withoutFacing(whole('tossed')))).toEqual(turnsOf(whole('tossed')));
    expect(turnsOf(whole('tossed'))).toEqual([[0, 90, 180, 270]]);
  });
});

test('room is set for the roles asked for, where patches have their own too', () => {
  const patches = [patchOf(1, ringWedge(12, 3, 6), { room: 1 })];
  const quilt = ring(
    { to: 'free' },
    {
      blocks: [blockOf([{ ...wedges, patches }])],
      roles: [roleOf('r'), roleOf('s', { to: 'free' }, { room: 2 })],
    },
  );
  const less = withRoom(
    quilt,
    0.125,
    (a, b) => (Number(a) < Number(b) ? a : b),
    (role) => role === 'r',
  );
  expect(less.roles.map((role) => role.room)).toEqual([0.125, 2]);
  expect(less.blocks[0]!.units![0]!.patches[0]!.room).toBe(0.125);
  expect(withRoom(quilt, 0, () => 0).roles.map((role) => role.room)).toEqual([0, 0]);
});

test('tolerance is widened, never narrowed, and a free patch stays free', () => {
  const quilt = ring(
    { to: 'outward' },
    {
      roles: [roleOf('r', { to: 'outward' }), roleOf('s', { to: 'upright', within: 10 }), roleOf('t')],
    },
  );
  expect(withTolerance(quilt, 8).roles.map((role) => role.facing)).toEqual([
    { to: 'outward', within: 8 },
    { to: 'upright', within: 10 },
    { to: 'free' },
  ]);
  expect(withTolerance(quilt, 8, (role) => role !== 'r').roles[0]!.facing).toEqual({ to: 'outward' });
  expect(turnsOf(withTolerance(ring({ to: 'outward' }), 8))).toEqual([[{ centre: 0, within: 8 }]]);
});

test('by rule of thumb, patches are boxed and come from the first cloth that can be bought, not from the shelf', () => {
  const { step: _, ...owned } = clothOf('solid', { pieces: [{ id: 'p', width: 20, length: 20 }] });
  const bolt = clothOf('tossed', { pieces: [{ id: 'q', width: 20, length: 20 }] });
  const quilt = boxedFromBolts({
    ...ring({ to: 'free' }),
    cloths: [owned, bolt],
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: ['solid', 'tossed'] } }],
  });
  const { groups } = makeCutList(quilt);
  expect(groups.map((group) => group.job.cloths.map((cloth) => cloth.id))).toEqual([['tossed']]);
  expect(groups[0]!.blanks[0]!.shapes.map((shape) => shape.kind)).toEqual(['box']);
});

describe('cloth in hand', () => {
  const quilt = ring({ to: 'free' }, { cloths: [clothOf('one-way', { price: { amount: 12, per: 'yd' } })] });

  test('alone it is a bolt sold in that one length, for nothing', () => {
    const [cloth] = inHand(quilt, 'one-way', '1 1/4', true).cloths;
    expect([cloth!.step, cloth!.price, cloth!.pieces]).toEqual(['1 1/4 in', undefined, undefined]);
  });

  test('beside others it is a piece that is not washed yet, and no more is to be had', () => {
    const [cloth] = inHand(quilt, 'one-way', '1/2 yd', false).cloths;
    expect([cloth!.step, cloth!.price]).toEqual([undefined, undefined]);
    expect(cloth!.pieces).toEqual([{ id: 'in hand', width: 42, length: '1/2 yd', washed: false }]);
  });
});
