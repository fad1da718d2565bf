import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { leastTaken, type WillItDo, willThisDo } from '../../src/plan/will-this-do.ts';
import type { Cloth, Length, Quilt, Role } from '../../src/quilt/quilt.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { turnPolygon } from '../../src/shape/polygon.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { blockOf, clothOf, oblong, patchOf, quiltOf, roleOf, unitOf } from '../cutting/sample-quilt.ts';

const plan = async (job: LayoutJob): Promise<LayoutAnswer> => {
  const answer = await new Packer().plan({ ...job, seconds: 5 });
  expect(proofread(job, answer)).toEqual([]);
  expect(checkAnswer(job, answer)).toEqual([]);
  return answer;
};

/** Blocks that are each one square of 4 in on paper: a blank of 5 in with 1/4 in of room, 4 3/4 with 1/8, 4 1/2 with none. */
function squares(count: number, cloth: Partial<Cloth>, more: Partial<Quilt> = {}): Quilt {
  const unit = unitOf(oblong(0, 0, 4, 4), { count: 1 }, { paper: true });
  return quiltOf([], { to: 'free' }, clothOf('solid', cloth), { blocks: [blockOf([unit], { count })], ...more });
}
const verdicts = ({ tries }: WillItDo) => tries.map(({ changes, verdict }) => [changes, verdict]);
const by = { plan, cut: makeCutList };
const ask = (quilt: Quilt, have: Length) => willThisDo({ quilt, cloth: quilt.cloths[0]!.id, have }, by);

describe('squares in one strip or two', () => {
  test('what is enough is enough as wanted, and nothing else is tried', async () => {
    const found = await ask(squares(10, { width: 45, price: { amount: 12, per: 'yd' } }), 10);
    expect(verdicts(found)).toEqual([[[], 'fits']]);
    expect(found.suffices).toMatchObject({ takes: 10, there: 10, tally: { price: null } });
  });

  test('less room brings ten into a strip of 45 in only where there is none', async () => {
    // Of 5 and of 4 3/4 in nine lie in a strip of 45 in, of 4 1/2 in ten (derived).
    const found = await ask(squares(10, { width: 45 }), 4.5);
    expect(verdicts(found)).toEqual([
      [[], 'short'],
      [[{ kind: 'room', room: '1/8 in' }], 'short'],
      [[{ kind: 'room', room: 0 }], 'fits'],
    ]);
    expect(found.suffices).toBe(found.tries[2]);
    expect(found.suffices!.tally.cloths[0]!.need).toBeCloseTo(4.5, 9);
  });

  test('the gentlest change that is enough is named', async () => {
    // Two strips of 4 3/4 in are 9 1/2 in.
    const found = await ask(squares(10, { width: 45 }), 9.5);
    expect(found.suffices!.changes).toEqual([{ kind: 'room', room: '1/8 in' }]);
  });

  test('one spare fewer', async () => {
    const found = await ask(squares(10, { width: 45 }, { room: 0, spares: 1 }), 4.5);
    expect(verdicts(found)).toEqual([
      [[], 'short'],
      [[{ kind: 'spares', spares: 0 }], 'fits'],
    ]);
  });

  test('where no change alone is enough all are tried together', async () => {
    // In 44.9 in lie eight of 5 in and nine of 4 3/4 or 4 1/2; nine are needed and a spare (derived).
    const found = await ask(squares(9, { width: 44.9 }, { spares: 1 }), 5);
    expect(verdicts(found)).toEqual([
      [[], 'short'],
      [[{ kind: 'room', room: '1/8 in' }], 'short'],
      [[{ kind: 'room', room: 0 }], 'short'],
      [[{ kind: 'spares', spares: 0 }], 'short'],
      [
        [
          { kind: 'room', room: '1/8 in' },
          { kind: 'spares', spares: 0 },
        ],
        'fits',
      ],
      [
        [
          { kind: 'room', room: 0 },
          { kind: 'spares', spares: 0 },
        ],
        'fits',
      ],
    ]);
    expect(found.suffices).toBe(found.tries[4]);
  });

  test('a plan serves for what asks less, and not for what asks more', async () => {
    const { tries } = await ask(squares(9, { width: 44.9 }, { spares: 1 }), 5);
    const [wanted, eighth, none, spare, both] = tries.map((each, i) => ({ ...each, takes: 100 - i }));
    const all = [wanted!, eighth!, none!, spare!, both!];
    // Room of 1/8 in serves for none; neither of the rooms serves for a spare fewer alone; either change for both.
    expect(all.map((each) => leastTaken(all, each))).toEqual([100, 99, 98, 97, 96]);
    const reversed = all.map((each, i) => ({ ...each, takes: 1 + i }));
    expect(reversed.map((each) => leastTaken(reversed, each))).toEqual([1, 1, 1, 1, 1]);
    const roomOnly = [
      { ...none!, takes: 1 },
      { ...eighth!, takes: 9 },
      { ...spare!, takes: 9 },
      { ...both!, takes: 9 },
    ];
    expect(roomOnly.map((each) => leastTaken(roomOnly, each))).toEqual([1, 9, 9, 9]);
  });

  test('each plan is told as it comes', async () => {
    const told: unknown[] = [];
    const quilt = squares(10, { width: 45 });
    const found = await willThisDo({ quilt, cloth: 'solid', have: 4.5 }, by, { onTry: (each) => told.push(each) });
    expect(new Set(told)).toEqual(new Set(found.tries));
  });

  test('what is in hand shrinks when it is washed, and its end is squared', async () => {
    const quilt = squares(18, { width: 50, shrinkage: { along: 10, across: 10 } }, { room: 0, squaring: 1 });
    // 45 in are left of the width, ten to a strip: two strips and the squared end are 10 in, of 11 1/8 washed.
    const enough = await ask(quilt, 11.125);
    expect(enough.suffices).toMatchObject({ takes: 10, there: expect.closeTo(10.0125, 9) });
    expect((await ask(quilt, 11)).suffices).toBeNull();
  });
});

