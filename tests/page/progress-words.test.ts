import { expect, test } from 'vitest';
import type { GroupState, PlannerState } from '../../src/page/plan-state.ts';
import { answerWords, groupWords, overallWords, rollWords } from '../../src/page/progress-words.ts';
import type { Tally } from '../../src/plan/tally.ts';
import { answer } from './fake-packer.ts';

const group = (fields: Partial<GroupState>): GroupState => ({
  group: { id: 'a', cloths: ['a'], job: { method: 'strips', cloths: [], blanks: [] }, blanks: [], lengths: [] },
  status: 'planning',
  progress: null,
  since: 0,
  answer: null,
  error: null,
  ...fields,
});

const state = (fields: Partial<PlannerState>): PlannerState => ({
  quilt: null,
  cutList: null,
  groups: [],
  plan: null,
  current: true,
  busy: false,
  error: null,
  ...fields,
});

test('nearness is told as what the plan may cost at most above the least possible', () => {
  expect(answerWords(answer(10, 'optimal'))).toBe('least cost proved');
  expect(answerWords(answer(10, 'feasible', 8))).toBe('at most 25 % above the least possible');
  expect(answerWords(answer(10, 'feasible', 9.8))).toBe('at most 2.0 % above the least possible');
  expect(answerWords(answer(10, 'feasible', 0))).toBe('a plan, not yet proved');
  expect(answerWords(answer(10, 'partial'))).toBe('not everything can be placed');
});

test('while a group is planned, its time goes on even when its packer is silent, and a better bound is told at once', () => {
  expect(groupWords(group({ since: 1000 }), 4000)).toBe('starting, 3 s; no plan yet');
  const progress = { seconds: 1, doing: 'proving', bound: 9, answer: null };
  const words = groupWords(group({ progress, answer: answer(10, 'feasible', 5) }), 2000);
  expect(words).toBe('proving, 2 s; best at most 11 % above the least possible');
});

test('a purchase proved least is told at once, though the packer still tries to save cloth', () => {
  const progress = { seconds: 1, doing: 'choosing strips', bound: 10, answer: null };
  const words = groupWords(group({ progress, answer: answer(10, 'optimal') }), 3000);
  expect(words).toBe('least cost proved; trying to cut it from less cloth, 3 s');
});

test('a roll does not tick, and says when its purchase is proved though its length is not', () => {
  const planned = group({ status: 'planned', answer: answer(10, 'feasible', 8) });
  expect(rollWords(planned, 'least')).toBe('least purchase proved');
  expect(rollWords(planned, 'gap')).toBe('at most 25 % above the least possible');
  expect(rollWords(group({}), null)).toBe('being planned');
  expect(rollWords(group({ status: 'failed', error: 'out of memory' }), null)).toBe('planning failed: out of memory');
});

test('the whole is told in one sentence', () => {
  const groups = [group({ status: 'planned', answer: answer(1) }), group({})];
  expect(overallWords(state({ busy: true }))).toBe('Working out what must be cut.');
  expect(overallWords(state({ busy: true, groups }))).toBe('Planning: 1 of 2 done.');
  const proved = [...groups.slice(0, 1), group({ answer: answer(1) })];
  expect(overallWords(state({ busy: true, groups: proved }))).toBe('All proved least; saving cloth.');
  expect(overallWords(state({ groups: [group({ status: 'stopped' })] }))).toBe('Stopped: the best so far is shown.');
  expect(overallWords(state({ error: 'no' }))).toBe('This quilt cannot be planned as it is.');
  const partial = [group({ status: 'planned', answer: answer(1, 'partial') })];
  expect(overallWords(state({ groups: partial }))).toBe('Planned, but not everything can be cut.');
  const cloths = ['least', 'gap'].map((proof) => ({ proof: { state: proof } }));
  const plan = { tally: { cloths } as unknown as Tally } as PlannerState['plan'];
  const done = groups.slice(0, 1);
  expect(overallWords(state({ groups: done, plan }))).toBe('Planned; 1 of 2 purchases proved least.');
});
