import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { QuiltSession } from '../../src/keep/quilt-session.ts';
import { openStorage, type TextStore } from '../../src/keep/storage.ts';

const dial = readFileSync(new URL('../../scenarios/solstice-dial.yardwright.json', import.meta.url), 'utf8');

function memory(): TextStore & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return { texts, getItem: (key) => texts.get(key) ?? null, setItem: (key, value) => void texts.set(key, value) };
}

test('a quilt changed in one visit is there on the next', () => {
  const store = memory();
  const first = new QuiltSession(
    openStorage(() => store),
    dial,
  );
  expect(first.edit((quilt) => ({ ...quilt, room: '3/8 in' }))).toBeNull();
  const second = new QuiltSession(
    openStorage(() => store),
    dial,
  );
  expect(second.quilt.room).toBe('3/8 in');
});

test('a change that would make no quilt is refused with the field and what was expected, and nothing changes', () => {
  const session = new QuiltSession(openStorage(memory), dial);
  const before = session.quilt;
  const refusal = session.edit((quilt) => ({
    ...quilt,
    blocks: quilt.blocks.map((block) => ({ ...block, form: { ...block.form!, inner: 12 } })),
  }));
  expect(refusal).toMatch(/^inner: expected less than outer, which is 10 in; found 12 in/);
  expect(session.quilt).toBe(before);
  expect(session.canUndo).toBe(false);
});

test('opening a file can be taken back; a bad file changes nothing', () => {
  const session = new QuiltSession(openStorage(memory), dial);
  expect(session.open('{')).not.toBeNull();
  expect(session.canUndo).toBe(false);
  expect(session.open(dial.replace('Solstice dial', 'Other'))).toBeNull();
  expect(session.quilt.name).toBe('Other');
  session.undo();
  expect(session.quilt.name).toBe('Solstice dial');
  session.redo();
  expect(session.quilt.name).toBe('Other');
});

test('a browser that refuses its store is reported, never thrown', () => {
  const refused = openStorage(() => {
    throw new Error('The operation is insecure.');
  });
  const session = new QuiltSession(refused, dial);
  expect(session.quilt.name).toBe('Solstice dial');
  expect(session.storageFault).toMatch(/The operation is insecure.*Save it to a file/);
  expect(session.edit((quilt) => ({ ...quilt, spares: 2 }))).toBeNull();
  expect(session.quilt.spares).toBe(2);
  expect(session.storageFault).toMatch(/Save it to a file/);
});

test('a kept quilt that cannot be read gives way to the first one, and that is said', () => {
  const store = memory();
  store.setItem('yardwright/quilt', '{"format": "yardwright", "version": 99}');
  const session = new QuiltSession(
    openStorage(() => store),
    dial,
  );
  expect(session.quilt.name).toBe('Solstice dial');
  expect(session.storageFault).toMatch(/cannot be read.*version/);
});
