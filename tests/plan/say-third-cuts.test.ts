import { expect, test } from 'vitest';
import { makeTally } from '../../src/plan/make-tally.ts';
import { answerOf, blank, four, groupOf, linen, onBolt, quiltWith } from './sample-cloth.ts';

const group = onBolt([blank('A1', 5, 3)]);
const stacked = { ...group, job: { ...group.job, stages: 3 as const } };

const toldOf = (own: typeof stacked | typeof group, twoStageCost?: number) =>
  makeTally(quiltWith(linen), { groups: [own], problems: [] }, [
    answerOf([four], twoStageCost === undefined ? {} : { twoStageCost }),
  ]).cloths[0]!.thirdCuts;

test('what stacks save is told in selling steps and in length', () => {
  expect(toldOf(stacked, 18)).toBe(
    'Cuts along stacks save 1 quarter yard (9 in) against the best plan found without them.',
  );
  expect(toldOf(stacked, 27)).toContain('save 2 quarter yards (18 in)');
});

test('that nothing is saved is told too', () => {
  expect(toldOf(stacked, 9)).toContain('save nothing to buy');
});

test('nothing is told in two stages, or where the plan without stacks places fewer blanks', () => {
  expect([toldOf(group, 18), toldOf(group), toldOf(stacked)]).toEqual([undefined, undefined, undefined]);
});

test('where several bolts serve, the saving is one on all of them together', () => {
  const satin = { ...linen, id: 'satin', name: 'Satin' };
  const both = groupOf(
    [blank('A1', 5, 3)],
    [
      { id: 'linen', cloth: 'linen', piece: null },
      { id: 'satin', cloth: 'satin', piece: null },
    ],
    [
      { id: 'linen', width: 40, step: 9, squaring: 1 },
      { id: 'satin', width: 40, step: 9, squaring: 1, cost: 2 },
    ],
  );
  const tally = makeTally(
    quiltWith(linen, satin),
    { groups: [{ ...both, job: { ...both.job, stages: 3 } }], problems: [] },
    [answerOf([four], { twoStageCost: 36 })],
  );
  expect(tally.cloths[0]!.thirdCuts).toContain('save 75 % of what these cloths cost together');
});
