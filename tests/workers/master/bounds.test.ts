/** Bounds of the linear programme and of any prices at all, against the least cost found by trying every way. */
import { describe, expect, test } from 'vitest';
import { countCuts } from '../../../workers/master/count-cuts.ts';
import { dualBound } from '../../../workers/master/dual-bound.ts';
import { generate } from '../../../workers/master/generate.ts';
import { leastSaving, roundCost } from '../../../workers/master/round-cost.ts';
import type { Programme } from '../../../workers/programme/programme.ts';
import { numbers, vectors } from '../numbers.ts';
import { leastLengths } from '../oracle/least-length.ts';
import {
  boxesOf,
  layoutJob,
  leastCost,
  lowestBoxes,
  type RectangleJob,
  rectangleJob,
} from '../oracle/rectangle-job.ts';
import { secondOpinion } from '../programme/second-opinion.ts';
import { goOn, sampleMaster, solver } from './sample-master.ts';

/** By length, without steps: then the programme's value and the cost are of one kind. */
const JOBS = Array.from({ length: 60 }, (_, i): RectangleJob => {
  const { bolt, ...job } = rectangleJob(i + 1);
  return { ...job, bolt: { width: bolt.width } };
});
const WITHOUT_STEPS = JOBS.filter((job) => job.other?.is !== 'bolt');

describe('a bound from prices', () => {
  test('is never above the least cost, whatever the prices are', () => {
    let positive = 0;
    for (const [seed, small] of WITHOUT_STEPS.entries()) {
      const master = sampleMaster(layoutJob(small));
      const draw = numbers(seed + 1);
      const least = leastCost(small);
      for (let trial = 0; trial < 3; trial++) {
        const blank = Float64Array.from(small.kinds, () => draw(0, 30) / 10);
        const worths = master.families.map((family) =>
          heightsOf(small).map((height) => ({ height, worth: mostWorth(small, family.span, height, blank) })),
        );
        const none = () => 0;
        const prices = { blank, strip: none, bare: none, cut: [], slot: none, piece: none };
        const { value } = dualBound(master, [], prices, worths);
        expect(value, `job ${seed}`).toBeLessThanOrEqual(least + 1e-6);
        if (value > least / 3) positive++;
      }
    }
    // Prices at random still bound something.
    expect(positive).toBeGreaterThan(20);
  });

  test('from the programme of all strips is that programme’s own value, which HiGHS finds too', async () => {
    for (const [seed, small] of WITHOUT_STEPS.filter((job) => !job.other).entries()) {
      const master = sampleMaster(layoutJob(small));
      const made = (await generate(master, [], goOn))!;
      expect(made.complete).toBe(true);
      const second = secondOpinion(allStrips(small), false);
      expect([seed, made.solution.value]).toEqual([seed, expect.closeTo(second.value, 5)]);
      expect([seed, made.bound]).toEqual([seed, expect.closeTo(second.value, 5)]);
      expect(made.bound).toBeLessThanOrEqual(leastCost(small) + 1e-6);
    }
  });
});

test('counts of tall strips ask for no more strips than it takes to hold what cannot lie lower', async () => {
  let cuts = 0;
  for (const [seed, small] of JOBS.filter((job) => !job.other).entries()) {
    const master = sampleMaster(layoutJob(small));
    for (const { height, least } of await countCuts(solver, master, goOn)) {
      cuts++;
      const needs = small.kinds.map((kind) => Math.min(...boxesOf(small, kind).map((way) => way.height)));
      const tall = small.kinds.map((kind, i) => (needs[i]! >= height - 1e-9 ? kind.demand : 0));
      // Each strip counts one, however tall it is.
      const strips = leastLengths(tall, (counts) =>
        lowestBoxes(small, small.bolt.width, counts) ? { height: 1 } : null,
      );
      expect(least, `job ${seed}, from ${height} on`).toBeLessThanOrEqual(strips.get(tall.join())!.length);
      expect(least).toBeGreaterThan(0);
    }
  }
  expect(cuts).toBeGreaterThan(20);
});

describe('rounding up', () => {
  test('never takes a bound beyond a cost that a plan has, nor down', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const small = rectangleJob(seed);
      const job = layoutJob(small);
      const { families } = sampleMaster(job);
      const least = leastCost(small);
      for (const part of [0.2, 0.7, 0.95, 1]) {
        const rounded = roundCost(job, families, least * part);
        expect(rounded, `job ${seed}`).toBeLessThanOrEqual(least + 1e-6);
        expect(rounded, `job ${seed}`).toBeGreaterThanOrEqual(least * part - 1e-6);
      }
    }
  });

  test('no two costs of plans differ by less than what a plan must save', () => {
    for (const [seed, small] of JOBS.filter((job) => !job.other).entries()) {
      const job = layoutJob(small);
      const saving = leastSaving(job, sampleMaster(job).families);
      const demand = small.kinds.map((kind) => kind.demand);
      const lengths = [...leastLengths(demand, (counts) => lowestBoxes(small, small.bolt.width, counts)).values()];
      const sorted = lengths.map((each) => each.length).sort((a, b) => a - b);
      for (const [i, length] of sorted.slice(1).entries()) {
        const off = length - sorted[i]!;
        expect(off < 1e-6 || off >= saving - 1e-6, `job ${seed}: ${off} against ${saving}`).toBe(true);
      }
    }
  });
});

const heightsOf = (small: RectangleJob) => [
  ...new Set(small.kinds.flatMap((kind) => boxesOf(small, kind).map((way) => way.height))),
];

/** The most that a strip of this height can be worth, by going through everything it could hold. */
function mostWorth(small: RectangleJob, span: number, height: number, values: Float64Array): number {
  let most = 0;
  for (const counts of vectors(small.kinds.map((kind) => kind.demand))) {
    const worth = counts.reduce((sum, n, i) => sum + n * values[i]!, 0);
    if (worth > most && (lowestBoxes(small, span, counts)?.height ?? Infinity) <= height + 1e-9) most = worth;
  }
  return most;
}

/** One column for everything a strip of the bolt could hold, at the least height that holds it. */
function allStrips(small: RectangleJob): Programme {
  const demand = small.kinds.map((kind) => kind.demand);
  const strips = [...vectors(demand)].flatMap((counts) => {
    const lowest = counts.some((n) => n > 0) ? lowestBoxes(small, small.bolt.width, counts) : null;
    return lowest ? [{ counts, height: lowest.height }] : [];
  });
  return {
    columns: strips.map(({ height }) => ({ cost: height, lower: 0, upper: Infinity, integer: true })),
    rows: demand.map((n, kind) => ({
      lower: n,
      upper: Infinity,
      entries: strips.flatMap(({ counts }, i) => (counts[kind]! > 0 ? [[i, counts[kind]!] as const] : [])),
    })),
  };
}
