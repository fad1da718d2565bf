import { describe, expect, test } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { leastTaken, type WillItDo, willThisDo } from '../../src/plan/will-this-do.ts';
import type { Cloth, Length, Quilt } from '../../src/quilt/quilt.ts';
import { turnPolygon } from '../../src/shape/polygon.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { blockOf, clothOf, oblong, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

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
const ask = (quilt: Quilt, have: Length) => willThisDo(quilt, quilt.cloths[0]!.id, have, plan);

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
    const found = await willThisDo(quilt, 'solid', 4.5, plan, (each) => told.push(each));
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

test('what cannot be asked is told', async () => {
  const quilt = squares(2, {});
  await expect(willThisDo(quilt, 'silk', 9, plan)).rejects.toThrow('no cloth “silk”; its cloths are “solid”');
  await expect(willThisDo(quilt, 'solid', 0, plan)).rejects.toThrow('must be above zero; found 0');
  const unused: Quilt = { ...quilt, cloths: [...quilt.cloths, clothOf('check')] };
  await expect(willThisDo(unused, 'check', 9, plan)).rejects.toThrow('Nothing is cut from the cloth “check”');
});
