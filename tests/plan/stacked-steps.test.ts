/** Stacks as ruler work: a square cut ends the segment, cuts along it part the blanks, each is trimmed to its size. */
import { expect, test } from 'vitest';
import { alike } from '../../src/plan/alike-strips.ts';
import type { LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { makeCutSteps } from '../../src/plan/make-cut-steps.ts';
import { sayLayer, stacksAlike, withStacksTogether } from '../../src/plan/say-stack.ts';
import type { Polygon } from '../../src/shape/point.ts';

const rectangle = (w: number, h: number): Polygon => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];
const OUTLINES: Readonly<Record<string, Polygon>> = {
  plank: rectangle(4, 2),
  square: rectangle(2, 2),
  wedge: [
    [0, 0],
    [4, 0],
    [3, 6],
    [1, 6],
  ],
};

type Lying = readonly [blank: string, x: number, y: number, turn?: number];

function stepsOf(lying: readonly Lying[], job: Partial<LayoutJob> = {}) {
  const blanks = Object.entries(OUTLINES).map(([id, outline]) => ({
    id,
    outline,
    demand: lying.filter(([blank]) => blank === id).length,
    turns: [0, 180],
  }));
  const whole: LayoutJob = {
    method: 'strips',
    stages: 3,
    ruler: 0.5,
    cloths: [{ id: 'bolt', width: 20 }],
    blanks,
    ...job,
  };
  const answer: LayoutAnswer = {
    status: 'feasible',
    cost: 6,
    bound: 1,
    boundFrom: 'area',
    seconds: 0,
    unplaced: [],
    layouts: [
      {
        cloth: 'bolt',
        count: 1,
        length: 6,
        strips: [{ from: 0, height: 6 }],
        placements: lying.map(([blank, x, y, turn = 0]): Placement => ({ blank, shape: 0, turn, mirror: false, x, y })),
      },
    ],
  };
  return makeCutSteps(whole, answer);
}

/** A stack, two wedges head to tail, a stack that does not reach the far edge. */
const MIXED: readonly Lying[] = [
  ['plank', 0, 4],
  ['wedge', 4, 0],
  ['square', 11.125, 2.25],
  ['square', 0.5, 2],
  ['wedge', 11, 6, 180],
  ['plank', 0, 0],
  ['square', 11, 0],
];

test('a stack comes from the near edge up, between square cuts; rows beside it are cut as ever', () => {
  const [strip] = stepsOf(MIXED);
  expect(strip!.pieces.map(({ blank, near, far, stack }) => [blank, near, far, stack?.layer, stack?.of])).toEqual([
    ['plank', 4, 4, 1, 3],
    ['square', 4, 4, 2, 3],
    ['plank', 4, 4, 3, 3],
    ['wedge', 8, 7, undefined, undefined],
    ['wedge', 11, 11, undefined, undefined],
    ['square', 13.5, 13.5, 1, 2],
    ['square', 13.5, 13.5, 2, 2],
  ]);
  expect(strip!.left).toBeCloseTo(6.5, 9);
});

test('cuts along a stack stand on the ruler where there is a mark between two blanks', () => {
  const [strip] = stepsOf(MIXED);
  const told = strip!.pieces.flatMap(({ stack }) => (stack ? [[stack.from, stack.low, stack.high, stack.width]] : []));
  expect(told).toEqual([
    [0, 0, 2, 4],
    [0, 2, 4, 2],
    [0, 4, 6, 4],
    [11, 0, 2, 2],
    [11, 2, 4.5, 2],
  ]);
  expect(strip!.pieces.map((piece) => (piece.stack ? sayLayer(piece, 6, String) : ''))).toEqual([
    'along at 2: plank, trim to 4 × 2',
    'along at 4: square, trim to 2 × 2',
    'to the far edge: plank, trim to 4 × 2',
    '',
    '',
    'along at 2: square, trim to 2 × 2',
    'along at 4.5: square, trim to 2 × 2',
  ]);
});

test('in two stages the same blanks are no row, and say so', () => {
  expect(() => stepsOf(MIXED, { stages: 2 })).toThrow(/cannot be parted/);
});

test('a plan without stacks is told the same in two stages and in three', () => {
  const row: readonly Lying[] = [
    ['wedge', 0, 0],
    ['wedge', 7, 6, 180],
    ['square', 7, 0],
    ['plank', 9, 3],
  ];
  expect(stepsOf(row)).toEqual(stepsOf(row, { stages: 2 }));
});

test('stacks are alike wherever they lie along the strip, and strips only where their stacks are', () => {
  const stack = (x: number): readonly Lying[] => [
    ['plank', x, 0],
    ['square', x, 2],
  ];
  const [strip] = stepsOf([...stack(0), ...stack(4), ['plank', 8, 0], ['square', 8, 3]]);
  const [a, b, c] = withStacksTogether(strip!.pieces);
  expect([a, b, c].map((own) => own!.length)).toEqual([2, 2, 2]);
  expect([stacksAlike(a!, b!), stacksAlike(a!, c!)]).toEqual([true, false]);
  const other = stepsOf([...stack(0), ['square', 4, 0], ['plank', 4, 2]]);
  const same = stepsOf([...stack(0), ...stack(4)]);
  expect([same, other].map(([strip]) => alike(same[0]!, strip!))).toEqual([true, false]);
});
