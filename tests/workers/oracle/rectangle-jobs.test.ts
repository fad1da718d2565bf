/** Small jobs of rectangles against every way to share them out among strips, tried one by one. */
import { expect, test } from 'vitest';
import { planned } from '../../outside/engine.ts';
import { layoutJob, leastCost, type RectangleJob, rectangleJob } from './rectangle-job.ts';

const JOBS = Array.from({ length: 160 }, (_, i) => ({ seed: i + 1, job: rectangleJob(i + 1) }));

const FEATURES: readonly (readonly [string, (job: RectangleJob) => boolean])[] = [
  ['as drawn, by length', (job) => !job.quarterTurns && job.bolt.step === undefined && !job.other],
  ['quarter turns, by length', (job) => job.quarterTurns && job.bolt.step === undefined && !job.other],
  ['in whole steps', (job) => job.bolt.step !== undefined && !job.other],
  ['with a free piece', (job) => job.other?.is === 'piece'],
  ['from two bolts', (job) => job.other?.is === 'bolt'],
];

test.each(FEATURES)(
  '%s: the plan costs the least there is when it says so, and no bound is above that',
  async (_, has) => {
    const jobs = JOBS.filter(({ job }) => has(job));
    expect(jobs.length).toBeGreaterThan(15);
    expect(jobs.some(({ job }) => job.ruler !== undefined)).toBe(true);
    for (const { seed, job } of jobs) {
      const least = leastCost(job);
      const answer = await planned(layoutJob(job));
      expect([seed, answer.bound]).toEqual([seed, expect.any(Number)]);
      expect(answer.bound, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
      expect(answer.cost, `seed ${seed}`).toBeGreaterThanOrEqual(least - 1e-6);
      if (answer.status === 'optimal') expect(answer.cost, `seed ${seed}`).toBeCloseTo(least, 6);
    }
  },
);

test('with two bolts, or a bolt and a piece, the least cost is not only reached but proved', async () => {
  for (const { seed, job } of JOBS.filter((each) => each.job.other).slice(0, 40)) {
    const answer = await planned({ ...layoutJob(job), seconds: 20 });
    expect([seed, answer.status, answer.cost]).toEqual([seed, 'optimal', expect.closeTo(leastCost(job), 6)]);
  }
});

test('every feature is drawn, and every job has one', () => {
  expect(JOBS.every(({ job }) => FEATURES.some(([, has]) => has(job)))).toBe(true);
});
