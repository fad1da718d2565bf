import { describe, expect, test } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { type FaultKind, tellFault } from '../../workers/proof/fault.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { answer as clean, job } from './clean-plan.ts';

type Writable<T> = { -readonly [K in keyof T]: Writable<T[K]> };

function spoilt(spoil: (answer: Writable<LayoutAnswer>) => void): LayoutAnswer {
  const copy = structuredClone(clean) as Writable<LayoutAnswer>;
  spoil(copy);
  return copy;
}

test('a clean plan has no faults', () => {
  expect(proofread(job, clean).map(tellFault)).toEqual([]);
  expect(checkAnswer(job, clean)).toEqual([]);
});

test('a clean plan written as a file and read again has no faults', () => {
  expect(proofread(JSON.parse(JSON.stringify(job)), JSON.parse(JSON.stringify(clean)))).toEqual([]);
});

const bolt = 0;
const shelf = 2;
const scrap = 3;
const placement = (answer: Writable<LayoutAnswer>, layout: number, index: number) =>
  answer.layouts[layout]!.placements[index]!;

/** Each fault that a plan can have, planted into the clean one: what it is called and where it is found. */
const planted: readonly (readonly [string, FaultKind, string, (answer: Writable<LayoutAnswer>) => void])[] = [
  ['a blank moved', 'overlap', 'layouts[0].placements', (a) => void (placement(a, bolt, 2).x += 0.01)],
  ['a blank moved by hardly anything', 'overlap', 'layouts[0]', (a) => void (placement(a, bolt, 2).x += 3e-5)],
  ['two blanks in one place', 'overlap', 'layouts[1]', (a) => void (placement(a, 1, 1).x = 0)],
  [
    'a blank beyond the selvage',
    'outside the cloth',
    'layouts[1].placements[3]',
    (a) => void (placement(a, 1, 3).x = 10),
  ],
  [
    'a blank before the cut end',
    'outside the cloth',
    'layouts[2].placements[0]',
    (a) => void (placement(a, 2, 0).y = -1),
  ],
  [
    'a blank out of its strip',
    'outside its strip',
    'layouts[0].placements[4]',
    (a) => void (placement(a, 0, 4).y = 0.4),
  ],
  ['a blank turned', 'turn', 'layouts[0].placements[0]', (a) => void (placement(a, bolt, 0).turn = 10)],
  [
    'a turn inside an interval that lays no edge square',
    'turn',
    'layouts[0].placements[1]',
    (a) => void (placement(a, bolt, 1).turn = 182),
  ],
  [
    'a turn of another cloth',
    'turn',
    'layouts[1].placements[0]',
    (a) => Object.assign(placement(a, 1, 0), { turn: 90, x: 3 }),
  ],
  [
    'a blank turned over',
    'turned over',
    'layouts[1].placements[0]',
    (a) => Object.assign(placement(a, 1, 0), { mirror: true, x: 3 }),
  ],
  [
    'a blank turned over where another cloth would let it',
    'turned over',
    'layouts[3].placements[0]',
    (a) => Object.assign(placement(a, scrap, 0), { mirror: true, x: 2 }),
  ],
  ['a blank missing', 'demand', 'layouts', (a) => void a.layouts[1]!.placements.pop()],
  [
    'a blank too many',
    'demand',
    'layouts',
    (a) => void a.layouts[shelf]!.placements.push({ ...placement(a, shelf, 1), y: 6 }),
  ],
  ['a layout cut once more', 'demand', 'layouts', (a) => void (a.layouts[1]!.count = 2)],
  ['a piece overdrawn', 'overdrawn', 'layouts', (a) => void (a.layouts[shelf]!.count = 3)],
  [
    'a blank on a cloth it may not come from',
    'cloth',
    'layouts[3].placements[0]',
    (a) => {
      placement(a, scrap, 0).blank = 'wedge';
    },
  ],
  [
    'a blank that nobody asked for',
    'malformed',
    'layouts[1].placements[0]',
    (a) => {
      placement(a, 1, 0).blank = 'sleeve';
    },
  ],
  [
    'a shape that is not there',
    'malformed',
    'layouts[3].placements[2]',
    (a) => void (placement(a, scrap, 2).shape = 2),
  ],
  [
    'a place that is no number',
    'malformed',
    'layouts[1].placements[0]',
    (a) => void (placement(a, 1, 0).x = Number.NaN),
  ],
  ['a cloth that is not there', 'malformed', 'layouts[1]', (a) => void (a.layouts[1]!.cloth = 'silk')],
  ['a layout cut half a time', 'malformed', 'layouts[1].count', (a) => void (a.layouts[1]!.count = 0.5)],
  ['a layout without length', 'malformed', 'layouts[1].length', (a) => void (a.layouts[1]!.length = 0)],
  [
    'a layout shorter than its blanks',
    'outside the cloth',
    'layouts[1].placements[0]',
    (a) => {
      a.layouts[1]!.length = 2.9;
    },
  ],
  [
    'a layout longer than its piece',
    'outside the cloth',
    'layouts[2].length',
    (a) => void (a.layouts[2]!.length = 10.1),
  ],
  ['strips that run the wrong way', 'first cut', 'layouts[1].firstCut', (a) => void (a.layouts[1]!.firstCut = 'along')],
  ['no strips', 'strip', 'layouts[3].strips', (a) => void delete a.layouts[scrap]!.strips],
  [
    'a strip that begins in another',
    'strip',
    'layouts[3].strips[1]',
    (a) => {
      a.layouts[scrap]!.strips![1]!.from = 1.9;
    },
  ],
  ['strips out of order', 'strip', 'layouts[3].strips[1]', (a) => void a.layouts[scrap]!.strips!.reverse()],
  [
    'a strip beyond the cloth',
    'strip',
    'layouts[2].strips[1]',
    (a) => {
      a.layouts[shelf]!.strips![1]!.height = 5;
    },
  ],
  [
    'a strip that is missing',
    'outside its strip',
    'layouts[3].placements[0]',
    (a) => {
      a.layouts[scrap]!.strips!.shift();
    },
  ],
  [
    'a strip of no blank’s height',
    'strip height',
    'layouts[3].strips[1]',
    (a) => {
      a.layouts[scrap]!.strips![1]!.height = 2.5;
    },
  ],
  [
    'blanks stacked in a strip',
    'not cuttable',
    'layouts[2].strips[1]',
    (a) => {
      Object.assign(placement(a, shelf, 3), { x: 4, y: 0.5 });
    },
  ],
  ['an end that is not squared', 'squaring', 'layouts', (a) => void a.layouts[bolt]!.strips!.shift()],
  ['an end squared too little', 'squaring', 'layouts', (a) => void (a.layouts[bolt]!.strips![0]!.height = 0.25)],
  ['too little money', 'money', 'cost', (a) => void (a.cost -= 0.01)],
  ['too much money', 'money', 'cost', (a) => void (a.cost += 9)],
  ['a step that was not paid for', 'money', 'cost', (a) => void (a.layouts[1]!.length = 4.6)],
  ['a bound above the cost', 'proof', 'bound', (a) => void (a.bound = 26)],
  ['no bound', 'proof', 'bound', (a) => void (a.bound = null)],
  ['a bound that is no number', 'proof', 'bound', (a) => void (a.bound = Number.NaN)],
  ['best without proof', 'proof', 'status', (a) => void (a.status = 'optimal')],
  ['proved, but not said to be', 'proof', 'status', (a) => void (a.bound = a.cost)],
  ['partial with nothing unplaced', 'proof', 'status', (a) => void (a.status = 'partial')],
  [
    'something unplaced that was placed',
    'demand',
    'layouts',
    (a) => {
      a.unplaced.push({ blank: 'square', count: 1, why: 'too wide' });
    },
  ],
  [
    'something unplaced in a plan that says it is whole',
    'proof',
    'status',
    (a) => {
      a.layouts[1]!.placements.pop();
      a.unplaced.push({ blank: 'square', count: 1, why: 'too wide' });
    },
  ],
  [
    'half a blank unplaced',
    'malformed',
    'unplaced[0]',
    (a) => {
      a.unplaced.push({ blank: 'square', count: 0.5, why: 'too wide' });
    },
  ],
  [
    'a stranger unplaced',
    'malformed',
    'unplaced[0]',
    (a) => {
      a.unplaced.push({ blank: 'sleeve', count: 1, why: 'too wide' });
    },
  ],
];

