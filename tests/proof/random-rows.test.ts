import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import { readLayoutJobValue } from '../../src/plan/read-layout-job.ts';
import { tellFault } from '../../workers/proof/fault.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { randomPlan, strewnPlan } from './random-rows.ts';

test('a strip cut at random raises no alarm, in the proof-reader or in the outside checker', () => {
  fc.assert(
    fc.property(randomPlan, ({ job, answer }) => {
      expect(readLayoutJobValue(job)).toEqual(job);
      expect(proofread(job, answer).map(tellFault)).toEqual([]);
      expect(checkAnswer(job, answer)).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

/** Thousandths, so that small moves are well above what counts as touching. */
const shift = fc.integer({ min: -1500, max: 1500 }).map((thousandths) => thousandths / 1000);

test('of a blank moved at random the proof-reader and the outside checker say the same', () => {
  let clean = 0;
  let faulty = 0;
  fc.assert(
    fc.property(randomPlan, fc.nat(), shift, fc.oneof(fc.constant(0), shift), ({ job, answer }, which, dx, dy) => {
      const moved = moveOne(answer, which, dx, dy);
      const faults = proofread(job, moved);
      const wrong = checkAnswer(job, moved);
      if (faults.length === 0) clean += 1;
      else faulty += 1;
      expect([faults.length === 0, faults.map(tellFault), wrong]).toEqual([
        wrong.length === 0,
        expect.anything(),
        expect.anything(),
      ]);
    }),
    { numRuns: 400 },
  );
  // Both kinds must have come up, or agreeing would say little.
  expect(clean).toBeGreaterThan(5);
  expect(faulty).toBeGreaterThan(100);
});

test.each(['strips', 'shears'] as const)('of blanks strewn at random both say the same: %s', (method) => {
  const count = { clean: 0, overlap: 0, 'not cuttable': 0 };
  fc.assert(
    fc.property(strewnPlan(method), ({ job, answer }) => {
      const faults = proofread(job, answer);
      const wrong = checkAnswer(job, answer);
      expect([faults.length === 0, faults, wrong]).toEqual([wrong.length === 0, expect.anything(), expect.anything()]);
      const what = faults.find((fault) => fault.what === 'overlap') ?? faults[0];
      count[(what?.what ?? 'clean') as keyof typeof count] += 1;
    }),
    { numRuns: 800 },
  );
  expect(count.clean).toBeGreaterThan(50);
  expect(count.overlap).toBeGreaterThan(50);
  if (method === 'strips') expect(count['not cuttable']).toBeGreaterThan(5);
});

test('of blanks strewn at random both say the same where they may be stacked', () => {
  const count = { clean: 0, stacked: 0, refused: 0 };
  fc.assert(
    fc.property(strewnPlan('strips'), ({ job, answer }) => {
      const faults = proofread({ ...job, stages: 3 }, answer);
      const wrong = checkAnswer({ ...job, stages: 3 }, answer);
      expect([faults.length === 0, faults, wrong]).toEqual([wrong.length === 0, expect.anything(), expect.anything()]);
      const inRows = proofread(job, answer);
      // Whatever is a plan in two stages is one in three.
      if (inRows.length === 0) expect(faults).toEqual([]);
      count[faults.length > 0 ? 'refused' : inRows.length > 0 ? 'stacked' : 'clean'] += 1;
    }),
    { numRuns: 800 },
  );
  expect(count.stacked).toBeGreaterThan(5);
  expect(count.clean).toBeGreaterThan(50);
});

test('two blanks that change places in their order only stay clean', () => {
  fc.assert(
    fc.property(randomPlan, ({ job, answer }) => {
      const layouts = answer.layouts.map((layout) => ({ ...layout, placements: [...layout.placements].reverse() }));
      expect(proofread(job, { ...answer, layouts }).map(tellFault)).toEqual([]);
    }),
    { numRuns: 50 },
  );
});

function moveOne(answer: LayoutAnswer, which: number, dx: number, dy: number): LayoutAnswer {
  const layouts = answer.layouts.map((layout) => {
    const placements = layout.placements.map((placement, index) =>
      index === which % layout.placements.length
        ? { ...placement, x: placement.x + dx, y: placement.y + dy }
        : placement,
    );
    return { ...layout, placements };
  });
  return { ...answer, layouts };
}
