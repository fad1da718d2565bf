import { expect, test } from 'vitest';
import { hiddenRoles, withHiddenFreed, withOtherCloth, withSpares } from '../../src/cutting/given-up.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { blockOf, clothOf, patchOf, quiltOf, ringWedge, roleOf, unitOf } from './sample-quilt.ts';

const ALL = () => true;
const wedges = unitOf(ringWedge(12, 3, 6), { count: 12 }, { paper: true });
const ring = (more: Partial<Quilt> = {}) => quiltOf([wedges], { to: 'upright' }, clothOf('one-way'), more);
const turnsOf = (quilt: Quilt) =>
  makeCutList(quilt).groups.flatMap((group) => group.job.blanks.map((blank) => blank.shapes![0]!.turns));

test('a role’s own spares stand in place of the quilt’s, and are lowered but never raised', () => {
  const quilt = ring({ spares: 2, roles: [roleOf('r', { to: 'outward' }, { spares: 1 })] });
  const [blank] = makeCutList(quilt).groups[0]!.blanks;
  expect([blank!.demand, blank!.spares]).toEqual([13, 1]);
  expect(withSpares(quilt, 0, ALL).roles[0]!.spares).toBe(0);
  expect(withSpares(quilt, 3, ALL)).toEqual(quilt);
  expect(withSpares(quilt, 0, (role) => role === 's')).toEqual(quilt);
});

test('two roles that share a blank get the most spares that either asks for', () => {
  const other = { ...wedges, id: 'B', patches: wedges.patches.map((patch) => ({ ...patch, role: 's' })) };
  const quilt = ring({
    blocks: [blockOf([wedges]), blockOf([other], { id: 'c' })],
    roles: [roleOf('r', { to: 'outward' }, { spares: 1 }), roleOf('s', { to: 'outward' }, { spares: 4 })],
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: 'one-way', s: 'one-way' } }],
  });
  const blanks = makeCutList(quilt).groups[0]!.blanks;
  expect(blanks.map(({ demand, spares }) => [demand, spares])).toEqual([[28, 4]]);
});

test('nothing is freed that she did not call hardly seen', () => {
  const quilt = ring();
  expect(hiddenRoles(quilt, ALL)).toEqual([]);
  expect(withHiddenFreed(quilt, ALL)).toEqual(quilt);
});

test('a role hardly seen lies any way', () => {
  const quilt = ring({ roles: [roleOf('r', { to: 'upright' }, { hidden: true })] });
  expect(turnsOf(quilt)).toHaveLength(12);
  expect(turnsOf(withHiddenFreed(quilt, ALL))).toEqual(['any']);
  expect(withHiddenFreed(quilt, (role) => role === 's')).toEqual(quilt);
});

test('of a role hardly seen a patch that is seen faces as it did, and the other way about', () => {
  const seen = { ...wedges, id: 'B', patches: [patchOf(1, ringWedge(12, 7, 9), { hidden: false })] };
  const hidden = { ...seen, patches: [patchOf(1, ringWedge(12, 7, 9), { hidden: true })] };
  const one = ring({ blocks: [blockOf([wedges, seen])], roles: [roleOf('r', { to: 'outward' }, { hidden: true })] });
  expect(turnsOf(withHiddenFreed(one, ALL))).toEqual(['any', [0]]);
  const other = ring({ blocks: [blockOf([wedges, hidden])], roles: [roleOf('r', { to: 'outward' })] });
  expect(hiddenRoles(other, ALL)).toEqual(['r']);
  expect(turnsOf(withHiddenFreed(other, ALL))).toEqual([[0], 'any']);
});

test('another cloth serves a role instead of one, or after it, in the scheme being planned alone', () => {
  const quilt = ring({
    cloths: [clothOf('one-way'), clothOf('solid')],
    schemes: [
      { id: 's', name: 'Dawn', cloths: { r: 'one-way' } },
      { id: 't', name: 'Dusk', cloths: { r: 'one-way' } },
    ],
  });
  const cloths = (beside: boolean) =>
    withOtherCloth(quilt, 'r', 'one-way', 'solid', beside).schemes.map((scheme) => scheme.cloths);
  expect(cloths(false)).toEqual([{ r: 'solid' }, { r: 'one-way' }]);
  expect(cloths(true)).toEqual([{ r: ['one-way', 'solid'] }, { r: 'one-way' }]);
});
