/** Published sets beside the project: strips off one bolt, and sheets from stock. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { readLayoutJobValue } from '../../src/plan/read-layout-job.ts';
import { solveLevels } from './level-programme.ts';
import { BESIDE, type Measured, measure, median, say } from './measure.ts';
import { solveStock } from './stock-programme.ts';

/** What HiGHS may take for one set of sheets. */
const STOCK_SECONDS = 60;

interface Published {
  readonly twoStageOptimum?: number;
  readonly twoStageBest?: number;
}

/** Strips: each set also goes to HiGHS as a compact programme, one run with ten times the time. */
export async function benchStrips(seeds: readonly number[], seconds: number): Promise<void> {
  say('set', 'cost', 'bound', 'known', 'to best', 'to proof', 'HiGHS', 'ratio');
  const runs: { measured: Measured; known: number; ratio: number | null }[] = [];
  for (const [name, job] of setsIn('strips')) {
    const other = await solveLevels(readLayoutJobValue(job), 10 * seconds);
    for (const seed of seeds) {
      const measured = await measure(job, seconds, seed);
      const ratio = measured.toProof !== null && other.proved ? other.seconds / measured.toProof : null;
      runs.push({ measured, known: job.twoStageOptimum!, ratio });
      const { answer, toBest, toProof } = measured;
      const beside = other.proved ? other.seconds : `>${Math.round(other.seconds)}`;
      say(name, answer.cost, answer.bound, job.twoStageOptimum!, toBest, toProof, beside, ratio);
    }
  }
  tellShares(runs);
  const ratios = runs.flatMap(({ ratio }) => (ratio === null ? [] : [ratio]));
  if (ratios.length > 0)
    console.log(`HiGHS takes ${median(ratios).toFixed(1)} times as long (median where both prove)`);
}

/** Sheets: each set also goes to HiGHS with every strip and every parting of a sheet listed, one run. */
export async function benchStock(seeds: readonly number[], seconds: number): Promise<void> {
  say('set', 'cost', 'bound', 'known', 'to best', 'to proof', 'HiGHS', 'ratio');
  const runs: { measured: Measured; known: number }[] = [];
  for (const [name, job] of setsIn('stock')) {
    const other = await solveStock(readLayoutJobValue(job), STOCK_SECONDS);
    if (other?.proved && Math.abs(other.length - job.twoStageBest!) > 1e-6)
      console.log(`HiGHS finds ${other.length} for ${name}, not the ${job.twoStageBest} that are known`);
    for (const seed of seeds) {
      const measured = await measure(job, seconds, seed);
      runs.push({ measured, known: job.twoStageBest! });
      const { answer, toBest, toProof } = measured;
      const ratio = toProof !== null && other?.proved ? other.seconds / toProof : null;
      const beside = other && (other.proved ? other.seconds : `>${Math.round(other.seconds)}`);
      say(name, answer.cost, answer.bound, job.twoStageBest!, toBest, toProof, beside, ratio);
    }
  }
  tellShares(runs);
}

function tellShares(runs: readonly { readonly measured: Measured; readonly known: number }[]): void {
  const proved = runs.filter(({ measured }) => measured.toProof !== null).length;
  const met = runs.filter(({ measured, known }) => measured.answer.cost <= known + 1e-6).length;
  console.log(`${proved} of ${runs.length} proved, ${met} at the known optimum`);
}

function setsIn(folder: string): readonly (readonly [string, Published])[] {
  const url = new URL(`${folder}/`, BESIDE);
  if (!existsSync(url)) {
    console.log(`There is no ${url.pathname}: nothing to measure.`);
    return [];
  }
  const files = readdirSync(url).filter((file) => file.endsWith('.json'));
  return files.map(
    (file) => [file.replace('.json', ''), JSON.parse(readFileSync(new URL(file, url), 'utf8'))] as const,
  );
}
