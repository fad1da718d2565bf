/** A small group of cloth, made up for tests: a bolt with squaring, a piece of the same cloth, one kind of blank. */
import type { Blank, Group } from '../../src/cutting/cut-list.ts';
import type { Item } from '../../src/draw/display-list.ts';
import type { LayoutAnswer, Placement } from '../../src/plan/layout-job.ts';
import type { Cloth } from '../../src/quilt/quilt.ts';

export const bolt: Cloth = { id: 'bolt', name: 'Bolt', colour: '#86a85a', print: 'one-way', width: 10, step: 4 };

const outline = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
] as const;

const blank: Blank = {
  id: 'A1 mirrored',
  role: 'leaf',
  demand: 8,
  spares: 0,
  shapes: [{ kind: 'box', outline }],
  patch: outline,
  finishedArea: 6,
  sewnArea: 9,
  uses: [],
  directional: true,
  joined: null,
};

export const group: Group = {
  id: 'bolt',
  cloths: ['bolt'],
  job: {
    method: 'strips',
    cloths: [
      { id: 'bolt', width: 10, length: null, step: 4, squaring: 1 },
      { id: 'bolt/rest', width: 10, length: 3, count: 2 },
    ],
    blanks: [{ id: 'A1 mirrored', demand: 8, outline }],
  },
  blanks: [blank],
  lengths: [
    { id: 'bolt', cloth: 'bolt', piece: null },
    { id: 'bolt/rest', cloth: 'bolt', piece: 'rest' },
  ],
};

const at = (x: number, y: number): Placement => ({ blank: 'A1 mirrored', shape: 0, turn: 0, mirror: false, x, y });

export const stripAnswer: LayoutAnswer = {
  status: 'feasible',
  cost: 12,
  bound: 8,
  boundFrom: 'a test',
  seconds: 0,
  unplaced: [],
  layouts: [
    {
      cloth: 'bolt',
      count: 1,
      length: 4,
      firstCut: 'across',
      strips: [
        { from: 0, height: 1 },
        { from: 1, height: 3 },
      ],
      placements: [at(0, 1), at(4, 1)],
    },
    { cloth: 'bolt', count: 2, length: 3, strips: [{ from: 0, height: 3 }], placements: [at(0, 0), at(4, 0)] },
    { cloth: 'bolt/rest', count: 2, length: 3, strips: [{ from: 0, height: 3 }], placements: [at(0, 0)] },
  ],
};

/** Every item of a drawing, groups and what is in them. */
export const allItems = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item) => (item.kind === 'group' ? [item, ...allItems(item.items)] : [item]));
