/** Bounds of the linear programme over strips with stacks: whether tall strips are asked one by one or bounded all at once. */
import { expect, test } from 'vitest';
import type { LayoutJob } from '../../../src/plan/layout-job.ts';
import { generate } from '../../../workers/master/generate.ts';
import { StripMaster } from '../../../workers/master/strip-master.ts';
import type { StackRule } from '../../../workers/strips/family.ts';
import { layoutJob, leastCost, type RectangleJob, rectangleJob } from '../oracle/rectangle-job.ts';
import { cheapestStacked, slantedJob, layoutJob as slantedLayoutJob } from '../oracle/slanted-job.ts';
import { lowestStacked } from '../oracle/stacked-boxes.ts';
import { goOn, sampleMaster, solver } from './sample-master.ts';

/** By length, on a ruler, off one bolt or beside a free piece. */
const BOXES = Array.from({ length: 90 }, (_, i) => rectangleJob(i + 1))
  .filter((job) => job.ruler !== undefined && job.other?.is !== 'bolt')
  .map(({ bolt, ...job }): RectangleJob => {
    const kinds = job.kinds.slice(0, 3).map((kind) => ({ ...kind, demand: Math.min(2, kind.demand) }));
    return { ...job, kinds, bolt: { width: bolt.width } };
  });

function stackedMaster(job: LayoutJob, rule: (tallest: number) => Omit<StackRule, 'heights'>): StripMaster {
  const rows = sampleMaster(job);
  const families = rows.families.map((family) => ({
    ...family,
    graphs: new Map(family.graphs),
    stacks: { ...rule(family.heights.at(-1) ?? 0), heights: family.heights },
  }));
  return new StripMaster(solver, job, families, rows.demand, rows.stock);
}

async function boundOf(job: LayoutJob, rule: Parameters<typeof stackedMaster>[1]): Promise<number> {
  const made = (await generate(stackedMaster(job, rule), [], goOn))!;
  expect(made.complete).toBe(true);
  return made.bound;
}

const total = (job: LayoutJob): number =>
  job.blanks.reduce((sum, { outline, demand }) => sum + demand * 2 * Math.max(...outline!.flat()), 0);

test('of boxes: every height asked, or those beyond the tallest blank’s bounded all at once', async () => {
  expect(BOXES.length).toBeGreaterThan(20);
  let loose = 0;
  for (const [seed, small] of BOXES.entries()) {
    const job = layoutJob(small);
    const least = leastCost(small, lowestStacked);
    const pieces = small.other?.is === 'piece';
    const all = await boundOf(job, () => ({ top: pieces ? 10 : total(job), beyond: pieces }));
    const few = await boundOf(job, (tallest) => ({ top: tallest, beyond: true }));
    expect(all, `job ${seed}`).toBeLessThanOrEqual(least + 1e-6);
    expect(few, `job ${seed}`).toBeLessThanOrEqual(least + 1e-6);
    if (!pieces) expect(few, `job ${seed}`).toBeLessThanOrEqual(all + 1e-6);
    if (few < all - 1e-6) loose++;
    if (least > 0 && !pieces) expect(few).toBeGreaterThan(0.3 * least);
  }
  // The bound on all at once is the looser one, or it was never asked.
  expect(loose).toBeGreaterThan(0);
});

test('of slanted blanks beside stacks', async () => {
  for (let seed = 1; seed <= 25; seed++) {
    const { step: _, ...small } = { ...slantedJob(seed), ruler: 0.5 };
    const job = slantedLayoutJob(small);
    const { cost } = cheapestStacked(small);
    const few = await boundOf(job, (tallest) => ({ top: 2 * tallest, beyond: true }));
    expect(few, `job ${seed}`).toBeLessThanOrEqual(cost + 1e-6);
    expect(few, `job ${seed}`).toBeGreaterThan(0.1 * cost);
  }
});
