/** Three stages: rows and stacks between square cuts pass, anything beyond that does not, with the proof-reader or with the checker. */
import { describe, expect, test } from 'vitest';
import type { LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { tellFault } from '../../workers/proof/fault.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';

const box = (width: number, height: number) =>
  [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;

const OUTLINES = {
  tall: box(3, 6),
  plank: box(4, 2),
  post: box(2, 4),
  square: box(2, 2),
  wedge: [
    [0, 0],
    [4, 0],
    [3, 6],
    [1, 6],
  ],
  roof: [
    [0, 0],
    [4, 0],
    [2, 2],
  ],
} as const;

type Lying = readonly [name: keyof typeof OUTLINES, x: number, y: number, turn?: number];

/** A strip 6 high on cloth 20 wide, holding these. */
function plan(lying: readonly Lying[], more: Partial<LayoutJob> = {}, height = 6): [LayoutJob, LayoutAnswer] {
  const blanks = [...new Set(lying.map(([name]) => name))].map((id) => ({
    id,
    outline: OUTLINES[id],
    demand: lying.filter(([name]) => name === id).length,
    turns: [0, 180],
  }));
  const placements = lying.map(
    ([blank, x, y, turn = 0]): Placement => ({ blank, shape: 0, turn, mirror: false, x, y }),
  );
  const layout = { cloth: 'bolt', count: 1, length: height, strips: [{ from: 0, height }], placements } as const;
  return [
    { method: 'strips', stages: 3, ruler: 0.5, cloths: [{ id: 'bolt', width: 20 }], blanks, ...more },
    { status: 'feasible', cost: height, bound: 1, boundFrom: 'area', seconds: 0, layouts: [layout], unplaced: [] },
  ];
}

const faults = ([job, answer]: [LayoutJob, LayoutAnswer]) => {
  const told = proofread(job, answer).map(tellFault);
  expect([told, checkAnswer(job, answer).length > 0]).toEqual([expect.anything(), told.length > 0]);
  return told;
};

const CLEAN: readonly Lying[] = [
  ['tall', 0, 0],
  ['plank', 3, 0],
  ['square', 3.5, 2],
  ['plank', 3, 4],
  ['wedge', 7, 0],
  ['wedge', 14, 6, 180],
  ['roof', 14, 0],
  ['roof', 14, 2],
  ['roof', 14, 4],
];

describe('what a strip of three stages may hold', () => {
  test('a stack, a row of wedges head to tail, a stack of roofs', () => {
    expect(faults(plan(CLEAN))).toEqual([]);
  });

  test('the same is no plan of two stages', () => {
    expect(faults(plan(CLEAN, { stages: 2 }))[0]).toContain('not cuttable');
  });

  test('stacks right across the strip, one touching the other', () => {
    const stacks = [0, 4, 8, 12, 16].flatMap((x): Lying[] => [0, 2, 4].map((y) => ['plank', x, y] as const));
    expect(faults(plan(stacks))).toEqual([]);
  });

  test('wedges that need all of what is left between two square cuts', () => {
    expect(
      faults(
        plan([
          ['square', 0, 0],
          ['square', 0, 2],
          ['wedge', 2, 0],
          ['wedge', 9, 6, 180],
          ['square', 9, 0],
          ['square', 9, 2],
        ]),
      ),
    ).toEqual([]);
  });
});

/** Absent: a file that says `undefined` cannot be written. */
const NONE = undefined as unknown as number;

type Planted = [string, RegExp, readonly Lying[], Partial<LayoutJob>?, number?];
const PLANTED: Planted[] = [
  [
    'two blanks side by side in one layer of a stack',
    /not cuttable/,
    [
      ['plank', 0, 0],
      ['square', 0, 2],
      ['square', 2, 2],
    ],
  ],
  [
    'a pinwheel',
    /not cuttable/,
    [
      ['plank', 0, 0],
      ['post', 4, 0],
      ['plank', 2, 4],
      ['post', 0, 2],
    ],
  ],
  [
    'a stack between slanted cuts',
    /not cuttable/,
    [
      ['wedge', 0, 0],
      ['square', 4, 0],
      ['square', 3.7, 2],
      ['wedge', 6, 0],
    ],
  ],
  [
    'boxes in a stack that overlap where the blanks do not',
    /not cuttable/,
    [
      ['plank', 0, 4],
      ['roof', 0, 0],
      ['roof', 2, 3.5, 180],
      ['roof', 4, 0],
    ],
  ],
  [
    'a blank that stands into the next segment',
    /not cuttable/,
    [
      ['square', 0, 0],
      ['plank', 0, 2],
      ['square', 2.5, 0],
      ['plank', 4.5, 2],
      ['square', 4.5, 0],
    ],
  ],
  [
    'a stack taller than its strip',
    /outside its strip/,
    [
      ['plank', 0, 0],
      ['plank', 0, 2],
      ['square', 0, 4.5],
    ],
  ],
  ['a strip off the ruler', /strip height/, [['tall', 0, 0]], {}, 6.25],
  [
    'without a ruler, a strip as tall as a stack but as no blank',
    /strip height/,
    [
      ['plank', 0, 0],
      ['plank', 0, 2],
    ],
    { ruler: NONE },
    4,
  ],
];

test.each<Planted>(PLANTED)('%s is refused', (_, what, lying, more = {}, height = 6) => {
  const told = faults(plan(lying, more, height));
  expect(
    told.some((fault) => what.test(fault)),
    told.join('; '),
  ).toBe(true);
  expect(
    told.some((fault) => /overlap/.test(fault)),
    told.join('; '),
  ).toBe(false);
});