describe('each planted fault is caught, by the proof-reader and by the outside checker', () => {
  test.each(planted)('%s', (_, what, where, spoil) => {
    const answer = spoilt(spoil);
    const faults = proofread(job, answer);
    expect(faults.filter((fault) => fault.what === what && fault.where.startsWith(where))).not.toEqual([]);
    expect(checkAnswer(job, answer)).not.toEqual([]);
  });
});

describe('what lies within the tolerance is touching, and clean', () => {
  test.each([
    ['a blank over its neighbour', (a: Writable<LayoutAnswer>) => void (placement(a, bolt, 2).x += 1e-6)],
    ['a blank over the selvage', (a: Writable<LayoutAnswer>) => void (placement(a, shelf, 0).x -= 5e-6)],
    ['a sum of money', (a: Writable<LayoutAnswer>) => void (a.cost += 5e-7)],
    ['a length over a whole step', (a: Writable<LayoutAnswer>) => void (a.layouts[1]!.length = 4.5 + 4e-6)],
    ['a whole turn more', (a: Writable<LayoutAnswer>) => void (placement(a, bolt, 1).turn -= 360)],
  ])('%s', (_, spoil) => {
    expect(proofread(job, spoilt(spoil)).map(tellFault)).toEqual([]);
    expect(checkAnswer(job, spoilt(spoil))).toEqual([]);
  });
});

