/** What is asked of the plan of every random job; two test files share the jobs out, so that both cores have work. */
import { expect, test } from 'vitest';
import { cleanAnswer, unplacedCount } from './expect-clean.ts';
import { randomJob } from './random-job.ts';
import { simpleBoxing } from './simple-boxing.ts';

const SECONDS = 1;
/** Proved in so small a part of the time that no limit on the way can have been the clock's. */
const QUICKLY = 0.15;

export function testRandomJobs(seeds: readonly number[]): void {
  const seen = { partial: 0, proved: 0, twice: 0 };

  test.each(seeds)('random job %d: clean, and never worse than boxes laid without thinking', async (seed) => {
    const job = { ...randomJob(seed), seconds: SECONDS };
    const answer = await cleanAnswer(job, `job ${seed}`);
    const boxing = simpleBoxing(job);
    expect(unplacedCount(answer)).toBeLessThanOrEqual(boxing.unplaced);
    if (unplacedCount(answer) === boxing.unplaced) expect(answer.cost).toBeLessThanOrEqual(boxing.cost + 1e-6);
    if (answer.status === 'partial') seen.partial++;
    if (answer.status !== 'optimal') return;
    seen.proved++;
    if (answer.seconds > QUICKLY) return;
    seen.twice++;
    // Ended by its own proof: the same again, but for the time. More time is given, so that the clock has no say.
    const [second, third] = [
      await cleanAnswer({ ...job, seconds: 20 }, 'again'),
      await cleanAnswer({ ...job, seconds: 20 }, 'again'),
    ];
    expect({ ...second, seconds: 0 }).toEqual({ ...third, seconds: 0 });
    expect(second.cost).toBeCloseTo(answer.cost, 6);
  });

  test('some of them ask for more than there is, and some are proved', () => {
    expect(seen.partial).toBeGreaterThan(0);
    expect(seen.proved).toBeGreaterThan(3);
    expect(seen.twice).toBeGreaterThan(1);
  });
}
