/** Ring quilts from the generator beside the project: how many are proved, and how much less than the rule of thumb they buy. */
import { existsSync } from 'node:fs';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { BESIDE, measure, median, say } from './measure.ts';

const FEW_KINDS = 8;

export async function benchRings(seeds: readonly number[], seconds: number): Promise<void> {
  const url = new URL('make-rings.mjs', BESIDE);
  if (!existsSync(url)) {
    console.log(`There is no ${url.pathname}: nothing to measure.`);
    return;
  }
  const { ringsJob } = (await import(url.href)) as { ringsJob: (seed: number) => LayoutJob & { ruleOfThumb: number } };
  say('seed', 'kinds', 'cost', 'bound', 'thumb', 'to best', 'to proof');
  const runs: { kinds: number; proved: boolean; share: number }[] = [];
  for (const seed of seeds) {
    const job = ringsJob(seed);
    const { answer, toBest, toProof } = await measure(job, seconds);
    say(seed, job.blanks.length, answer.cost, answer.bound, job.ruleOfThumb, toBest, toProof);
    runs.push({ kinds: job.blanks.length, proved: toProof !== null, share: answer.cost / job.ruleOfThumb });
  }
  const few = runs.filter(({ kinds }) => kinds <= FEW_KINDS);
  const proved = (some: typeof runs) => `${some.filter((run) => run.proved).length} of ${some.length}`;
  console.log(`proved: ${proved(runs)}; up to ${FEW_KINDS} kinds: ${proved(few)}`);
  console.log(`cost against the rule of thumb, median: ${median(runs.map((run) => run.share)).toFixed(3)}`);
}