test('a partial plan is clean when it says what is left out and why, and claims no bound', () => {
  const answer = spoilt((a) => {
    a.layouts[1]!.placements.pop();
    a.unplaced.push({ blank: 'square', count: 1, why: 'there is no room' });
    a.status = 'partial';
    a.bound = null;
  });
  expect(proofread(job, answer).map(tellFault)).toEqual([]);
  expect(checkAnswer(job, answer)).toEqual([]);
});

test('a fault is told with its place and its size', () => {
  const faults = proofread(
    job,
    spoilt((a) => void (placement(a, 1, 3).x = 10)),
  );
  expect(faults.map(tellFault)).toContain('layouts[1].placements[3]: outside the cloth: by 1 (cloth 12 wide, 3 long)');
});

test('with a ruler strips are whole multiples of it and with none they are not', () => {
  const withRuler = (ruler: number): LayoutJob => ({ ...job, ruler });
  expect(proofread(withRuler(0.5), clean).map(tellFault)).toEqual([]);
  expect(proofread(withRuler(0.8), clean).filter((fault) => fault.what === 'strip height').length).toBeGreaterThan(3);
});

test('a bolt cut along is squared by an empty length of its own', () => {
  const along: LayoutJob = {
    method: 'strips',
    cloths: [{ id: 'bolt', width: 3, firstCut: 'along', squaring: 0.5 }],
    blanks: [{ ...job.blanks[0]!, demand: 1, cloths: ['bolt'] }],
  };
  const plan = (squared: number): LayoutAnswer => ({
    ...clean,
    cost: 3 + squared,
    bound: 1,
    layouts: [
      { cloth: 'bolt', count: 1, length: squared, firstCut: 'along', strips: [{ from: 0, height: 3 }], placements: [] },
      { ...clean.layouts[1]!, firstCut: 'along', placements: clean.layouts[1]!.placements.slice(0, 1) },
    ],
  });
  expect(proofread(along, plan(0.5)).map(tellFault)).toEqual([]);
  expect(checkAnswer(along, plan(0.5))).toEqual([]);
  expect(proofread(along, plan(0.25)).map((fault) => fault.what)).toEqual(['squaring']);
  expect(checkAnswer(along, plan(0.25))).not.toEqual([]);
});

test('a plan of rows is a plan of three stages too', () => {
  expect(proofread({ ...job, stages: 3 }, clean).map(tellFault)).toEqual([]);
  expect(checkAnswer({ ...job, stages: 3 }, clean)).toEqual([]);
});

describe('with shears', () => {
  const ell = job.blanks[2]!;
  const shears: LayoutJob = {
    method: 'shears',
    cloths: [{ id: 'bolt', width: 4, length: null }],
    blanks: [{ ...ell, demand: 2, turns: [{ centre: 180, within: 10 }, 0], cloths: ['bolt'] }],
  };
  const nested = (x: number, turn = 180): LayoutAnswer => ({
    status: 'optimal',
    cost: 3,
    bound: 3,
    boundFrom: 'reckoned by hand',
    seconds: 0,
    layouts: [
      {
        cloth: 'bolt',
        count: 1,
        length: 3,
        placements: [
          { blank: 'ell', shape: 0, turn: 0, mirror: false, x: 1, y: 0 },
          { blank: 'ell', shape: 0, turn, mirror: false, x, y: 3 },
        ],
      },
    ],
    unplaced: [],
  });

  test('a blank may lie in the notch of another, which straight cuts could not do', () => {
    expect(proofread(shears, nested(3)).map(tellFault)).toEqual([]);
    expect(checkAnswer(shears, nested(3))).toEqual([]);
  });

  test('a blank over the notch is caught', () => {
    expect(proofread(shears, nested(2.9)).map((fault) => fault.what)).toEqual(['overlap']);
    expect(checkAnswer(shears, nested(2.9))).not.toEqual([]);
  });

  test('every turn inside an interval is allowed', () => {
    const tilted = (turn: number) => proofread(shears, nested(3.9, turn)).filter((fault) => fault.what === 'turn');
    expect(tilted(187)).toEqual([]);
    expect(tilted(191)).toHaveLength(1);
  });

  test('strips have no business there', () => {
    const answer = nested(3);
    const layouts = answer.layouts.map((layout) => ({ ...layout, strips: [{ from: 0, height: 3 }] }));
    expect(proofread(shears, { ...answer, layouts }).map((fault) => fault.what)).toEqual(['strip']);
  });
});