describe('facing', () => {
  /** Twenty rectangles of 2 by 8 in that lean by 5°, no allowance. */
  const leaning = (print: Cloth['print']): Quilt => {
    const rectangle = turnPolygon(
      [
        [9, 0],
        [11, 0],
        [11, 8],
        [9, 8],
      ],
      5,
    );
    const unit = unitOf(rectangle, { count: 1 });
    const cloth = clothOf(print, { width: 40 });
    return quiltOf([], { to: 'upright' }, cloth, { allowance: 0, room: 0, blocks: [blockOf([unit], { count: 20 })] });
  };

  test('within 8° lets what leans by 5° stand straight, so that twenty lie in one strip of 8 in', async () => {
    const found = await ask(leaning('one-way'), 8);
    expect(verdicts(found)).toEqual([
      [[], 'short'],
      [[{ kind: 'facing', within: 8 }], 'fits'],
    ]);
    // Leaning, each is more than 8 in high (8 cos 5° + 2 sin 5° = 8.14), so no strip of 8 in holds one (derived).
    expect(found.tries[0]!.takes).toBeGreaterThan(8);
  });

  test('a print without direction has none to let go', async () => {
    const found = await ask(leaning('tossed'), 7);
    expect(found.tries.flatMap(({ changes }) => changes)).toEqual([]);
  });
});

test('of a cloth that another may stand in for, what is in hand serves first and the rest is bought', async () => {
  // Ten of 4 1/2 in fill a strip of the one, ten more take a strip of the other.
  const quilt = squares(20, { width: 45, step: 9 }, { room: 0 });
  const other = clothOf('tossed', { width: 45, step: 4.5 });
  const both: Quilt = {
    ...quilt,
    cloths: [quilt.cloths[0]!, other],
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: ['solid', 'tossed'] } }],
  };
  const found = await ask(both, 4.5);
  expect(found.suffices).toMatchObject({ changes: [], takes: 4.5, there: 4.5 });
  expect(found.suffices!.tally.cloths.map(({ cloth, buy }) => [cloth, buy])).toEqual([
    ['solid', 0],
    ['tossed', 4.5],
  ]);
});

