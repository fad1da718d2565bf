/** Small seeded jobs of rectangles, and the least that they can cost by trying every way to share them out among strips. */
import type { LayoutJob } from '../../../src/plan/layout-job.ts';
import { rectangle } from '../../outside/engine.ts';
import { numbers, pickFrom, vectors } from '../numbers.ts';
import { leastLengths, priceOf } from './least-length.ts';

export interface RectangleKind {
  readonly width: number;
  readonly height: number;
  readonly demand: number;
}

export interface RectangleJob {
  readonly kinds: readonly RectangleKind[];
  readonly quarterTurns: boolean;
  readonly ruler?: number;
  readonly bolt: { readonly width: number; readonly step?: number };
  /** What else there is to cut from. */
  readonly other?:
    | { readonly is: 'piece'; readonly width: number; readonly length: number }
    | { readonly is: 'bolt'; readonly width: number; readonly step: number; readonly cost: number };
}

export function rectangleJob(seed: number): RectangleJob {
  const draw = numbers(seed);
  const ruler = pickFrom(draw, [undefined, 1, 0.5]);
  const step = pickFrom(draw, [undefined, undefined, 4.5]);
  const quarters = (from: number, to: number) => draw(4 * from, 4 * to) / 4;
  const kinds: RectangleKind[] = [];
  let left = 10;
  for (let n = draw(2, 4); n > 0 && left > 0; n--) {
    const demand = Math.min(left, draw(1, 4));
    left -= demand;
    kinds.push({ width: quarters(1, 8), height: quarters(1, 8), demand });
  }
  const widest = Math.max(...kinds.map((kind) => kind.width));
  const bolt = { width: Math.max(widest, quarters(8, 16)), ...(step === undefined ? {} : { step }) };
  const other = pickFrom<RectangleJob['other']>(draw, [
    undefined,
    undefined,
    { is: 'piece', width: quarters(4, 12), length: quarters(4, 10) },
    { is: 'bolt', width: quarters(8, 20), step: 2.25, cost: quarters(0.5, 2) },
  ]);
  const quarterTurns = draw(0, 1) === 1;
  return {
    kinds,
    quarterTurns,
    bolt,
    ...(ruler === undefined ? {} : { ruler }),
    ...(other === undefined ? {} : { other }),
  };
}

export function layoutJob({ kinds, quarterTurns, ruler, bolt, other }: RectangleJob): LayoutJob {
  const cloths: LayoutJob['cloths'][number][] = [{ id: 'bolt', ...bolt }];
  if (other?.is === 'piece') cloths.push({ id: 'piece', width: other.width, length: other.length, cost: 0 });
  if (other?.is === 'bolt') cloths.push({ id: 'other', width: other.width, step: other.step, cost: other.cost });
  return {
    method: 'strips',
    seconds: 1,
    ...(ruler === undefined ? {} : { ruler }),
    cloths,
    blanks: kinds.map(({ width, height, demand }, i) => ({
      id: `${i}`,
      outline: rectangle(width, height),
      demand,
      turns: quarterTurns ? [0, 90] : [0],
    })),
  };
}

/** The least cost: subcuts square to the strip, so that each rectangle takes its own width of it. */
export function leastCost(job: RectangleJob, lowest: LowestIn = lowestBoxes): number {
  const { bolt, other } = job;
  const demand = job.kinds.map((kind) => kind.demand);
  const onBolt = lengthsOn(job, bolt.width, lowest);
  const priced = (length: number) => priceOf(length, bolt.step);
  if (!other) return priced(onBolt.get(demand.join())!.length);
  const onOther = lengthsOn(job, other.width, lowest);
  const costs = [...vectors(demand)].map((held) => {
    const rest = priced(onBolt.get(demand.map((n, i) => n - held[i]!).join())!.length);
    const { length } = onOther.get(held.join())!;
    if (other.is === 'bolt') return rest + other.cost * priceOf(length, other.step);
    return length <= other.length * (1 + 1e-9) ? rest : Infinity;
  });
  return Math.min(...costs);
}

/** The lowest strip of some length that holds so many of each kind, null when none does. */
export type LowestIn = (job: RectangleJob, length: number, counts: readonly number[]) => { height: number } | null;

function lengthsOn(job: RectangleJob, width: number, lowest: LowestIn) {
  const demand = job.kinds.map((kind) => kind.demand);
  return leastLengths(demand, (counts) => lowest(job, width, counts));
}

/** The lowest strip of this length that holds so many of each kind, null when none does. */
export function lowestBoxes(job: RectangleJob, length: number, counts: readonly number[]): { height: number } | null {
  const ways = job.kinds.map((kind) => boxesOf(job, kind));
  const heights = [...new Set(ways.flat().map((way) => way.height))].sort((a, b) => a - b);
  const height = heights.find((each) => {
    const widths = counts.map((n, i) => {
      const narrowest = Math.min(...ways[i]!.filter((way) => way.height <= each).map((way) => way.width));
      return n === 0 ? 0 : n * narrowest;
    });
    return widths.reduce((sum, w) => sum + w, 0) <= length * (1 + 1e-9);
  });
  return height === undefined ? null : { height };
}

/** What a rectangle takes of a strip, as drawn and (where it may) turned: its width, and the height of the strip. */
export function boxesOf(
  { quarterTurns, ruler }: RectangleJob,
  { width, height }: Pick<RectangleKind, 'width' | 'height'>,
) {
  const ways = quarterTurns
    ? [
        [width, height],
        [height, width],
      ]
    : [[width, height]];
  const onRuler = (v: number) => (ruler === undefined ? v : Math.ceil(v / ruler - 1e-9) * ruler);
  return ways.map(([across, up]) => ({ width: across!, height: onRuler(up!) }));
}
