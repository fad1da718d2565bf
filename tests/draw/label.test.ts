import { expect, test } from 'vitest';
import type { Item, PathItem, TextItem } from '../../src/draw/display-list.ts';
import { rectangle } from '../../src/draw/display-list.ts';
import { placeBox, textWidth } from '../../src/draw/fit-text.ts';
import { type LabelRequest, label } from '../../src/draw/label.ts';
import { isInside } from '../../src/shape/polygon.ts';

const request: LabelRequest = { name: 'A1', size: 1, on: '#86a85a', arrow: { degrees: 0, heads: 1 } };
const kinds = (items: readonly Item[]) => items.map((item) => (item.kind === 'path' ? item.class : item.kind));
const turnOf = (items: readonly Item[]) => items.flatMap((item) => (item.kind === 'text' ? [item.turn ?? 0] : []));

test('a roomy blank carries name and arrow', () => {
  expect(kinds(label(rectangle(0, 0, 6, 6), request))).toEqual(['text', 'arrow']);
});

test('a low blank carries its arrow after the name, a narrow one its name turned', () => {
  const low = label(rectangle(0, 0, 4, 1.3), request);
  expect([kinds(low), turnOf(low)]).toEqual([['text', 'arrow'], [0]]);
  const narrow = label(rectangle(0, 0, 1, 4), request);
  expect([kinds(narrow), turnOf(narrow)]).toEqual([['text', 'arrow'], [90]]);
});

test('a wedge carries its name where it is wide and its arrow beside it, clear of each other', () => {
  const wedge = [
    [0, 0],
    [1.8, 0],
    [1, 9],
    [0.8, 9],
  ] as const;
  const items = label(wedge, { ...request, name: 'B2m' });
  expect(kinds(items)).toEqual(['text', 'arrow']);
  const [text, path] = items as [TextItem, PathItem];
  const points = path.runs.flatMap((run) => [run.start, ...run.steps.map(({ to }) => to)]);
  expect(points.every((point) => isInside(wedge, ...point))).toBe(true);
  const half = textWidth('B2m', 1) / 2;
  expect(points.every(([, y]) => Math.abs(y - text.at[1]) > half)).toBe(true);
});

test('where only one fits it is the arrow, and the name where not even that does', () => {
  expect(kinds(label(rectangle(0, 0, 1, 1.6), request))).toEqual(['arrow']);
  expect(kinds(label(rectangle(0, 0, 3, 0.95), { ...request, name: 'A1.2' }))).toEqual(['arrow']);
  expect(kinds(label(rectangle(0, 0, 3, 0.6), request))).toEqual([]);
});

test('a name that fits only upended is upended', () => {
  const [text] = label(rectangle(0, 0, 1.4, 5), { ...request, name: 'A1.2', arrow: null });
  expect(text).toMatchObject({ kind: 'text', turn: 90, at: [0.7, 2.5] });
});

test('what has no room for either carries neither', () => {
  expect(label(rectangle(0, 0, 0.3, 0.3), request)).toEqual([]);
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
  const at = placeBox(u, { width: textWidth('A1', 1), height: 1, turn: 0 })!;
  const inNotch = at[0] > 3 - 0.6 && at[0] < 6 + 0.6 && at[1] > 3 - 0.5;
  expect(inNotch).toBe(false);
});
