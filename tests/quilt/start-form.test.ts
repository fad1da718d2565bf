import { expect, test } from 'vitest';
import { FORMS, type Form } from '../../src/quilt/forms/forms.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { startForm } from '../../src/quilt/start-form.ts';
import { blockOf, clothOf, oblong, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

const withBlocks = (count: number, side = 10, more: Partial<Quilt> = {}): Quilt =>
  quiltOf([], { to: 'free' }, clothOf('solid'), {
    blocks: [blockOf([unitOf(oblong(0, 0, side, side), { count: 1 })], { count })],
    ...more,
  });

test('what goes round blocks begins with their side and number; blocks begin as ever', () => {
  expect(startForm('sashing', withBlocks(6))).toMatchObject({ block: 10, across: 3, down: 2 });
  expect(startForm('border', withBlocks(6))).toMatchObject({ across: 30, down: 20 });
  for (const { kind, start, frame } of FORMS.filter((spec) => spec.frame === undefined)) {
    expect(frame).toBeUndefined();
    expect(startForm(kind, withBlocks(6))).toEqual(start('in'));
  }
});

// Counted on a drawing: 1 by 1 holds 1, 1 by 2 holds 2, 2 by 2 holds 5, 2 by 3 holds 8, 3 by 3 holds 13.
test.each([
  [1, 1, 1],
  [2, 1, 2],
  [5, 2, 2],
  [6, 2, 3],
  [9, 3, 3],
])('%i blocks on their corners begin as %i by %i', (count, across, down) => {
  expect(startForm('setting-triangles', withBlocks(count))).toMatchObject({ block: 10, across, down });
});

test('a border goes round what frames the blocks already; with nothing to go round, all begin with usual numbers', () => {
  const sashing: Form = { kind: 'sashing', block: 10, width: 2, across: 3, down: 2 };
  const quilt = withBlocks(6);
  const framed = { ...quilt, blocks: [...quilt.blocks, { id: 's', name: 'Sashing', count: 1, form: sashing }] };
  expect(startForm('border', framed)).toMatchObject({ across: 38, down: 26 });
  for (const { kind, start } of FORMS) {
    expect(startForm(kind, { ...quilt, blocks: [] })).toEqual(start('in'));
    // Too many blocks for sashing, too large ones for a border: no form begins with numbers that the file would refuse.
    expect(startForm(kind, withBlocks(900, 300))).toEqual(start('in'));
  }
});
