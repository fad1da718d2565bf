import { describe, expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { type Planned, sideBySide } from '../../src/plan/side-by-side.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { clothOf, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

/** Twenty trapeziums with parallel sides 1 and 3 and height 2, no allowance, wide side out, on cloth 41 in wide. */
function trapeziums(print: 'one-way' | 'solid'): Quilt {
  const unit = unitOf(
    [
      [-0.5, 6],
      [0.5, 6],
      [1.5, 8],
      [-1.5, 8],
    ],
    { count: 20 },
  );
  const cloth = clothOf(print, { width: 41, step: 2, price: { amount: 18, per: 'yd', currency: '$' } });
  return quiltOf([unit], { to: 'outward' }, cloth, { allowance: 0, room: 0 });
}

const plan = (job: LayoutJob) => new Packer().plan({ ...job, seconds: 5 });

async function planned(quilt: Quilt): Promise<Planned> {
  const cutList = makeCutList(quilt);
  return { quilt, cutList, answers: await Promise.all(cutList.groups.map(({ job }) => plan(job))) };
}

test('twenty wedges whose print faces outward buy twice what they buy head to tail', async () => {
  // 20 of (1, 3) take 60 in of a strip one way and 41 in head to tail: FACTS of facing, derived there and here:
  // n(a + b)/2 + (b − a)/2.
  const versions = await sideBySide(await planned(trapeziums('one-way')), { plan, cut: makeCutList, read: proofread });
  expect(versions.map(({ kind, tally }) => [kind, tally.cloths[0]!.buy])).toEqual([
    ['as wanted', expect.closeTo(4, 9)],
    ['facing ignored', expect.closeTo(2, 9)],
    ['no room', expect.closeTo(4, 9)],
    ['rule of thumb', expect.closeTo(4, 9)],
  ]);
  expect(versions[1]!.tally.price).toBeCloseTo(1, 9);
  for (const { cutList, answers } of versions) {
    cutList.groups.forEach(({ job }, i) => {
      expect(proofread(job, answers[i]!)).toEqual([]);
      expect(checkAnswer(job, answers[i]!)).toEqual([]);
    });
  }
});

describe('without planning', () => {
  const refuse = () => Promise.reject(new Error('there was no need to plan'));

  test('groups that a change leaves alone keep their answer', async () => {
    const wanted = await planned(trapeziums('solid'));
    const versions = await sideBySide(wanted, { plan: refuse, cut: makeCutList, read: proofread });
    expect(versions.slice(0, 3).map(({ answers }) => answers[0])).toEqual(Array(3).fill(wanted.answers[0]));
  });

  test('where the search finds nothing cheaper the plan as wanted stands, and only what that search proved is proved', async () => {
    const wanted = await planned(trapeziums('one-way'));
    expect(wanted.answers[0]!.status).toBe('optimal');
    const [before] = wanted.answers;
    const dear = (bound: number) => async (): Promise<LayoutAnswer> => ({
      ...before!,
      status: 'feasible',
      cost: 42,
      bound,
    });
    const beside = (bound: number) => sideBySide(wanted, { plan: dear(bound), cut: makeCutList, read: proofread });
    const [, ignored] = await beside(0.7);
    expect(ignored!.answers[0]).toMatchObject({ layouts: wanted.answers[0]!.layouts, bound: 0.7, status: 'feasible' });
    expect(ignored!.tally).toMatchObject({ provedLeast: false, cloths: [{ proof: { state: 'gap', atLeast: 1 } }] });
    expect(proofread(ignored!.cutList.groups[0]!.job, ignored!.answers[0]!)).toEqual([]);
    // Two steps of 2 in at 50 cents an inch: a search that proves as much leaves nothing open.
    const [, proved] = await beside(2);
    expect(proved!.tally).toMatchObject({ provedLeast: true, cloths: [{ proof: { state: 'least', atLeast: 2 } }] });
  });

  test('a rule of thumb that cannot be read as a plan is a fault', async () => {
    const wanted = await planned(trapeziums('solid'));
    await expect(sideBySide(wanted, { plan: refuse, cut: makeCutList, read: () => ['overlap'] })).rejects.toThrow(
      'refuses the rule of thumb: "overlap"',
    );
  });

  test('a cloth that cannot be bought has no rule of thumb', async () => {
    const quilt = trapeziums('solid');
    const { step: _, ...owned } = { ...quilt.cloths[0]!, pieces: [{ id: 'p', width: 41, length: 4 }] };
    const versions = await sideBySide(await planned({ ...quilt, cloths: [owned] }), {
      plan: refuse,
      cut: makeCutList,
      read: proofread,
    });
    expect(versions.map(({ answers }) => answers.length)).toEqual([1, 1, 1, 0]);
  });
});
