import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inCuttingOrder } from '../../src/plan/cutting-order.ts';
import type { LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { randomPlan } from '../proof/random-rows.ts';
import { groupOf, use } from './cut-group.ts';

const box = (width: number, height: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
const at = (blank: string, x: number, y: number): Placement => ({ blank, shape: 0, turn: 0, mirror: false, x, y });

/** Four strips on a bolt 10 wide: low, tall, low, tall; blocks y, x, x, y. */
function fourStrips(step: number): { job: LayoutJob; answer: LayoutAnswer } {
  const job: LayoutJob = {
    method: 'strips',
    ruler: 0.5,
    cloths: [{ id: 'bolt', width: 10, step, squaring: 1 }],
    blanks: [
      { id: 'lowY', outline: box(7, 2), demand: 1 },
      { id: 'tallX', outline: box(7, 4), demand: 1 },
      { id: 'lowX', outline: box(7, 2), demand: 1 },
      { id: 'tallY', outline: box(7, 4), demand: 1 },
    ],
  };
  const heights = [1, 2, 4, 2, 4];
  const froms = [0, 1, 3, 7, 9];
  const cost = Math.ceil(13 / step) * step;
  const layout = {
    cloth: 'bolt',
    count: 1,
    length: 13,
    firstCut: 'across' as const,
    strips: froms.map((from, i) => ({ from, height: heights[i]! })),
    placements: [at('lowY', 0, 1), at('tallX', 0, 3), at('lowX', 0, 7), at('tallY', 0, 9)],
  };
  return {
    job,
    answer: { status: 'feasible', cost, bound: 0, boundFrom: '', seconds: 0, layouts: [layout], unplaced: [] },
  };
}

const uses = { lowX: [use('x')], tallX: [use('x')], lowY: [use('y')], tallY: [use('y')] };
const order = ({ layouts }: LayoutAnswer) => layouts[0]!.placements.map(({ blank }) => blank);

describe('strips in the order of cutting', () => {
  test('the tallest come first where nothing is left to cut one again', () => {
    const { job, answer } = fourStrips(13);
    expect(order(inCuttingOrder(groupOf(job, uses), answer))).toEqual(['tallX', 'tallY', 'lowX', 'lowY']);
  });

  test('a block’s come together where the tallest could be cut again from what is left', () => {
    const { job, answer } = fourStrips(17);
    const found = inCuttingOrder(groupOf(job, uses), answer);
    expect(order(found)).toEqual(['tallX', 'lowX', 'tallY', 'lowY']);
    expect(found.layouts[0]!.strips).toEqual([
      { from: 0, height: 1 },
      { from: 1, height: 4 },
      { from: 5, height: 2 },
      { from: 7, height: 4 },
      { from: 11, height: 2 },
    ]);
  });

  test('what two blocks share is cut between them', () => {
    const { job, answer } = fourStrips(17);
    const shared = { ...uses, lowX: [use('x'), use('y')] };
    expect(order(inCuttingOrder(groupOf(job, shared), answer))).toEqual(['tallX', 'lowX', 'tallY', 'lowY']);
  });

  test('the proof-reader passes them, and nothing is cut twice or forgotten', () => {
    fc.assert(
      fc.property(randomPlan, ({ job, answer }) => {
        const found = inCuttingOrder(groupOf(job), answer);
        expect(proofread(job, found)).toEqual([]);
        const names = (each: LayoutAnswer) => each.layouts.flatMap((l) => l.placements.map((p) => p.blank)).sort();
        expect(names(found)).toEqual(names(answer));
        expect(found.layouts.map((l) => l.length)).toEqual(answer.layouts.map((l) => l.length));
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('a row', () => {
  const job: LayoutJob = {
    method: 'strips',
    ruler: 0.5,
    cloths: [{ id: 'bolt', width: 20 }],
    blanks: [
      { id: 'short', outline: box(2, 3), demand: 2 },
      { id: 'long', outline: box(5, 3), demand: 1 },
    ],
  };
  const answer: LayoutAnswer = {
    status: 'feasible',
    cost: 3,
    bound: 0,
    boundFrom: '',
    seconds: 0,
    unplaced: [],
    layouts: [
      {
        cloth: 'bolt',
        count: 1,
        length: 3,
        firstCut: 'across',
        strips: [{ from: 0, height: 3 }],
        placements: [at('short', 0, 0), at('long', 2, 0), at('short', 7, 0)],
      },
    ],
  };

  test('begins with its longest blanks, those alike together, and is told the same when it is told again', () => {
    const found = inCuttingOrder(groupOf(job), answer);
    expect(found.layouts[0]!.placements.map(({ blank, x }) => [blank, x])).toEqual([
      ['long', 0],
      ['short', 5],
      ['short', 7],
    ]);
    expect(inCuttingOrder(groupOf(job), found).layouts).toEqual(found.layouts);
  });
});
