/** Small seeded jobs of slanted blanks, and the least that they can cost by trying every way. */
import type { LayoutAnswer, LayoutJob } from '../../../src/plan/layout-job.ts';
import type { Ring } from '../../checker/rings.ts';
import { type Draw, numbers, pickFrom } from '../numbers.ts';
import { leastLengths, priceOf } from './least-length.ts';
import { listedSlants, lowestListed } from './listed-rows.ts';
import type { Reading } from './row-programme.ts';
import { type FoundRow, type Kind, lowestStrip, waysToLie } from './slanted-rows.ts';
import { segmentsFor } from './stacked-rows.ts';
import { writtenPlan } from './written-plan.ts';

export interface SlantedJob {
  readonly kinds: readonly Kind[];
  readonly width: number;
  readonly ruler?: number;
  readonly step?: number;
}

const MOST_BLANKS = 6;

export function slantedJob(seed: number): SlantedJob {
  const draw = numbers(seed);
  const ruler = pickFrom(draw, [undefined, 0.5, 1]);
  const step = pickFrom(draw, [undefined, undefined, 2.25]);
  const kinds: Kind[] = [];
  let left = MOST_BLANKS;
  for (let n = draw(1, 3); n > 0 && left > 0; n--) {
    const demand = Math.min(left, draw(1, 4));
    left -= demand;
    kinds.push({ outline: slantedOutline(draw), demand, turns: pickFrom(draw, [[0], [0, 180], [0, 180]]) });
  }
  const widest = Math.max(...waysToLie(kinds).map((lying) => lying.width));
  const width = Math.max(widest, draw(20, 40) / 4);
  return { kinds, width, ...(ruler === undefined ? {} : { ruler }), ...(step === undefined ? {} : { step }) };
}

/** A wedge, a triangle, a parallelogram, a box, or a figure with no sides alike. */
export function slantedOutline(draw: Draw): Ring {
  const quarters = (from: number, to: number) => draw(4 * from, 4 * to) / 4;
  const [b, h, lean] = [quarters(1.5, 4), quarters(1, 4), quarters(-2, 2)];
  const a = Math.min(b, quarters(0.25, 2));
  return pickFrom<Ring>(draw, [
    [
      [0, 0],
      [b, 0],
      [(b + a) / 2, h],
      [(b - a) / 2, h],
    ],
    [
      [0, 0],
      [b, 0],
      [b / 2 + lean / 2, h],
    ],
    [
      [0, 0],
      [a, 0],
      [a + lean, h],
      [lean, h],
    ],
    [
      [0, 0],
      [b, 0],
      [b, h],
      [0, h],
    ],
    [
      [0, 0],
      [b, 0],
      [b * 0.75, h],
      [b * 0.125, h * 0.75],
    ],
  ]);
}

export const layoutJob = ({ kinds, width, ruler, step }: SlantedJob): LayoutJob => ({
  method: 'strips',
  seconds: 2,
  ...(ruler === undefined ? {} : { ruler }),
  cloths: [{ id: 'bolt', width, ...(step === undefined ? {} : { step }) }],
  blanks: kinds.map(({ outline, turns, demand }, i) => ({ id: `${i}`, outline, turns, demand })),
});

/** The cheapest plan, by trying every way; its cost is the least there is. */
export function cheapestPlan(job: SlantedJob, reading: Reading | 'listed'): LayoutAnswer {
  const ways = waysToLie(job.kinds);
  const demand = job.kinds.map((kind) => kind.demand);
  const asked = {
    width: job.width,
    reading,
    ways,
    heights: stripHeights(
      ways.map((way) => way.height),
      job.ruler,
    ),
  };
  const slants = listedSlants(ways);
  const plan = leastLengths(demand, (counts) =>
    reading === 'listed' ? lowestListed(asked, slants, counts) : lowestStrip({ ...asked, reading }, counts),
  ).get(demand.join())!;
  return written(job, plan.rows, plan.length);
}

/** The same where blanks may be stacked between square cuts; on a ruler a strip may be as tall as all of them together. */
export function cheapestStacked(job: SlantedJob): LayoutAnswer {
  const ways = waysToLie(job.kinds);
  const demand = job.kinds.map((kind) => kind.demand);
  const all = job.kinds.reduce((sum, { demand: n }, kind) => {
    const tallest = Math.max(...ways.filter((way) => way.kind === kind).map((way) => way.height));
    return sum + n * tallest;
  }, 0);
  const heights =
    job.ruler === undefined
      ? stripHeights(ways.map((way) => way.height))
      : Array.from({ length: Math.ceil(all / job.ruler) }, (_, i) => (i + 1) * job.ruler!);
  const segments = segmentsFor({ width: job.width, ways, heights }, listedSlants(ways), demand);
  const plan = leastLengths(demand, segments).get(demand.join())!;
  return written(job, plan.rows, plan.length);
}

function written(job: SlantedJob, rows: readonly FoundRow[], length: number): LayoutAnswer {
  const names = job.kinds.map((_, i) => `${i}`);
  return writtenPlan('bolt', rows, names, priceOf(length, job.step));
}

/** A strip twice as tall as the tallest blank may as well be two. */
export function stripHeights(heights: readonly number[], ruler?: number): readonly number[] {
  if (ruler === undefined) return [...new Set(heights)].sort((a, b) => a - b);
  return Array.from({ length: Math.ceil((2 * Math.max(...heights)) / ruler) }, (_, i) => (i + 1) * ruler);
}