describe('another cloth', () => {
  /** A large square and a small one, each its own role, both of one cloth; two others stand by, one of a like colour. */
  function twoRoles(): Quilt {
    const large = unitOf(oblong(0, 0, 8.5, 8.5), { count: 1 });
    const small = unitOf(
      oblong(0, 0, 2, 2),
      { count: 1 },
      { id: 'B', patches: [patchOf(1, oblong(9, 0, 2, 2), { role: 's' })] },
    );
    return quiltOf(
      [],
      { to: 'free' },
      clothOf('solid', { width: 45, colour: '#203040', price: { amount: 12, per: 'yd' } }),
      {
        blocks: [blockOf([large, small], { count: 5 })],
        roles: [roleOf('r'), roleOf('s')],
        cloths: [
          clothOf('solid', { width: 45, colour: '#203040', price: { amount: 12, per: 'yd' } }),
          clothOf('tossed', { width: 45, step: 4.5, colour: '#f0e0c0', price: { amount: 8, per: 'yd' } }),
          clothOf('check', { width: 45, step: 4.5, colour: '#203a50', price: { amount: 16, per: 'yd' } }),
        ],
        schemes: [{ id: 's', name: 'Dawn', cloths: { r: 'solid', s: 'solid' } }],
      },
    );
  }

  test('takes one role, the likest first, and it is told what it costs', async () => {
    // Five of 9 in fill a strip of 45 in; the five of 2 1/2 in need one more (derived).
    const found = await ask(twoRoles(), 9);
    expect(found.tries[0]!.verdict).toBe('short');
    const fitting = found.tries.filter(({ verdict }) => verdict === 'fits').map(({ changes }) => changes);
    expect(fitting).toContainEqual([{ kind: 'cloth', role: 's', cloth: 'check', beside: false }]);
    expect(fitting[0]).toEqual([{ kind: 'cloth', role: 'r', cloth: 'check', beside: false }]);
    const small = found.tries.find(({ changes: [change] }) => change?.kind === 'cloth' && change.role === 's')!;
    // 4 1/2 in of check at $16 a yard.
    expect(small.tally.cloths.map(({ cloth, price }) => [cloth, price])).toEqual([
      ['solid', null],
      ['check', 2],
    ]);
    expect([small.takes, small.answers.length]).toEqual([9, 2]);
  });

  test('a cloth that has nothing to cut it from, or would leave a patch out, is not tried', async () => {
    const quilt = twoRoles();
    const { step: _, ...bare } = quilt.cloths[1]!;
    const narrow = { ...quilt.cloths[2]!, width: 8 };
    const found = await ask({ ...quilt, cloths: [quilt.cloths[0]!, bare, narrow] }, 9);
    expect(found.tries.flatMap(({ changes }) => changes).filter(({ kind }) => kind === 'cloth')).toEqual([
      { kind: 'cloth', role: 's', cloth: 'check', beside: false },
    ]);
  });

  test('of a single role it serves beside, or instead, and then nothing of what is in hand is needed', async () => {
    const quilt: Quilt = { ...squares(20, { width: 45 }, { room: 0 }) };
    const other = clothOf('tossed', { width: 45, step: 4.5 });
    const found = await ask({ ...quilt, cloths: [...quilt.cloths, other] }, 4.5);
    expect(found.tries.map(({ changes, verdict, takes }) => [changes, verdict, takes])).toEqual([
      [[], 'short', 9],
      [[{ kind: 'cloth', role: 'r', cloth: 'tossed', beside: true }], 'fits', 4.5],
      [[{ kind: 'cloth', role: 'r', cloth: 'tossed', beside: false }], 'fits', 0],
    ]);
  });
});

test('a cloth beside the one in hand that leaves it unused says nothing of its own', async () => {
  // One strip of 9 in of the other serves for both rows; beside it the 4 in in hand hold no square of 4 1/2.
  const quilt: Quilt = { ...squares(20, { width: 45 }, { room: 0 }) };
  const other = clothOf('tossed', { width: 45, step: 9 });
  const moot: unknown[] = [];
  const question = { quilt: { ...quilt, cloths: [...quilt.cloths, other] }, cloth: 'solid', have: 4 };
  const found = await willThisDo(question, by, { onMoot: (changes) => moot.push(changes) });
  const cloth = { kind: 'cloth', role: 'r', cloth: 'tossed' };
  expect(found.tries.map(({ changes }) => changes)).toEqual([[], [{ ...cloth, beside: false }]]);
  expect(moot).toEqual([[{ ...cloth, beside: true }]]);
});

