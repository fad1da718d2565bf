import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { addRole } from '../../src/page/block-edits.ts';
import {
  addCloth,
  addPiece,
  freeId,
  newCloth,
  removeCloth,
  removePiece,
  setCloth,
  setPiece,
} from '../../src/page/cloth-edits.ts';
import { setBlockCount, setFacing, setForm, setQuilt, setRoleCloths, setTestBlock } from '../../src/page/edits.ts';
import { fillRoles, firstPrint, rolesWithoutCloth } from '../../src/page/new-cloths.ts';
import { removePatch, setFacingOf, setPatchNumber, setPatchRole } from '../../src/page/patch-edits.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';

const file = new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url);
const dial = readQuilt(readFileSync(file, 'utf8'));
const frozen = JSON.stringify(dial);

test('a role gets its cloth in the scheme that is planned, and in no other', () => {
  const changed = setRoleCloths('hours', ['rising-swifts'])(dial);
  const [first, second] = changed.schemes;
  expect(first?.cloths.hours).toBe('rising-swifts');
  expect(second).toBe(dial.schemes[1]);
});

test('several cloths may fill a role, each named once; without any the role stays open', () => {
  const cloths = (ids: readonly string[]) => setRoleCloths('hours', ids)(dial).schemes[0]!.cloths;
  expect(cloths(['rising-swifts', 'yew-rows', 'rising-swifts']).hours).toEqual(['rising-swifts', 'yew-rows']);
  expect(Object.keys(cloths(['rising-swifts', 'yew-rows']))).toEqual(Object.keys(dial.schemes[0]!.cloths));
  expect(cloths([])).not.toHaveProperty('hours');
});

test('a facing keeps what is not changed of it', () => {
  const role = setFacing('sky', { within: 5 })(dial).roles.find((one) => one.id === 'sky');
  expect(role?.facing).toEqual({ to: 'outward', from: 'axis', within: 5 });
});

test('block, form, cloth and habits change where they are meant to', () => {
  expect(setBlockCount('dial', 5)(dial).blocks[0]?.count).toBe(5);
  expect(setForm('dial', { wedges: 24 })(dial).blocks[0]?.form).toMatchObject({ wedges: 24, points: 16 });
  expect(setCloth('noon-gold', { width: '40 in' })(dial).cloths.filter(({ width }) => width === '40 in')).toHaveLength(
    1,
  );
  expect(setQuilt({ room: '1/2 in', spares: 3 })(dial)).toMatchObject({ room: '1/2 in', spares: 3 });
});

test('a test block is chosen, kept in the file, and taken back without a trace', () => {
  const chosen = setTestBlock('dial')(dial);
  expect(readQuilt(writeQuilt(chosen)).testBlock).toBe('dial');
  expect(setTestBlock(null)(chosen)).toEqual(dial);
  const unwashed = setCloth('thistledown', { washFirst: false })(dial);
  expect(readQuilt(writeQuilt(unwashed)).cloths.find(({ id }) => id === 'thistledown')?.washFirst).toBe(false);
});

test('what is taken out of a cloth is gone from it, and every change leaves a quilt that can be read', () => {
  const changes = [
    setCloth('noon-gold', { step: undefined, price: undefined }),
    setCloth('yew-rows', { up: 'across', print: 'one-way', shrinkage: { along: 4, across: 1 } }),
    addPiece('yew-rows', { id: 'piece 1', width: '20 in', length: '9 in' }),
    setPiece('yew-rows', 'piece 1', { count: 3, washed: false }),
    setPiece('noon-gold', 'fat-quarter', { length: '17 in' }),
    addCloth(newCloth(dial, 'cloth 9')),
  ];
  const changed = readQuilt(writeQuilt(changes.reduce((quilt, edit) => edit(quilt), dial)));
  const [gold, yew] = ['noon-gold', 'yew-rows'].map((id) => changed.cloths.find((cloth) => cloth.id === id)!);
  expect(gold).not.toHaveProperty('step');
  expect(gold).not.toHaveProperty('price');
  expect(gold?.pieces).toEqual([{ id: 'fat-quarter', width: '21 in', length: '17 in' }]);
  expect(yew).toMatchObject({ up: 'across', shrinkage: { along: 4, across: 1 } });
  expect(yew?.pieces).toEqual([{ id: 'piece 1', width: '20 in', length: '9 in', count: 3, washed: false }]);
  expect(removePiece('yew-rows', 'piece 1')(changed).cloths.find(({ id }) => id === 'yew-rows')?.pieces).toEqual([]);
  expect(removeCloth('cloth 9')(changed).cloths.map(({ id }) => id)).toEqual(dial.cloths.map(({ id }) => id));
});

