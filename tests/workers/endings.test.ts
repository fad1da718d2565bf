/** However a plan ends: stopped at any moment, without time, with what cannot be cut, or with a fault in the solver. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { Packer } from '../../workers/packer.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { planned, rectangle } from '../outside/engine.ts';
import { boxJob } from './box-job.ts';
import { randomJob } from './fuzz/random-job.ts';
import { numbers } from './numbers.ts';
import { ringJob } from './ring-job.ts';

afterEach(() => vi.restoreAllMocks());

const ringsOnly = (seed: number, kinds: number, seconds: number): LayoutJob => {
  const { ruleOfThumb: _, ...job } = ringJob(seed, kinds);
  return { ...job, seconds };
};

/** A plan with the last that was told before its end. */
async function watched(job: LayoutJob, meanwhile: (packer: Packer) => void) {
  const packer = new Packer();
  let last: LayoutAnswer | null = null;
  const planning = packer.plan(job, ({ answer }) => {
    last = answer ?? last;
  });
  meanwhile(packer);
  const answer = await planning;
  return { answer, last: last as LayoutAnswer | null };
}

describe('stopped', () => {
  const draw = numbers(30);
  const moments = Array.from({ length: 30 }, (_, i) => [draw(0, 300), i] as const);

  test.each(moments)('%d ms after it began (%d): the best clean plan so far', async (ms, i) => {
    const job = i % 2 === 0 ? ringsOnly(i, 8, 100) : boxJob(i, 30, 12);
    const { answer, last } = await watched(job, (packer) => setTimeout(() => packer.stop(), ms));
    expect(checkAnswer(job, answer)).toEqual([]);
    expect(answer.unplaced).toEqual([]);
    expect(answer.cost).toBeLessThanOrEqual((last?.cost ?? Infinity) + 1e-6);
    expect(answer.bound).toBeLessThanOrEqual(answer.cost + 1e-6);
  });

  test('at its first word, and before it has said any', async () => {
    const job = ringsOnly(5, 8, 100);
    const packer = new Packer();
    const atOnce = await packer.plan(job, () => packer.stop());
    const { answer } = await watched(job, (other) => other.stop());
    for (const each of [atOnce, answer]) {
      expect(checkAnswer(job, each)).toEqual([]);
      expect(each.unplaced).toEqual([]);
    }
  });
});

test('out of time before the first strip is priced: whatever the job asks for, a clean plan all the same', async () => {
  for (let seed = 1; seed <= 30; seed++) {
    const job = { ...randomJob(seed), seconds: 0.001 };
    const answer = await new Packer().plan(job);
    expect([seed, ...checkAnswer(job, answer)]).toEqual([seed]);
    if (job.blanks.every((blank) => blank.demand === 0)) continue;
    expect(answer.layouts.length + answer.unplaced.length, `seed ${seed}`).toBeGreaterThan(0);
  }
  const many = { ...ringsOnly(3, 40, 0.001) };
  expect((await planned(many)).unplaced).toEqual([]);
});

test('a blank that no cloth can take is named with the reason, and the rest is planned', async () => {
  const job: LayoutJob = {
    method: 'strips',
    seconds: 5,
    cloths: [
      { id: 'bolt', width: 10 },
      { id: 'piece', width: 12, length: 3, cost: 0 },
    ],
    blanks: [
      { id: 'wide', outline: rectangle(13, 2), demand: 2 },
      { id: 'fits', outline: rectangle(5, 2), demand: 4 },
    ],
  };
  const answer = await planned(job);
  expect(answer).toMatchObject({ status: 'partial', bound: null });
  expect(answer.unplaced).toEqual([{ blank: 'wide', count: 2, why: expect.stringMatching(/\w+ .*\w/) }]);
  const cut = answer.layouts.flatMap((layout) => layout.placements.map(({ blank }) => [blank, layout.count] as const));
  expect(cut.filter(([blank]) => blank === 'fits').reduce((sum, [, count]) => sum + count, 0)).toBe(4);
});

test('a fault in the middle of a solve is told in its own words, and the clock of others is left as it was', async () => {
  const { now } = Date;
  const real = performance.now.bind(performance);
  // The solver asks for the time through `Date.now`, which is another's while it solves: that is the moment.
  vi.spyOn(performance, 'now').mockImplementation(() => {
    if (Date.now !== now) throw new Error('the solver broke');
    return real();
  });
  await expect(new Packer().plan(ringsOnly(5, 8, 5))).rejects.toThrow('the solver broke');
  expect(Date.now).toBe(now);
});