test('where neither less nor another cloth for one role is enough alone, both together are tried', async () => {
  // Ten of 4 1/2 in fill a strip of 45 in, of 5 in nine; the other role takes as much again (derived).
  const square = (id: string, role: string) =>
    unitOf(oblong(0, 0, 4, 4), { count: 1 }, { id, paper: true, patches: [patchOf(1, oblong(0, 0, 4, 4), { role })] });
  const quilt = quiltOf([], { to: 'free' }, clothOf('solid', { width: 45 }), {
    blocks: [blockOf([square('A', 'r'), square('B', 's')], { count: 10 })],
    roles: [roleOf('r'), roleOf('s')],
    cloths: [clothOf('solid', { width: 45 }), clothOf('tossed', { width: 45 })],
    schemes: [{ id: 's', name: 'Dawn', cloths: { r: 'solid', s: 'solid' } }],
  });
  const { suffices, tries } = await ask(quilt, 4.5);
  const fitting = tries
    .filter(({ verdict }) => verdict === 'fits')
    .map(({ changes }) => changes.map(({ kind }) => kind));
  expect(fitting).toEqual([
    ['room', 'cloth'],
    ['room', 'cloth'],
  ]);
  expect(suffices!.tally.cloths.map(({ cloth }) => cloth)).toEqual(['solid', 'tossed']);
});

test('patches that are hardly seen lie any way only where she said that they are', async () => {
  // Twenty of (1, 3), one way 60 in of a strip, head to tail 41 (FACTS of facing: derived).
  const trapezium = (more: Partial<Role>) => {
    const outline: Polygon = [
      [-0.5, 6],
      [0.5, 6],
      [1.5, 8],
      [-1.5, 8],
    ];
    const quilt = quiltOf([unitOf(outline, { count: 20 })], { to: 'outward' }, clothOf('one-way', { width: 41 }));
    return { ...quilt, allowance: 0, room: 0, roles: [roleOf('r', { to: 'outward' }, more)] };
  };
  expect((await ask(trapezium({}), 2)).suffices).toBeNull();
  expect((await ask(trapezium({ hidden: true }), 2)).suffices).toMatchObject({
    changes: [{ kind: 'hidden' }],
    takes: 2,
  });
});

test('of three things none alone or with one other is enough; all that is needed is given up, and no more', async () => {
  // In 40.4 in lie eight of 5 in or 4 3/4, and eight of 4 1/2: nothing but the spare and the room together make one strip of
  // nine short of it, so the rest is not asked for (derived).
  const quilt = squares(8, { width: 38.5, print: 'one-way' }, { spares: 1, roles: [roleOf('r', { to: 'upright' })] });
  const found = await ask(quilt, 4.75);
  expect(found.suffices!.changes).toEqual([
    { kind: 'room', room: '1/8 in' },
    { kind: 'spares', spares: 0 },
  ]);
  expect(found.tries.every(({ changes, verdict }) => verdict !== 'fits' || changes.length > 1)).toBe(true);
});

test('what cannot be asked is told', async () => {
  const quilt = squares(2, {});
  await expect(willThisDo({ quilt, cloth: 'silk', have: 9 }, by)).rejects.toThrow(
    'no cloth “silk”; its cloths are “solid”',
  );
  await expect(willThisDo({ quilt, cloth: 'solid', have: 0 }, by)).rejects.toThrow('must be above zero; found 0');
  const unused: Quilt = { ...quilt, cloths: [...quilt.cloths, clothOf('check')] };
  await expect(willThisDo({ quilt: unused, cloth: 'check', have: 9 }, by)).rejects.toThrow(
    'Nothing is cut from the cloth “check”',
  );
});
