/** Closing the gap by heights alone, from a poor plan and no bound, against the least cost found by trying every way. */
import { expect, test } from 'vitest';
import { mayCloseByHeights, plantHeights, workOnHeights } from '../../../workers/master/by-heights.ts';
import type { Gap } from '../../../workers/master/close-gap.ts';
import { firstPlan } from '../../../workers/master/first-plan.ts';
import { generate } from '../../../workers/master/generate.ts';
import { better, type Plan } from '../../../workers/master/plan.ts';
import { roundCost } from '../../../workers/master/round-cost.ts';
import { writeAnswer } from '../../../workers/master/write-answer.ts';
import { tellFault } from '../../../workers/proof/fault.ts';
import { proofread } from '../../../workers/proof/proofread.ts';
import { numbers } from '../numbers.ts';
import { cheapestPlan, layoutJob, type SlantedJob, slantedJob } from '../oracle/slanted-job.ts';
import { goOn, sampleMaster, solver } from './sample-master.ts';

/** Sold by the inch or in small steps, so that there is a gap to close. */
const JOBS = Array.from({ length: 90 }, (_, i) => i + 1)
  .map((seed) => ({ seed, small: { ...slantedJob(seed), ruler: 0.5, step: 0.5 + (seed % 3) } satisfies SlantedJob }))
  .filter(({ small }) => mayCloseByHeights(sampleMaster(layoutJob(small))));

async function closed(small: SlantedJob, seed: number) {
  const job = layoutJob(small);
  const master = sampleMaster(job);
  const draw = numbers(seed);
  const first = firstPlan(job, master.families, master.demand, false);
  for (const column of first.columns) master.addStrip(column);
  let best: Plan = first.plan;
  let bound = 0;
  const raiseCost = (cost: number) => {
    bound = Math.max(bound, cost);
  };
  const root = (await generate(master, [], goOn, { quick: true }))!;
  const gap: Gap = {
    master,
    solver,
    cuts: [],
    clock: { elapsed: () => 0, left: () => 1, breath: goOn },
    random: () => draw(0, 999) / 1000,
    provable: true,
    offer: (plan) => {
      if (plan && better(plan, best)) best = plan;
    },
    raise: (value) => raiseCost(roundCost(job, master.families, value, best.cost)),
    raiseCost,
    done: () => best.cost <= bound + 1e-6,
    best: () => best,
    bound: () => bound,
    root,
    say: () => {},
  };
  const heights = (await plantHeights(gap, root))!;
  for (let attempts = 2; attempts <= 32 && !gap.done(); attempts *= 2) await workOnHeights(gap, heights, attempts);
  return { job, best, bound, answer: writeAnswer(job, master.families, best, bound, 'heights', 0, []) };
}

test('no bound is above the least cost, no plan below it, and nearly always they meet', async () => {
  expect(JOBS.length).toBeGreaterThan(40);
  let proved = 0;
  for (const { seed, small } of JOBS) {
    const least = cheapestPlan(small, 'listed').cost;
    const { job, best, bound, answer } = await closed(small, seed);
    expect(bound, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
    expect(best.cost, `seed ${seed}`).toBeGreaterThanOrEqual(least - 1e-6);
    expect([seed, ...proofread(job, answer).map(tellFault)]).toEqual([seed]);
    if (best.cost <= bound + 1e-6) proved++;
  }
  expect(proved).toBeGreaterThan(0.9 * JOBS.length);
});
