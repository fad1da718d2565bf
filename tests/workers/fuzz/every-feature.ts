/** What is asked of the plan of every random job; two test files share the jobs out, so that both cores have work. */
import { expect, test } from 'vitest';
import { cleanAnswer, unplacedCount } from './expect-clean.ts';
import { randomJob } from './random-job.ts';
import { simpleBoxing } from './simple-boxing.ts';

const SECONDS = 1;

export function testRandomJobs(seeds: readonly number[]): void {
  const seen = { partial: 0, proved: 0 };

  test.each(seeds)('random job %d: clean, and never worse than boxes laid without thinking', async (seed) => {
    const job = { ...randomJob(seed), seconds: SECONDS };
    const answer = await cleanAnswer(job, `job ${seed}`);
    const boxing = simpleBoxing(job);
    expect(unplacedCount(answer)).toBeLessThanOrEqual(boxing.unplaced);
    if (unplacedCount(answer) === boxing.unplaced) expect(answer.cost).toBeLessThanOrEqual(boxing.cost + 1e-6);
    if (answer.status === 'partial') seen.partial++;
    if (answer.status !== 'optimal') return;
    seen.proved++;
    // Ended by its own proof: the same again, but for the time it took, also where it may take longer.
    const again = await cleanAnswer({ ...job, seconds: 20 }, 'again');
    expect({ ...again, seconds: 0 }).toEqual({ ...answer, seconds: 0 });
  });

  test('some of them ask for more than there is, and some are proved', () => {
    expect(seen.partial).toBeGreaterThan(0);
    expect(seen.proved).toBeGreaterThan(3);
  });
}
