/** Random jobs of every feature in three stages: clean, never costlier than the plan in two, and told as ruler work. */
import { expect, test } from 'vitest';
import { makeCutSteps } from '../../../src/plan/make-cut-steps.ts';
import { cleanAnswer } from './expect-clean.ts';
import { randomJob } from './random-job.ts';

const SECONDS = 0.7;
const seen = { stacked: 0, proved: 0 };

test.each(Array.from({ length: 24 }, (_, i) => i + 101))('random job %d in three stages', async (seed) => {
  const job = { ...randomJob(seed), stages: 3 as const, seconds: SECONDS };
  const answer = await cleanAnswer(job, `job ${seed}`);
  if (answer.twoStageCost !== undefined) expect(answer.cost).toBeLessThanOrEqual(answer.twoStageCost + 1e-6);
  const strips = makeCutSteps(job, answer);
  const placed = answer.layouts.reduce((sum, layout) => sum + layout.placements.length, 0);
  expect(strips.reduce((sum, { pieces }) => sum + pieces.length, 0)).toBe(placed);
  for (const { pieces, height } of strips) {
    for (const { stack, near, far, outline } of pieces) {
      if (!stack) continue;
      seen.stacked++;
      const touch = 1e-4;
      expect(Math.abs(near - far)).toBeLessThan(touch);
      for (const [x, y] of outline) {
        expect(Math.min(x - stack.from, near - x, y - stack.low, stack.high - y)).toBeGreaterThan(-touch);
      }
      expect(stack.high).toBeLessThan(height + touch);
    }
  }
  if (answer.status === 'optimal') seen.proved++;
});

test('some of them have stacks, some are proved', () => {
  expect(seen.stacked).toBeGreaterThan(0);
  expect(seen.proved).toBeGreaterThan(0);
});
