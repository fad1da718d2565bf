import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { setBlockCount, setCloth, setFacing, setForm, setQuilt, setRoleCloth } from '../../src/page/edits.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';

const file = new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url);
const dial = readQuilt(readFileSync(file, 'utf8'));
const frozen = JSON.stringify(dial);

test('a role gets its cloth in the scheme that is planned, and in no other', () => {
  const changed = setRoleCloth('hours', 'rising-swifts')(dial);
  const [first, second] = changed.schemes;
  expect(first?.cloths.hours).toBe('rising-swifts');
  expect(second).toBe(dial.schemes[1]);
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

test('no edit touches the quilt that it changes', () => {
  for (const edit of [setRoleCloth('hours', 'x'), setFacing('sky', { to: 'free' }), setForm('dial', { points: 8 })]) {
    edit(dial);
  }
  expect(JSON.stringify(dial)).toBe(frozen);
});
