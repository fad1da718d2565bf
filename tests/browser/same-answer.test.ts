/** The same job and seed, ended by its own proof, gives the same answer: again in Node, and in a worker of the browser. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { Packer } from '../../workers/packer.ts';
import { boxJob } from '../workers/box-job.ts';
import { layoutJob } from '../workers/oracle/rectangle-job.ts';
import { severalCloths, severalClothsJob } from '../workers/oracle/several-cloths.ts';
import { fewRectangles } from '../workers/oracle/stacked-boxes.ts';
import { ringJob } from '../workers/ring-job.ts';
import { Packers } from './packers.ts';

let packers: Packers;

beforeAll(async () => {
  packers = await Packers.start();
}, 120_000);

afterAll(async () => {
  await packers?.stop();
});

/** Far more than the proofs take, so that the clock has no say. */
const SECONDS = 30;
const seeds = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

const JOBS: readonly (readonly [string, LayoutJob])[] = [
  ...seeds(10).map((seed) => [`boxes ${seed}`, boxJob(seed, 8 + (seed % 3), 3)] as const),
  // Rings, and below stacks, that are proved within a second or so.
  ...[7, 9, 10, 11, 13, 14, 17, 22, 30, 34].map((seed) => {
    const { ruleOfThumb: _, ...job } = ringJob(seed, 2 + (seed % 4));
    return [`rings ${seed}`, job] as const;
  }),
  ...seeds(5).map((seed) => [`several cloths ${seed}`, severalClothsJob(severalCloths(seed))] as const),
  ...[3, 4, 9, 13, 15].map((seed) => [`stacks ${seed}`, { ...layoutJob(fewRectangles(seed)), stages: 3 }] as const),
].map(([name, job], i) => [name, { ...job, seed: i + 1, seconds: SECONDS }]);

const timeless = (answer: LayoutAnswer | null) => answer && { ...answer, seconds: 0 };

test.each(JOBS)('%s: twice in Node and once in the browser, to the last digit', async (_, job) => {
  const first = await new Packer().plan(job);
  const second = await new Packer().plan(job);
  const browser = await packers.plan(job);
  expect(browser.error).toBeNull();
  expect([first.status, second.status, browser.answer?.status]).toEqual(['optimal', 'optimal', 'optimal']);
  expect(timeless(second)).toEqual(timeless(first));
  expect(timeless(browser.answer)).toEqual(timeless(first));
});
