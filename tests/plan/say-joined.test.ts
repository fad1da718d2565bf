import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { sayAllJoined } from '../../src/plan/say-joined.ts';
import { formatLength } from '../../src/quilt/format-length.ts';
import type { Cloth, JoinedLength } from '../../src/quilt/quilt.ts';
import { clothOf, quiltOf } from '../cutting/sample-quilt.ts';

function said(
  width: number,
  joined: Omit<JoinedLength, 'id' | 'name' | 'role'>,
  print: Cloth['print'] = 'solid',
): string {
  const quilt = quiltOf([], { to: 'upright' }, clothOf(print, { width }), {
    blocks: [],
    joined: [{ id: 'j', name: 'Edge', role: 'r', ...joined }],
  });
  const [[name, words] = ['', '']] = sayAllJoined(quilt, makeCutList(quilt), (length) => formatLength(length, 'in'));
  expect(name).toBe('Edge');
  return words;
}

test('binding for 50 by 60 in is six strips with five joins', () => {
  // castillejacotton.blogspot.com/2013/06, read: 40 usable, 2 in lost a join, 6 strips; 2 1/2 in wide is practice.
  expect(said(40, { length: 220, width: 2.5, join: 2 })).toBe(
    '6 strips of 40 in, 2 1/2 in wide, across the cloth; joined end to end, 5 joins, 2 in lost at each, they reach 230 in of the 220 in wanted.',
  );
});

test('a shorter last piece is told apart, and reaches just as far as wanted', () => {
  // Five strips of 40 in and one of 30, five joins of 2 in (derived).
  expect(said(40, { length: 220, width: 2.5, join: 2, shortest: 12 })).toBe(
    '5 strips of 40 in and a last one of 30 in, 2 1/2 in wide, across the cloth; joined end to end, 5 joins, 2 in lost at each, they reach 220 in of the 220 in wanted.',
  );
});

test('pieces longer than the cloth is wide run along it, and one alone needs no join', () => {
  expect(said(40, { length: 60, width: 3, join: 0.5, shortest: 60 })).toBe(
    '1 strip of 60 in, 3 in wide, along the cloth; without a join it reaches 60 in of the 60 in wanted.',
  );
});

test('a backing of 80 by 56 in is two panels of the whole width', () => {
  // quiltingboard.com t290638, read: 40 usable, 2 widths, 112 in.
  expect(said(40, { kind: 'panels', length: 56, width: 80, join: 0 })).toBe(
    '2 panels 40 in wide and 56 in long, running up the quilt; joined side by side, 1 seam, they cover 80 in by 56 in of the 80 in by 56 in wanted.',
  );
});

test('panels run across the quilt where that buys less, unless the print must stand upright', () => {
  // 62 by 76 in with 4 in all round is 70 by 84: two panels of 70 in across, of 42 in less the seam each (derived).
  const joined = { kind: 'panels', length: 76, width: 62, join: 0, overhang: 4 } as const;
  expect(said(42, joined)).toMatch(/^2 panels 42 in wide and 70 in long, running across the quilt; .* 84 in by 70 in/);
  expect(said(42, joined, 'one-way')).toMatch(
    /^1 panel 42 in wide and 84 in long and a narrower one of 28 in, running up/,
  );
});
