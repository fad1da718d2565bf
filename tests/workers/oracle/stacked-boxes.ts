/**
 * The lowest strip for a handful of rectangles that may be stacked: every way to share them out among segments, every way each of
 * them may be turned, every height that a strip may have.
 */
import { vectors } from '../numbers.ts';
import { boxesOf, type LowestIn, type RectangleJob, rectangleJob } from './rectangle-job.ts';

interface Box {
  readonly width: number;
  readonly height: number;
}

const tables = new WeakMap<RectangleJob, Map<string, ReadonlyMap<string, number>>>();

export const lowestStacked: LowestIn = (job, length, counts) => {
  const known = tables.get(job) ?? new Map<string, ReadonlyMap<string, number>>();
  tables.set(job, known);
  for (const height of heightsOf(job)) {
    const table = known.get(`${height}`) ?? leastWidths(job, height);
    known.set(`${height}`, table);
    if (table.get(counts.join())! <= length * (1 + 1e-9)) return { height };
  }
  return null;
};

/** On a ruler every multiple of it up to all rectangles in one stack; else the heights of the rectangles as they may lie. */
function heightsOf(job: RectangleJob): readonly number[] {
  const { ruler, kinds } = job;
  const own = kinds.flatMap((kind) => trueBoxes(job, kind).map((box) => box.height));
  if (ruler === undefined) return [...new Set(own)].sort((a, b) => a - b);
  const most = kinds.reduce((sum, { width, height, demand }) => sum + demand * Math.max(width, height), 0);
  return Array.from({ length: Math.ceil(most / ruler) }, (_, i) => (i + 1) * ruler);
}

/** As it lies, its height not rounded: stacks add up as they are, and only the strip is cut on the ruler. */
const trueBoxes = (job: RectangleJob, kind: Box): readonly Box[] =>
  boxesOf({ ...job, ruler: undefined } as never, kind);

/** By how many of each kind, joined with commas: the least that segments of this height take of the strip's length. */
function leastWidths(job: RectangleJob, height: number): ReadonlyMap<string, number> {
  const ways = job.kinds.map((kind) => trueBoxes(job, kind));
  const demand = job.kinds.map((kind) => kind.demand);
  const stack = new Map<string, number>();
  const least = new Map<string, number>();
  for (const counts of vectors(demand)) {
    const items = counts.flatMap((n, kind) => new Array<number>(n).fill(kind));
    stack.set(counts.join(), narrowestStack(items, ways, height));
    const first = counts.findIndex((n) => n > 0);
    let best = first < 0 ? 0 : Infinity;
    if (first >= 0) {
      for (const held of vectors(counts)) {
        if (held[first] === 0) continue;
        const rest = least.get(counts.map((n, i) => n - held[i]!).join())!;
        best = Math.min(best, stack.get(held.join())! + rest);
      }
    }
    least.set(counts.join(), best);
  }
  return least;
}

/** The least width of a stack of all of them; endless when they do not go into the height however they are turned. */
function narrowestStack(items: readonly number[], ways: readonly (readonly Box[])[], height: number): number {
  const [first, ...rest] = items;
  if (first === undefined) return 0;
  return Math.min(
    ...ways[first]!.map((box) =>
      box.height > height + 1e-9 ? Infinity : Math.max(box.width, narrowestStack(rest, ways, height - box.height)),
    ),
  );
}

/** Fewer rectangles than two stages are tried with: there are many more ways to lay them. */
const MOST = 6;

export function fewRectangles(seed: number): RectangleJob {
  const job = rectangleJob(seed);
  let left = MOST;
  const kinds = job.kinds.flatMap((kind) => {
    const demand = Math.min(kind.demand, left);
    left -= demand;
    return demand > 0 ? [{ ...kind, demand }] : [];
  });
  return { ...job, kinds };
}
