/** One line of the growth bench, in a process of its own: its argument is a GrowthCase as JSON, its output a GrowthMeasured. */
import { planGroups } from '../../src/cli/plan-groups.ts';
import { startPacker } from '../../src/cli/start-packer.ts';
import type { JobBlank, LayoutJob } from '../../src/plan/layout-job.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { type Draw, numbers, pickFrom } from '../workers/numbers.ts';

export interface GrowthCase {
  readonly patches: number;
  readonly seed: number;
  /** Each cloth a job by itself; else one job over all of them. */
  readonly apart: boolean;
  readonly seconds: number;
}

export interface GrowthMeasured {
  readonly jobs: number;
  readonly kinds: number;
  readonly cost: number;
  readonly bound: number;
  readonly proved: number;
  /** Seconds until every job has a plan, and until all have ended. */
  readonly toFirst: number;
  readonly took: number;
  /** The most that the process held, packers and all. */
  readonly megabytes: number;
}

const CLOTHS = 12;

async function measured({ patches, seed, apart, seconds }: GrowthCase): Promise<GrowthMeasured> {
  const jobs = jobsFor(kindsFor(patches, seed), apart);
  const started = performance.now();
  const since = () => (performance.now() - started) / 1000;
  const first = new Map<string, number>();
  const packers = Array.from({ length: apart ? 2 : 1 }, () => startPacker());
  const heard = packers.map((packer) => ({
    plan: (job: LayoutJob) => {
      const name = job.cloths.map((cloth) => cloth.id).join();
      return packer.plan(job, ({ answer }) => answer && !first.has(name) && first.set(name, since()));
    },
  }));
  const plans = await planGroups(
    jobs.map((job) => ({ job })),
    heard,
    seconds,
    since,
  );
  const took = since();
  for (const packer of packers) packer.end();
  for (const { job, answer } of plans) {
    const wrong = checkAnswer(job, answer);
    if (wrong.length > 0) throw new Error(`the plan is not clean: ${wrong[0]}`);
  }
  const sum = (of: (plan: (typeof plans)[number]) => number) => plans.reduce((total, plan) => total + of(plan), 0);
  return {
    jobs: jobs.length,
    kinds: sum(({ job }) => job.blanks.length),
    cost: sum(({ answer }) => answer.cost),
    bound: sum(({ answer }) => answer.bound ?? 0),
    proved: sum(({ answer }) => Number(answer.status === 'optimal')),
    toFirst: Math.max(...first.values()),
    took,
    megabytes: Math.round(process.resourceUsage().maxRSS / 1024),
  };
}

function jobsFor(blanks: readonly JobBlank[], apart: boolean): readonly LayoutJob[] {
  const jobFor = (some: readonly JobBlank[], cloths: readonly number[]): LayoutJob => ({
    method: 'strips',
    ruler: 0.125,
    cloths: cloths.map((i) => ({ id: `cloth${i}`, width: 42, step: 9 })),
    blanks: some,
  });
  const all = Array.from({ length: CLOTHS }, (_, i) => i);
  if (apart)
    return all.map((i) =>
      jobFor(
        blanks.filter((_, k) => k % CLOTHS === i),
        [i],
      ),
    );
  const shared = blanks.map((blank, k) => ({ ...blank, cloths: [`cloth${k % CLOTHS}`, `cloth${(k + 1) % CLOTHS}`] }));
  return [jobFor(shared, all)];
}

/** More patches are more of each kind and more kinds, as a larger quilt has. */
function kindsFor(patches: number, seed: number): readonly JobBlank[] {
  const draw = numbers(seed);
  const count = CLOTHS * (patches >= 10_000 ? 6 : patches >= 1000 ? 4 : 2);
  return Array.from({ length: count }, (_, i) => ({
    id: `kind${i}`,
    outline: outline(draw),
    demand: Math.floor(patches / count) + (i < patches % count ? 1 : 0),
    turns: pickFrom(draw, [[0], [0, 180], [{ centre: 0, within: 5 }]]),
  }));
}

function outline(draw: Draw): JobBlank['outline'] & {} {
  const [b, h] = [draw(12, 40) / 8, draw(12, 56) / 8];
  const a = Math.min(b, draw(4, 16) / 8);
  return pickFrom(draw, [
    [
      [0, 0],
      [b, 0],
      [(b + a) / 2, h],
      [(b - a) / 2, h],
    ],
    [
      [0, 0],
      [b, 0],
      [b / 2, h],
    ],
    [
      [0, 0],
      [b, 0],
      [b, h],
      [0, h],
    ],
  ] as const);
}

process.stdout.write(JSON.stringify(await measured(JSON.parse(process.argv[2] ?? '{}') as GrowthCase)));
