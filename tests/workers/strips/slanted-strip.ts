/** Strips of small seeded slanted jobs, and what rows of them can hold or be worth, tried one by one without the engine. */
import { expect } from 'vitest';
import { makeFamily, passingGraphAt } from '../../../workers/strips/family.ts';
import { layRow } from '../../../workers/strips/lay-row.ts';
import type { RowStep } from '../../../workers/strips/row-graph.ts';
import { numbers, vectors } from '../numbers.ts';
import { listedSlants, lowestListed } from '../oracle/listed-rows.ts';
import { layoutJob, slantedJob } from '../oracle/slanted-job.ts';
import { waysToLie } from '../oracle/slanted-rows.ts';

/** A family of strips, what blanks are worth, and whether so many of each go into one row. */
export function slantedFamily(seed: number, ruler?: number) {
  const drawn = slantedJob(seed);
  const small = ruler === undefined ? drawn : { ...drawn, ruler };
  const job = layoutJob(small);
  const draw = numbers(seed + 1000);
  const ways = waysToLie(small.kinds);
  const raised = Math.max(...ways.map((way) => way.height)) + (small.ruler === undefined ? 0 : draw(0, 4) / 4);
  const family = makeFamily(job, 0, { along: false, span: small.width, stack: null, segment: null });
  const values = Float64Array.from(job.blanks, () => draw(1, 40) / 8);
  const demand = Int32Array.from(job.blanks, (blank) => blank.demand);
  const slants = listedSlants(ways);
  const holds = (height: number, counts: readonly number[]) =>
    lowestListed({ width: small.width, ways, heights: [height] }, slants, counts) !== null;
  /** Every vector of counts that some row holds. */
  const rowsAt = (height: number) => [...vectors([...demand])].filter((counts) => holds(height, counts));
  return { seed, small, job, draw, family, values, demand, raised, holds, rowsAt };
}

/** A strip to be filled, and the most that a row of it can be worth. */
export function slantedCase(seed: number) {
  const { family, values, demand, raised: height, rowsAt } = slantedFamily(seed);
  const graph = passingGraphAt(family, height);
  return { seed, graph, values, demand, height, span: family.span, best: mostWorth(rowsAt(height), values) };
}

export const worthOf = (counts: readonly number[], values: Float64Array): number =>
  counts.reduce((sum, n, i) => sum + n * values[i]!, 0);

export const mostWorth = (rows: readonly (readonly number[])[], values: Float64Array): number =>
  rows.reduce((most, counts) => Math.max(most, worthOf(counts, values)), 0);

/** By blank, how many the row holds. */
export const countsIn = (steps: readonly RowStep[], demand: Int32Array): readonly number[] =>
  [...demand].map((_, blank) => steps.filter((step) => step.variant.blank === blank).length);

export interface StripAsked {
  readonly seed: number;
  readonly values: Float64Array;
  readonly demand: Int32Array;
  readonly height: number;
  readonly span: number;
}

/** That the row goes into the strip, holds no more than is wanted, and is worth what is said. */
export function expectFits(
  steps: readonly RowStep[],
  { seed, values, demand, height, span }: StripAsked,
  value: number,
): void {
  const row = layRow(steps, height);
  expect(row.length, `seed ${seed}`).toBeLessThanOrEqual(span * (1 + 1e-7));
  const counts = countsIn(steps, demand);
  expect(
    counts.every((n, blank) => n <= demand[blank]!),
    `seed ${seed}: ${counts}`,
  ).toBe(true);
  expect(worthOf(counts, values)).toBeCloseTo(value, 7);
}
