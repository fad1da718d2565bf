/** Small jobs of rectangles in three stages against every way to share them out among strips, segments and stacks. */
import { expect, test } from 'vitest';
import { planned } from '../../outside/engine.ts';
import { layoutJob, leastCost, type RectangleJob } from './rectangle-job.ts';
import { fewRectangles, lowestStacked } from './stacked-boxes.ts';

const JOBS = Array.from({ length: 60 }, (_, i) => ({ seed: i + 1, job: fewRectangles(i + 1) }));

const FEATURES: readonly (readonly [string, (job: RectangleJob) => boolean])[] = [
  ['by length', (job) => job.bolt.step === undefined && !job.other],
  ['in whole steps', (job) => job.bolt.step !== undefined && !job.other],
  ['with a free piece', (job) => job.other?.is === 'piece'],
  ['from two bolts', (job) => job.other?.is === 'bolt'],
];

test.each(FEATURES)(
  'stacks, %s: nothing costs less than every way tried, no bound is above that, and two stages never cost less',
  async (_, has) => {
    const jobs = JOBS.filter(({ job }) => has(job));
    expect(jobs.length).toBeGreaterThan(5);
    let saved = 0;
    let met = 0;
    for (const { seed, job } of jobs) {
      const least = leastCost(job, lowestStacked);
      const inRows = leastCost(job);
      const answer = await planned({ ...layoutJob(job), stages: 3, seconds: 0.6 });
      expect(answer.bound, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
      expect(answer.cost, `seed ${seed}`).toBeGreaterThanOrEqual(least - 1e-6);
      expect(answer.cost, `seed ${seed}`).toBeLessThanOrEqual(answer.twoStageCost! + 1e-6);
      expect(answer.twoStageCost, `seed ${seed}`).toBeGreaterThanOrEqual(inRows - 1e-6);
      if (answer.status === 'optimal') expect(answer.cost, `seed ${seed}`).toBeCloseTo(least, 6);
      if (answer.cost <= least + 1e-6) met++;
      if (least < inRows - 1e-6) saved++;
    }
    expect(saved).toBeGreaterThan(0);
    expect(met / jobs.length).toBeGreaterThan(0.6);
  },
);
