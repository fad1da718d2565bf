import { expect, test } from 'vitest';
import type { Item } from '../../src/draw/display-list.ts';
import { rectangle } from '../../src/draw/display-list.ts';
import { placeBox, textWidth } from '../../src/draw/fit-text.ts';
import { type LabelRequest, label } from '../../src/draw/label.ts';

const request: LabelRequest = {
  name: 'A1',
  size: 1,
  on: '#86a85a',
  arrow: { degrees: 0, heads: 1 },
  rather: 'name',
};
const kinds = (items: readonly Item[]) => items.map((item) => (item.kind === 'path' ? item.class : item.kind));

test('a roomy blank carries name and arrow', () => {
  const { items, named } = label(rectangle(0, 0, 6, 6), request);
  expect(kinds(items)).toEqual(['text', 'arrow']);
  expect(named).toBe(true);
});

test('where only one fits, the one that matters more is kept', () => {
  const low = rectangle(0, 0, 1.8, 1.3);
  expect(kinds(label(low, request).items)).toEqual(['text']);
  expect(kinds(label(low, { ...request, rather: 'arrow' }).items)).toEqual(['arrow']);
});

test('a name that fits only upended is upended', () => {
  const [text] = label(rectangle(0, 0, 1.4, 5), { ...request, name: 'A1.2', arrow: null }).items;
  expect(text).toMatchObject({ kind: 'text', turn: 90, at: [0.7, 2.5] });
});

test('what has no room for either carries neither', () => {
  expect(label(rectangle(0, 0, 0.3, 0.3), request)).toEqual({ items: [], named: false });
});

test('a label in a notched shape keeps out of the notch', () => {
  // A U: its middle lies in the notch.
  const u = [
    [0, 0],
    [9, 0],
    [9, 9],
    [6, 9],
    [6, 3],
    [3, 3],
    [3, 9],
    [0, 9],
  ] as const;
  const at = placeBox(u, textWidth('A1', 1), 1)!;
  const inNotch = at[0] > 3 - 0.6 && at[0] < 6 + 0.6 && at[1] > 3 - 0.5;
  expect(inNotch).toBe(false);
});
