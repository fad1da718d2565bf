/** Bolts whose strips run along them, against trying every way to cut them across, and against plain sums. */
import { describe, expect, test } from 'vitest';
import type { LayoutJob } from '../../../src/plan/layout-job.ts';
import { barBound } from '../../../workers/master/bar-bound.ts';
import { planned, rectangle } from '../../outside/engine.ts';
import { layoutJob, leastCost, rectangleJob } from '../oracle/rectangle-job.ts';
import { goOn, sampleMaster, solver } from './sample-master.ts';

const JOBS = Array.from({ length: 60 }, (_, i) => ({ seed: i + 1, job: rectangleJob(i + 1) })).filter(
  ({ seed, job }) => seed <= 16 && !job.other,
);

const ribbons = (firstCut: 'along' | 'either', width: number, length: number, demand: number): LayoutJob => ({
  method: 'strips',
  seconds: 2,
  cloths: [{ id: 'bolt', width: 42, firstCut }],
  blanks: [{ id: 'ribbon', outline: rectangle(width, length), demand }],
});

describe('a bolt that may be cut either way', () => {
  test('never costs more than cut across alone, and its bound is no higher than that', async () => {
    expect(JOBS.length).toBeGreaterThan(8);
    for (const { seed, job } of JOBS) {
      const whole = layoutJob(job);
      const either = { ...whole, cloths: whole.cloths.map((c) => ({ ...c, firstCut: 'either' as const })) };
      const answer = await planned({ ...either, seconds: 1 });
      const least = leastCost(job);
      expect(answer.cost, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
      expect(answer.bound!, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
      expect(answer.bound!, `seed ${seed}`).toBeGreaterThan(0);
    }
  });

  test('ribbons of one length lie side by side, and that is proved', async () => {
    // 21 ribbons of 2 in fill 42 in of width, so 42 of them take two lengths of 36.
    for (const firstCut of ['along', 'either'] as const) {
      const answer = await planned(ribbons(firstCut, 2, 36, 42));
      expect([answer.cost, answer.status]).toEqual([72, 'optimal']);
    }
  });

  test('short blanks lie one behind another along a long one', async () => {
    const job = ribbons('along', 30, 41, 1);
    const more = { id: 'square', outline: rectangle(12, 12), demand: 3 };
    const answer = await planned({ ...job, blanks: [...job.blanks, more] });
    expect([answer.cost, answer.bound]).toEqual([41, expect.closeTo(41, 6)]);
  });
});

test('what lies across the width bounds every plan, also one with a free piece', async () => {
  let close = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const { bolt, ...job } = rectangleJob(seed);
    const small = { ...job, bolt: { width: bolt.width } };
    if (small.other?.is === 'bolt' || small.ruler !== undefined) continue;
    const whole = layoutJob(small);
    const { families, demand } = sampleMaster(whole);
    const bound = await barBound(solver, whole, families, demand, goOn);
    const least = leastCost(small);
    expect(bound, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
    if (bound > 0.9 * least) close++;
  }
  expect(close).toBeGreaterThan(5);
});
