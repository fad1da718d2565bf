import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { knownPlans, takenOver } from '../../src/plan/take-over.ts';
import { willThisDo } from '../../src/plan/will-this-do.ts';
import type { Length, Quilt } from '../../src/quilt/quilt.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { blockOf, clothOf, oblong, quiltOf, ringWedge, unitOf } from '../cutting/sample-quilt.ts';

const by = { plan: (job: LayoutJob) => new Packer().plan({ ...job, seconds: 1 }), cut: makeCutList };

/** Squares of 4 in on paper, and a ring of wedges, of a cloth that shrinks and whose end is squared. */
function sample(): Quilt {
  const square = unitOf(oblong(0, 0, 4, 4), { count: 1 }, { paper: true });
  const wedge = unitOf(ringWedge(12, 5, 9), { count: 12 }, { paper: true, id: 'B' });
  const cloth = clothOf('solid', { width: 45, price: { amount: 12, per: 'yd' }, shrinkage: { along: 4, across: 2 } });
  return quiltOf([], { to: 'free' }, cloth, {
    squaring: 1,
    spares: 1,
    blocks: [blockOf([square, wedge], { count: 2 })],
  });
}

async function taken(quilt: Quilt, have: Length) {
  const { suffices } = await willThisDo({ quilt, cloth: 'solid', have }, by);
  const after = takenOver(quilt, 'solid', have, suffices!.changes);
  return { suffices: suffices!, after, cutList: makeCutList(after) };
}

test('a plan that fits becomes the plan of the quilt that took it over, read by both readers, with nothing to buy', async () => {
  const { suffices, after, cutList } = await taken(sample(), '3/4 yd');
  expect(after.cloths[0]).toMatchObject({ step: 9, price: { amount: 12 } });
  expect(after.cloths[0]!.pieces).toEqual([{ id: 'in hand', width: 45, length: '3/4 yd', washed: false }]);
  const [known] = knownPlans(cutList, suffices, 'solid');
  expect(known!.job).toBe(cutList.groups[0]!.job);
  expect(proofread(known!.job, known!.answer)).toEqual([]);
  expect(checkAnswer(known!.job, known!.answer)).toEqual([]);
  expect(known!.answer.cost).toBe(0);
  expect(known!.answer.layouts[0]).toMatchObject({
    cloth: 'solid/in hand',
    length: expect.closeTo(suffices.takes - 1, 9),
  });
});

test('what was given up is in the quilt, and nothing else is changed', async () => {
  const quilt = sample();
  const short = await willThisDo({ quilt, cloth: 'solid', have: '3/4 yd' }, by);
  let { suffices, after } = { ...short, suffices: short.suffices!, after: quilt };
  // Half an inch less each time, until something must be given up: a plan that fits need not be the shortest there is.
  for (let have = suffices.takes / 0.96; suffices.changes.length === 0 && have > 6; have -= 0.5)
    ({ suffices, after } = await taken(quilt, have));
  expect(suffices.changes).not.toEqual([]);
  const [change] = suffices.changes;
  expect(change!.kind === 'room' ? after.roles[0]!.room : after.roles[0]!.spares).toBeDefined();
  expect({ ...after, roles: quilt.roles, cloths: quilt.cloths }).toEqual(quilt);
});

test('asked again, what is in hand is told anew and not counted twice', async () => {
  const { after } = await taken(sample(), '3/4 yd');
  const again = takenOver(after, 'solid', '1/2 yd', []);
  expect(again.cloths[0]!.pieces).toEqual([{ id: 'in hand', width: 45, length: '1/2 yd', washed: false }]);
  const asked = await willThisDo({ quilt: after, cloth: 'solid', have: '3/4 yd' }, by);
  expect(asked.tries[0]!.cutList.groups[0]!.job.cloths).toHaveLength(1);
});

test('a plan for other blanks, or one that did not fit, is no plan for the quilt', async () => {
  const { suffices, cutList, after } = await taken(sample(), '3/4 yd');
  expect(knownPlans(cutList, { ...suffices, verdict: 'open' }, 'solid')).toEqual([]);
  expect(knownPlans(makeCutList({ ...after, allowance: '1 in' }), suffices, 'solid')).toEqual([]);
});
