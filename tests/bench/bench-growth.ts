/** How time and memory grow with the number of patches: 100, 1,000 and 10,000 on twelve cloths. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { GrowthCase, GrowthMeasured } from './growth-case.ts';
import { say } from './measure.ts';

const CASE = fileURLToPath(new URL('growth-case.ts', import.meta.url));

/**
 * Each cloth a job by itself on two packers, as the page and the command do it where no blank may come from two cloths, and
 * all in one job where every kind may come from two of them. Each line is a process of its own, so that its memory is too.
 * @param seconds wall time for all jobs of a line
 */
export async function benchGrowth(seeds: readonly number[], seconds: number): Promise<void> {
  say('patches', 'jobs', 'kinds', 'cost', 'bound', 'proved', 'to first', 'to end', 'MB');
  for (const patches of [100, 1000, 10_000]) {
    for (const seed of seeds) {
      for (const apart of [true, false]) {
        const found = inItsOwnProcess({ patches, seed, apart, seconds });
        const { jobs, kinds, cost, bound, proved, toFirst, took, megabytes } = found;
        say(patches, jobs, kinds, cost, bound, `${proved}/${jobs}`, toFirst, took, megabytes);
      }
    }
  }
}

function inItsOwnProcess(asked: GrowthCase): GrowthMeasured {
  const run = spawnSync(process.execPath, ['--import', 'tsx', CASE, JSON.stringify(asked)], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (run.status !== 0) throw new Error(`the planning of ${JSON.stringify(asked)} ended with ${run.status}`);
  return JSON.parse(run.stdout) as GrowthMeasured;
}
