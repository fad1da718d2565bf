/** How time and memory grow with the number of patches: 100, 1,000 and 10,000 on twelve cloths. */
import type { JobBlank, LayoutJob } from '../../src/plan/layout-job.ts';
import { type Draw, numbers, pickFrom } from '../workers/numbers.ts';
import { measure, say } from './measure.ts';

const CLOTHS = 12;

/** Each cloth planned by itself, as a cut list asks, and all in one job where every kind may come from two of them. */
export async function benchGrowth(seeds: readonly number[], seconds: number): Promise<void> {
  say('patches', 'jobs', 'kinds', 'cost', 'bound', 'proved', 'to first', 'to end', 'MB');
  for (const patches of [100, 1000, 10_000]) {
    for (const seed of seeds) {
      const blanks = kindsFor(patches, seed);
      const apart = Array.from({ length: CLOTHS }, (_, i) =>
        jobFor(
          blanks.filter((_, k) => k % CLOTHS === i),
          [i],
        ),
      );
      await tell(patches, apart, seconds);
      const shared = blanks.map((blank, k) => ({
        ...blank,
        cloths: [`cloth${k % CLOTHS}`, `cloth${(k + 1) % CLOTHS}`],
      }));
      await tell(patches, [jobFor(shared, [...Array(CLOTHS).keys()])], seconds);
    }
  }
}

async function tell(patches: number, jobs: readonly LayoutJob[], seconds: number): Promise<void> {
  let [cost, bound, proved, toFirst, took] = [0, 0, 0, 0, 0];
  for (const job of jobs) {
    const measured = await measure(job, seconds);
    cost += measured.answer.cost;
    bound += measured.answer.bound ?? 0;
    proved += measured.toProof === null ? 0 : 1;
    toFirst = Math.max(toFirst, measured.toFirst);
    took += measured.took;
  }
  const kinds = jobs.reduce((sum, job) => sum + job.blanks.length, 0);
  // The most this process has held so far: sizes go up, so each line is its own job's doing.
  const megabytes = process.resourceUsage().maxRSS / 1024;
  say(patches, jobs.length, kinds, cost, bound, `${proved}/${jobs.length}`, toFirst, took, Math.round(megabytes));
}

const jobFor = (blanks: readonly JobBlank[], cloths: readonly number[]): LayoutJob => ({
  method: 'strips',
  ruler: 0.125,
  cloths: cloths.map((i) => ({ id: `cloth${i}`, width: 42, step: 9 })),
  blanks,
});

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
