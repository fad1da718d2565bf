/**
 * Bounds never above the optimum: small jobs whose least cost is known from outside the engine, by HiGHS on the compact
 * level-packing programme or by trying every way. Each seed is one job of each sort.
 */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { leastLength } from '../outside/level-model.ts';
import { boxJob } from '../workers/box-job.ts';
import * as rectangles from '../workers/oracle/rectangle-job.ts';
import * as several from '../workers/oracle/several-cloths.ts';
import * as slanted from '../workers/oracle/slanted-job.ts';
import * as stacked from '../workers/oracle/stacked-boxes.ts';
import { measure, say } from './measure.ts';

interface Sort {
  readonly name: string;
  readonly job: (seed: number) => LayoutJob;
  readonly least: (seed: number) => number | Promise<number>;
}

const SORTS: readonly Sort[] = [
  { name: 'boxes', job: stepped, least: leastByHighs },
  {
    name: 'turned boxes',
    job: (seed) => rectangles.layoutJob(rectangles.rectangleJob(seed)),
    least: (seed) => rectangles.leastCost(rectangles.rectangleJob(seed)),
  },
  {
    name: 'slanted',
    job: (seed) => slanted.layoutJob(slanted.slantedJob(seed)),
    least: (seed) => slanted.cheapestPlan(slanted.slantedJob(seed), 'listed').cost,
  },
  {
    name: 'stacked',
    job: (seed) => ({ ...rectangles.layoutJob(stacked.fewRectangles(seed)), stages: 3 }),
    least: (seed) => rectangles.leastCost(stacked.fewRectangles(seed), stacked.lowestStacked),
  },
  {
    name: 'several cloths',
    job: (seed) => several.severalClothsJob(several.severalCloths(seed)),
    least: (seed) => several.leastCost(several.severalCloths(seed)),
  },
];

const LOOSE = 1e-6;

export async function benchBounds(seeds: readonly number[], seconds: number): Promise<void> {
  const lines: (readonly (string | number)[])[] = [];
  for (const { name, job, least } of SORTS) {
    let [wrong, reached, proved] = [0, 0, 0];
    for (const seed of seeds) {
      const known = await least(seed);
      const { answer } = await measure(job(seed), seconds);
      const complaints = [
        answer.bound !== null && answer.bound > known + LOOSE ? `bound ${answer.bound} above the least` : null,
        answer.cost < known - LOOSE ? `cost ${answer.cost} below the least` : null,
        answer.status === 'optimal' && answer.cost > known + LOOSE ? `${answer.cost} called the least` : null,
      ].filter((text) => text !== null);
      for (const complaint of complaints) console.log(`WRONG: ${name}, seed ${seed}: ${complaint}, ${known}`);
      if (complaints.length > 0) wrong++;
      if (answer.cost <= known + LOOSE) reached++;
      if (answer.status === 'optimal') proved++;
    }
    lines.push([name, seeds.length, wrong, reached, proved]);
  }
  say('sort', 'jobs', 'wrong', 'reached', 'proved');
  for (const line of lines) say(...line);
  const total = (column: number) => lines.reduce((sum, line) => sum + Number(line[column]), 0);
  say('all', total(1), total(2), total(3), total(4));
  if (total(2) > 0) process.exitCode = 1;
}

/** Every second one is sold by the step. */
function stepped(seed: number): LayoutJob {
  const job = boxJob(seed, 3 + (seed % 5), 3);
  return seed % 2 === 0 ? job : { ...job, cloths: job.cloths.map((cloth) => ({ ...cloth, step: 4.5 })) };
}

function leastByHighs(seed: number): Promise<number> {
  const { cloths, blanks } = stepped(seed);
  const { width, step } = cloths[0]!;
  const list = blanks.flatMap(({ outline, demand }) => {
    const [w, h] = outline![2]!;
    return Array.from({ length: demand }, () => ({ width: w, height: h }));
  });
  return leastLength({ rectangles: list, width, ...(step === undefined ? {} : { step }) });
}
