import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { addJoined, giveOwnRole, JOINED_SORTS, removeJoined, setJoined } from '../../src/page/joined-edits.ts';
import { lengthIn } from '../../src/quilt/measure.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';
import { blockOf, clothOf, oblong, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

/** Six blocks of 10 in: three abreast and two rows, 30 by 20 in. */
function sample(more: Partial<Quilt> = {}): Quilt {
  const unit = unitOf(oblong(0, 0, 10, 10), { count: 1 });
  return quiltOf([], { to: 'free' }, clothOf('solid'), {
    blocks: [blockOf([unit], { count: 6 })],
    cloths: [clothOf('solid'), clothOf('check')],
    schemes: [
      { id: 's', name: 'Dawn', cloths: { r: 'solid' } },
      { id: 't', name: 'Dusk', cloths: { r: 'check' } },
    ],
    ...more,
  });
}

const sound = (quilt: Quilt): Quilt => readQuilt(writeQuilt(quilt));

test.each(JOINED_SORTS)('an added %s makes a sound quilt, has a cloth in every scheme, and is planned', (sort) => {
  const quilt = sound(addJoined(sort, 'edge', 'check')(sample()));
  expect(quilt.schemes.map(({ cloths }) => cloths.edge)).toEqual(['check', 'check']);
  expect(quilt.joined).toMatchObject([{ id: 'edge', name: sort, role: 'edge' }]);
  const { groups, problems } = makeCutList(quilt);
  expect(problems).toEqual([]);
  expect(groups.flatMap(({ blanks }) => blanks).filter(({ joined }) => joined === 'edge').length).toBeGreaterThan(0);
});

test('it begins with the size of the blocks laid side by side', () => {
  const added = (sort: (typeof JOINED_SORTS)[number]) => addJoined(sort, 'edge', 'solid')(sample()).joined[0]!;
  const inches = (length: string | number) => lengthIn('in', length);
  expect(inches(added('Binding').length)).toBe(110);
  // Four short strips of 10 1/2 in cut, and one of 30 in, two finished widths of 2 in, and its allowances: 76 1/2, up.
  expect(inches(added('Sashing').length)).toBe(77);
  expect([inches(added('Backing').width), inches(added('Backing').length)]).toEqual([30, 20]);
});

test('taking it out leaves the quilt as it was', () => {
  const quilt = sample();
  expect(removeJoined('edge')(addJoined('Backing', 'edge', 'solid')(quilt))).toEqual(quilt);
});

test('a role that patches have too stays when the joined length goes', () => {
  const shared = sample({ joined: [{ id: 'edge', name: 'Edge', role: 'r', length: 90, width: 2, join: 1 }] });
  expect(removeJoined('edge')(shared)).toEqual(sample());
  const own = sound(giveOwnRole('edge')(shared));
  expect(own.joined[0]!.role).toBe('edge');
  expect(own.schemes.map(({ cloths }) => cloths.edge)).toEqual(['solid', 'check']);
  expect(removeJoined('edge')(own)).toEqual(sample());
});

test('two of a sort have names and roles of their own', () => {
  const quilt = addJoined('Border', 'b2', 'solid')(addJoined('Border', 'r', 'solid')(sample()));
  expect(quilt.joined.map(({ name, role }) => [name, role])).toEqual([
    ['Border', 'r 2'],
    ['Border 2', 'b2'],
  ]);
});

test('a field is set, and taken out again', () => {
  const quilt = addJoined('Binding', 'edge', 'solid')(sample());
  const set = setJoined('edge', { shortest: '12 in' })(quilt);
  expect(set.joined[0]!.shortest).toBe('12 in');
  expect(setJoined('edge', { shortest: undefined })(set)).toEqual(quilt);
});
