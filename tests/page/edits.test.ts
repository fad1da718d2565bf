import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
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
