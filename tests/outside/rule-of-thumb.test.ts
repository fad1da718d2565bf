/** The rule of thumb as quilters publish it and as others reckon it; each of its plans is read by both readers. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { LayoutJob, Turns } from '../../src/plan/layout-job.ts';
import { readLayoutJobValue } from '../../src/plan/read-layout-job.ts';
import { ruleOfThumb } from '../../src/plan/rule-of-thumb.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { rectangle } from './engine.ts';

function byRule(job: LayoutJob) {
  const answer = ruleOfThumb(readLayoutJobValue(job));
  expect(proofread(job, answer)).toEqual([]);
  expect(checkAnswer(job, answer)).toEqual([]);
  return answer;
}

const cut = (width: number, blank: readonly [number, number], demand: number, turns: Turns = [0]) =>
  byRule({
    method: 'strips',
    cloths: [{ id: 'cloth', width }],
    blanks: [{ id: 'blank', outline: rectangle(...blank), demand, turns }],
  });

test.each([
  // quiltingboard.com/6228687, read: 63 squares of 9 1/2 in from 42 in, 16 strips, 152 in.
  [42, [9.5, 9.5], 63, [0], 16, 152],
  // patchworktimes.com/2011/11/12, read: 12 squares of 4 1/2 in from 40 in, 2 strips, 9 in.
  [40, [4.5, 4.5], 12, [0], 2, 9],
  // The same, read: 48 of 2 1/2 by 4 1/2 in from 40 in, 15 in one way and 13 1/2 turned.
  [40, [4.5, 2.5], 48, [0], 6, 15],
  [40, [4.5, 2.5], 48, [0, 90], 3, 13.5],
  // chocolatecakequiltdesigns.wordpress.com/2013/05/18, read: 40 of 2 1/2 by 12 1/2 in from 40 in, 14 strips lying, 35 in;
  // standing 37 1/2 in.
  [40, [12.5, 2.5], 40, [0], 14, 35],
  [40, [2.5, 12.5], 40, [0], 3, 37.5],
] as const)('from %d in, %j × %d at turns %j', (width, blank, demand, turns, strips, length) => {
  const answer = cut(width, blank, demand, turns);
  expect(answer.layouts[0]!.strips).toHaveLength(strips);
  expect(answer.cost).toBeCloseTo(length, 9);
});

test.each([
  [39, 2, 342],
  [40, 2.5, 224],
  [42, 3.5, 120],
  [41, 4.5, 72],
  [42, 10, 12],
  [40, 9.5, 12],
])(
  'the squares that a yard gives by the table are what the rule cuts from a yard: %d in wide, %d in',
  (width, side, count) => {
    // alandacraft.com/2020/03/22, read.
    expect(cut(width, [side, side], count).cost).toBeLessThanOrEqual(36 + 1e-9);
    expect(cut(width, [side, side], count + 1).cost).toBeGreaterThan(36 + 1e-9);
  },
);

const RINGS = fileURLToPath(new URL('../../../shared/benchmarks/make-rings.mjs', import.meta.url));

test('two hundred ring quilts: what another reckons for each', async ({ skip }) => {
  if (!existsSync(RINGS)) skip(`there is no ${RINGS}`);
  const { ringsJob } = (await import(RINGS)) as { ringsJob: (seed: number) => LayoutJob & { ruleOfThumb: number } };
  for (let seed = 1; seed <= 200; seed++) {
    const { ruleOfThumb: reckoned, ...job } = ringsJob(seed);
    const answer = ruleOfThumb(job);
    expect(answer.cost, `seed ${seed}`).toBeCloseTo(reckoned, 6);
    if (seed % 10 === 0) {
      expect(proofread(job, answer), `seed ${seed}`).toEqual([]);
    }
  }
});
