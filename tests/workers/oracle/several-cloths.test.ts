/** Small jobs with several bolts and pieces against every way to share the blanks out among them, tried one by one. */
import { expect, test } from 'vitest';
import { planned } from '../../outside/engine.ts';
import { leastCost, type SeveralCloths, severalCloths, severalClothsJob } from './several-cloths.ts';

const JOBS = Array.from({ length: 120 }, (_, i) => ({ seed: i + 1, job: severalCloths(i + 1) }));
const bolts = ({ cloths }: SeveralCloths) => cloths.filter((cloth) => cloth.length == null).length;
const isBox = ({ kinds }: SeveralCloths) =>
  kinds.every(({ outline }) =>
    outline.every(([x, y], i) => {
      const [u, v] = outline[(i + 1) % outline.length]!;
      return x === u || y === v;
    }),
  );

const SORTS: readonly (readonly [string, (job: SeveralCloths) => boolean])[] = [
  ['one bolt and pieces', (job) => bolts(job) === 1],
  ['two bolts', (job) => bolts(job) === 2],
];

test.each(SORTS)('%s: the plan costs the least there is, and no bound is above that', async (_, is) => {
  const jobs = JOBS.filter(({ job }) => is(job));
  expect(jobs.length).toBeGreaterThan(40);
  let proved = 0;
  for (const { seed, job } of jobs) {
    const least = leastCost(job);
    const answer = await planned(severalClothsJob(job));
    expect(answer.bound, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-6);
    expect(answer.cost, `seed ${seed}`).toBeGreaterThanOrEqual(least - 1e-6);
    if (answer.status !== 'optimal') continue;
    proved++;
    expect(answer.cost, `seed ${seed}`).toBeCloseTo(least, 6);
  }
  expect(proved).toBeGreaterThan(0.9 * jobs.length);
});

test('boxes and slanted blanks, pieces alone and by the pair, and blanks that not every cloth may serve are among them', () => {
  const some = (is: (job: SeveralCloths) => boolean) => JOBS.filter(({ job }) => is(job)).length;
  expect(some(isBox)).toBeGreaterThan(20);
  expect(some((job) => !isBox(job))).toBeGreaterThan(20);
  expect(some(({ cloths }) => cloths.some((cloth) => cloth.count === 2))).toBeGreaterThan(20);
  expect(some(({ from, cloths }) => from.some((ids) => ids.length < cloths.length))).toBeGreaterThan(20);
});
