/**
 * Three stages beside two: the published strips as given, where a strip is as tall as some blank, and on a ruler of 1, where it may be
 * as tall as any stack; then ring quilts. What two stages cost is the known optimum where there is one, else the best plan found on
 * the way to three.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { BESIDE, type Measured, measure, say } from './measure.ts';

interface Run {
  readonly two: number;
  readonly measured: Measured;
}

export async function benchStages(seeds: readonly number[], seconds: number): Promise<void> {
  say('set', 'ruler', 'two', 'three', 'bound', 'saved %', 'to best', 'to end');
  const given: Run[] = [];
  const ruled: Run[] = [];
  for (const [name, job] of sets()) {
    given.push(await tell(name, job, seconds, job.twoStageOptimum));
    ruled.push(await tell(name, { ...job, ruler: 1 }, seconds, job.twoStageOptimum));
  }
  sum('strips as given', given);
  sum('strips on a ruler of 1', ruled);
  const rings = new URL('make-rings.mjs', BESIDE);
  if (!existsSync(rings)) return;
  const { ringsJob } = (await import(rings.href)) as { ringsJob: (seed: number) => LayoutJob };
  const ringRuns: Run[] = [];
  for (const seed of seeds) ringRuns.push(await tell(`ring ${seed}`, ringsJob(seed), seconds));
  sum('rings', ringRuns);
}

async function tell(name: string, job: LayoutJob, seconds: number, known?: number): Promise<Run> {
  const measured = await measure({ ...job, stages: 3 }, seconds);
  const { answer, toBest, took } = measured;
  const two = known ?? answer.twoStageCost ?? answer.cost;
  say(name, job.ruler ?? null, two, answer.cost, answer.bound, 100 * (1 - answer.cost / two), toBest, took);
  return { two, measured };
}

function sum(what: string, runs: readonly Run[]): void {
  const count = (is: (run: Run) => boolean) => runs.filter(is).length;
  const less = count(({ two, measured }) => measured.answer.cost < two - 1e-6);
  const more = count(({ two, measured }) => measured.answer.cost > two + 1e-6);
  const proved = count(({ measured }) => measured.toProof !== null);
  const shares = runs.map(({ two, measured }) => 1 - measured.answer.cost / two);
  const mean = (100 * shares.reduce((a, b) => a + b, 0)) / Math.max(1, runs.length);
  console.log(
    `${what}: less in ${less} of ${runs.length}, more in ${more}, proved ${proved}, saved ${mean.toFixed(1)} % on average`,
  );
}

function sets(): readonly (readonly [string, LayoutJob & { readonly twoStageOptimum: number }])[] {
  const url = new URL('strips/', BESIDE);
  if (!existsSync(url)) {
    console.log(`There is no ${url.pathname}: nothing to measure.`);
    return [];
  }
  const files = readdirSync(url).filter((file) => file.endsWith('.json'));
  return files.map(
    (file) => [file.replace('.json', ''), JSON.parse(readFileSync(new URL(file, url), 'utf8'))] as const,
  );
}
