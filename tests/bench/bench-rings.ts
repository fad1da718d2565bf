/**
 * Ring quilts: how many purchases are proved least, how much less than the rule of thumb they buy, and how far the rest are from
 * a proof. From the generator beside the project where it is there, else from the tests' own, which draws the same sorts of blanks.
 */
import { existsSync } from 'node:fs';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { ringJob } from '../workers/ring-job.ts';
import { BESIDE, measure, median, say } from './measure.ts';

type Rings = LayoutJob & { readonly ruleOfThumb: number };

interface Run {
  readonly kinds: number;
  readonly proved: boolean;
  /** Of the rule of thumb's cost. */
  readonly share: number;
  /** Selling steps between plan and bound. */
  readonly open: number;
}

const FEW_KINDS = 8;
const MANY_KINDS = [15, 20, 30];

export async function benchRings(seeds: readonly number[], seconds: number): Promise<void> {
  const rings = await ringsMaker();
  say('seed', 'kinds', 'cost', 'bound', 'thumb', 'to best', 'to proof', 'open');
  const runs: Run[] = [];
  for (const seed of seeds) runs.push(await runOne(rings(seed), seed, seconds));
  tell('all', runs);
  const few = runs.filter(({ kinds }) => kinds <= FEW_KINDS);
  tell(`up to ${FEW_KINDS} kinds`, few);
}

/** The same with many kinds. */
export async function benchKinds(seeds: readonly number[], seconds: number): Promise<void> {
  const rings = await ringsMaker();
  say('seed', 'kinds', 'cost', 'bound', 'thumb', 'to best', 'to proof', 'open');
  const runs: Run[] = [];
  for (const kinds of MANY_KINDS) for (const seed of seeds) runs.push(await runOne(rings(seed, kinds), seed, seconds));
  for (const kinds of MANY_KINDS)
    tell(
      `${kinds} kinds`,
      runs.filter((run) => run.kinds === kinds),
    );
}

async function ringsMaker(): Promise<(seed: number, kinds?: number) => Rings> {
  const url = new URL('make-rings.mjs', BESIDE);
  if (!existsSync(url)) {
    console.log(`There is no ${url.pathname}: the tests' own rings are measured.`);
    return (seed, kinds) => ringJob(seed, kinds ?? 4 + (seed % 9));
  }
  return ((await import(url.href)) as { ringsJob: (seed: number, kinds?: number) => Rings }).ringsJob;
}

/** Every plan on the way is read by the proof-reader, and the last by the tests' checker too, or there is no figure. */
async function runOne(job: Rings, seed: number, seconds: number): Promise<Run> {
  const { answer, toBest, toProof } = await measure(job, seconds);
  const step = job.cloths[0]!.step!;
  const open = Math.round((answer.cost - (answer.bound ?? 0)) / step);
  say(seed, job.blanks.length, answer.cost, answer.bound, job.ruleOfThumb, toBest, toProof, open);
  return { kinds: job.blanks.length, proved: toProof !== null, share: answer.cost / job.ruleOfThumb, open };
}

function tell(which: string, runs: readonly Run[]): void {
  if (runs.length === 0) return;
  const proved = runs.filter((run) => run.proved).length;
  const open = new Map<number, number>();
  for (const run of runs) if (!run.proved) open.set(run.open, (open.get(run.open) ?? 0) + 1);
  const rest = [...open].sort((a, b) => a[0] - b[0]).map(([steps, n]) => `${n} by ${steps}`);
  console.log(
    `${which}: ${proved} of ${runs.length} proved (${Math.round((100 * proved) / runs.length)} %)` +
      `; open by selling steps: ${rest.join(', ') || 'none'}` +
      `; cost against the rule of thumb, median ${median(runs.map((run) => run.share)).toFixed(3)}`,
  );
}
