import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { Form } from '../../src/quilt/forms/forms.ts';
import { lengthIn } from '../../src/quilt/measure.ts';
import type { Block, JoinedLength, Quilt } from '../../src/quilt/quilt.ts';
import { followed, quiltSize } from '../../src/quilt/quilt-size.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';
import { blockOf, clothOf, oblong, quiltOf, roleOf, unitOf } from '../cutting/sample-quilt.ts';

const square = blockOf([unitOf(oblong(0, 0, 10, 10), { count: 1 })], { count: 6 });
const frame = (form: Form): Block => ({ id: form.kind, name: form.kind, count: 1, form });
const strips = (
  follows: 'binding' | 'border' | 'sashing',
  id: string = follows,
  more: Partial<JoinedLength> = {},
): JoinedLength => ({
  id,
  name: id,
  role: 'r',
  follows,
  length: 1,
  width: '2 1/2 in',
  join: 0.5,
  ...more,
});
const backing: JoinedLength = {
  id: 'back',
  name: 'Back',
  role: 'r',
  kind: 'panels',
  follows: 'backing',
  length: 1,
  width: 1,
  join: 1,
  overhang: 4,
};

/** Six blocks of 10 in, allowance 1/4 in: three abreast and two rows. */
const sample = (joined: readonly JoinedLength[], more: Partial<Quilt> = {}): Quilt =>
  quiltOf([], { to: 'free' }, clothOf('solid'), {
    blocks: [square],
    joined,
    roles: ['r', 'setting', 'sash', 'post', 'border'].map((id) => roleOf(id)),
    ...more,
  });

const inches = (quilt: Quilt, id: string): number =>
  lengthIn('in', followed(quilt, quilt.joined.find((each) => each.id === id)!).length);

describe('the quilt’s size', () => {
  test('is that of the blocks side by side, with sashing between and borders round them', () => {
    expect(quiltSize(sample([]))).toEqual({ width: 30, length: 20 });
    // Strips 2 1/2 in wide are 2 in finished: two columns and one row of sashing, then a border on all sides.
    expect(quiltSize(sample([strips('sashing')]))).toEqual({ width: 34, length: 22 });
    expect(quiltSize(sample([strips('sashing'), strips('border')]))).toEqual({ width: 38, length: 26 });
  });

  test('is that of what frames the blocks, where something does', () => {
    const set = sample([], { blocks: [square, frame({ kind: 'setting-triangles', block: 10, across: 2, down: 3 })] });
    expect(quiltSize(set).width).toBeCloseTo(20 * Math.SQRT2, 9);
    expect(quiltSize(set).length).toBeCloseTo(30 * Math.SQRT2, 9);
    const bordered = sample([], { blocks: [square, frame({ kind: 'border', across: 30, down: 20, width: 3 })] });
    expect(quiltSize(bordered)).toEqual({ width: 36, length: 26 });
  });

  test('is what she says it is', () => {
    expect(quiltSize(sample([strips('border')], { finished: { width: '60 in', length: '2 m' } }))).toEqual({
      width: 60,
      length: 200 / 2.54,
    });
  });
});

describe('what follows it', () => {
  // castillejacotton.blogspot.com/2013/06: binding for 50 by 60, 40 usable, 2 in lost a join: 6 strips. With 10 in over.
  test('binding goes once round, with ten inches over, and takes the strips published', () => {
    const cloth = clothOf('solid', { width: 40 });
    const quilt = sample([strips('binding', 'b', { join: 2 })], {
      finished: { width: 50, length: 60 },
      cloths: [cloth],
      blocks: [],
    });
    expect(inches(quilt, 'b')).toBe(230);
    const { groups, problems } = makeCutList(quilt);
    expect(problems).toEqual([]);
    expect(groups[0]!.blanks.map(({ demand }) => demand)).toEqual([6]);
  });

  // quiltingboard.com t290638: backing 80 by 56, 40 usable: 2 widths, 112 in.
  test('a backing is as large as the quilt, and takes the widths published', () => {
    const quilt = sample([{ ...backing, overhang: 0, join: 0 }], {
      finished: { width: 80, length: 56 },
      cloths: [clothOf('solid', { width: 40 })],
      blocks: [],
    });
    const blanks = makeCutList(quilt).groups[0]!.blanks;
    expect(blanks.map(({ demand, shapes }) => [demand, shapes[0]!.outline[2]])).toEqual([[2, [40, 56]]]);
  });

  test('borders go on in their order, each round the one before', () => {
    const quilt = sample([
      strips('border', 'first'),
      strips('border', 'second', { width: '4 1/2 in' }),
      strips('binding'),
    ]);
    // Round 30 by 20 with corners of 2: 100 + 8; round 34 by 24 with corners of 4: 116 + 16; round 42 by 32: 148.
    expect(['first', 'second', 'binding'].map((id) => inches(quilt, id))).toEqual([118, 142, 158]);
    expect(quiltSize(quilt)).toEqual({ width: 42, length: 32 });
    const told = { ...quilt, finished: { width: 42, length: 32 } };
    expect(['first', 'second', 'binding'].map((id) => inches(told, id))).toEqual([118, 142, 158]);
  });

  test('sashing that a drawn one leaves out is as long as its strips together', () => {
    const drawn = frame({
      kind: 'sashing',
      block: 10,
      width: 2,
      across: 3,
      down: 2,
      crossing: 'joined',
      outside: false,
    });
    // One strip between two rows, 34 in finished and its allowances: 34 1/2, up.
    expect(inches(sample([strips('sashing')], { blocks: [square, drawn] }), 'sashing')).toBe(35);
  });

  test('all of it is kept in the file, and told where it contradicts itself', () => {
    const quilt = sample([strips('binding'), backing], { finished: { width: 60, length: '80 in' } });
    expect(readQuilt(writeQuilt(quilt))).toEqual(quilt);
    const wrong = sample([{ ...strips('binding'), kind: 'panels' }]);
    expect(() => readQuilt(writeQuilt(wrong))).toThrow(
      /joined\[0\]\.follows: expected "backing" for panels alone; found "binding"/,
    );
  });
});
