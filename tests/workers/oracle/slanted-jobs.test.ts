/** Small jobs of slanted blanks against every way of cutting them, tried one by one without any of the engine's code. */
import { describe, expect, test } from 'vitest';
import { tellFault } from '../../../workers/proof/fault.ts';
import { proofread } from '../../../workers/proof/proofread.ts';
import { checkAnswer } from '../../checker/check-answer.ts';
import { planned } from '../../outside/engine.ts';
import { cheapestPlan, cheapestStacked, layoutJob, slantedJob } from './slanted-job.ts';

/** Seconds; each is proved in less than two on a quiet machine. */
const PLENTY = 60;

const seeds = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe('up to three kinds and six blanks, cuts of listed slants', () => {
  test.each(seeds(1, 60))(
    'job %d: the plan costs what the best of all ways costs, and no bound is above that',
    async (seed) => {
      const small = slantedJob(seed);
      const job = layoutJob(small);
      const best = cheapestPlan(small, 'listed');
      // The best of all ways is itself a plan, so that a mistake in trying them would show.
      expect([...checkAnswer(job, best), ...proofread(job, best).map(tellFault)]).toEqual([]);
      const answer = await planned({ ...job, seconds: PLENTY });
      expect(answer.bound).toBeLessThanOrEqual(best.cost + 1e-6);
      expect([answer.status, answer.cost]).toEqual(['optimal', expect.closeTo(best.cost, 6)]);
    },
  );
});

describe('three blanks, cuts of any slant', () => {
  const few = seeds(1, 200).filter((seed) => slantedJob(seed).kinds.reduce((sum, kind) => sum + kind.demand, 0) <= 3);

  test('no plan is cheaper than the best of all ways, and both readers pass what the row programme lays', async () => {
    expect(few.length).toBeGreaterThan(20);
    for (const seed of few) {
      const small = slantedJob(seed);
      const job = layoutJob(small);
      const best = { parted: cheapestPlan(small, 'parted'), whole: cheapestPlan(small, 'whole') };
      for (const plan of [best.parted, best.whole]) {
        expect([seed, ...checkAnswer(job, plan), ...proofread(job, plan).map(tellFault)]).toEqual([seed]);
      }
      // Fewer rules, never a dearer plan.
      expect(best.parted.cost).toBeLessThanOrEqual(best.whole.cost + 1e-6);
      expect(best.whole.cost).toBeLessThanOrEqual(cheapestPlan(small, 'listed').cost + 1e-6);
      const answer = await planned(job);
      expect(answer.cost).toBeGreaterThanOrEqual(best.parted.cost - 1e-6);
    }
  });
});

describe('stacks beside slanted rows', () => {
  test('no plan is cheaper than the best of all ways, no bound is above it, and both readers pass that plan', async () => {
    const told = { met: 0, saved: 0, proved: 0 };
    for (const seed of seeds(1, 30)) {
      const small = slantedJob(seed);
      const job = { ...layoutJob(small), stages: 3 as const, seconds: 1 };
      const best = cheapestStacked(small);
      expect([seed, ...checkAnswer(job, best), ...proofread(job, best).map(tellFault)]).toEqual([seed]);
      const answer = await planned(job);
      expect(answer.bound, `seed ${seed}`).toBeLessThanOrEqual(best.cost + 1e-6);
      expect(answer.cost, `seed ${seed}`).toBeGreaterThanOrEqual(best.cost - 1e-6);
      if (answer.cost <= best.cost + 1e-6) told.met++;
      if (best.cost < answer.twoStageCost! - 1e-6) told.saved++;
      if (answer.status === 'optimal') told.proved++;
    }
    expect(told.met).toBeGreaterThan(20);
    expect(told.saved).toBeGreaterThan(0);
    expect(told.proved).toBeGreaterThan(5);
  });
});