test('a new id is one that nothing has', () => {
  expect(freeId('piece', [])).toBe('piece 1');
  expect(freeId('piece', [{ id: 'fat-quarter' }, { id: 'piece 3' }])).toBe('piece 4');
});

test('no edit touches the quilt that it changes', () => {
  for (const edit of [
    setRoleCloths('hours', ['x']),
    setFacing('sky', { to: 'free' }),
    setForm('dial', { points: 8 }),
  ]) {
    edit(dial);
  }
  expect(JSON.stringify(dial)).toBe(frozen);
});

test('a facing is changed for one place, for a patch or for its role, and what was narrower gives way', () => {
  const patch = { block: 'dial', unit: 'C', number: 1, place: 3, role: 'hours' };
  const one = setFacingOf(patch, 'place', { to: 'inward' })(dial);
  expect(one.blocks[0]!.own).toEqual({ C1: { facingAt: { 3: { to: 'inward' } } } });
  expect(one.roles).toEqual(dial.roles);
  const all = setFacingOf(patch, 'patch', { to: 'upright' })(one);
  expect(all.blocks[0]!.own).toEqual({ C1: { facing: { to: 'upright' } } });
  const role = setFacingOf(patch, 'role', { to: 'clockwise' })(all);
  expect(role.blocks).toEqual(dial.blocks);
  expect(role.roles.find(({ id }) => id === 'hours')?.facing).toEqual({ to: 'clockwise' });
  expect(readQuilt(writeQuilt(all))).toEqual(all);
});

test('listed patches change role and number, go, and take a role with them that nothing else has', () => {
  const gate = readQuilt(readFileSync(new URL('../../scenarios/garden-gate.yardwright.json', import.meta.url), 'utf8'));
  const block = gate.blocks.find(({ units }) => units !== undefined)!;
  const unit = block.units![0]!;
  const [first, second] = unit.patches;
  const name = { unit: unit.id, number: first!.number };
  const own = (quilt: typeof gate) => quilt.blocks.find(({ id }) => id === block.id)!.units![0]!;
  const fresh = addRole('Moss')(gate);
  const moved = setPatchRole(block.id, name, 'moss')(fresh);
  expect(own(moved).patches[0]!.role).toBe('moss');
  const swapped = setPatchNumber(block.id, name, second?.number ?? 9)(moved);
  expect(own(readQuilt(writeQuilt(swapped))).patches.map(({ number }) => number)).toEqual(
    [...own(swapped).patches.map(({ number }) => number)].sort((a, b) => a - b),
  );
  const gone = removePatch(block.id, {
    unit: unit.id,
    number: own(swapped).patches.find(({ role }) => role === 'moss')!.number,
  })(swapped);
  expect(gone.roles.some(({ id }) => id === 'moss')).toBe(false);
  expect(() =>
    removePatch('b', { unit: 'A', number: 1 })({
      ...gate,
      blocks: [{ ...block, id: 'b', units: [{ ...unit, id: 'A', patches: [{ ...first!, number: 1 }] }] }],
    }),
  ).toThrow(/last patch/);
});

test('roles without a cloth are filled with new ones, each in a colour of its own, a one-way print where it faces somewhere', () => {
  const bare = { ...dial, cloths: [], schemes: dial.schemes.map((scheme) => ({ ...scheme, cloths: {} })) };
  const roles = rolesWithoutCloth(bare, () => true);
  const filled = fillRoles(new Map(roles.map((role) => [role.id, { print: firstPrint(role) }])))(bare);
  expect(rolesWithoutCloth(readQuilt(writeQuilt(filled)), () => true)).toEqual([]);
  expect(new Set(filled.cloths.map(({ colour }) => colour)).size).toBe(roles.length);
  const hours = filled.cloths.find(({ id }) => id === filled.schemes[0]!.cloths.hours)!;
  expect(hours).toMatchObject({ print: 'one-way', width: '42 in', step: '1/4 yd' });
});
