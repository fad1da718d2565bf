/** A clean plan made by hand, rich enough that every rule has something to hold. */
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';

/**
 * Squares, a wedge that nests head to tail, an L that is cut as its hull, and a blank of two shapes, from a bolt that is
 * sold by 4.5 and squared, from shelf pieces cut along or across, and from scraps of which there are as many as wanted.
 */
export const job: LayoutJob = {
  method: 'strips',
  cloths: [
    { id: 'bolt', width: 12, length: null, step: 4.5, cost: 2, squaring: 0.5 },
    { id: 'shelf', width: 6, length: 10, count: 2, cost: 1, firstCut: 'either' },
    { id: 'scrap', width: 5, length: 5, count: null },
  ],
  blanks: [
    {
      id: 'square',
      outline: [
        [0, 0],
        [3, 0],
        [3, 3],
        [0, 3],
      ],
      demand: 8,
      cloths: ['bolt', { id: 'shelf', turns: 'any' }],
    },
    {
      id: 'wedge',
      outline: [
        [0, 0],
        [3, 0],
        [2, 4],
        [1, 4],
      ],
      demand: 5,
      turns: [0, { centre: 180, within: 5 }],
      cloths: ['bolt'],
    },
    {
      id: 'ell',
      outline: [
        [0, 0],
        [2, 0],
        [2, 1],
        [1, 1],
        [1, 2],
        [0, 2],
      ],
      demand: 4,
      turns: [0, 90],
      cloths: ['scrap', { id: 'shelf', mirror: true }],
    },
    {
      id: 'either',
      demand: 4,
      shapes: [
        {
          outline: [
            [0, 0],
            [5, 0],
            [5, 1],
            [0, 1],
          ],
          turns: [0, 90],
        },
        {
          outline: [
            [0, 0],
            [2, 0],
            [2, 2],
            [0, 2],
          ],
          mirror: true,
        },
      ],
      cloths: ['shelf', 'scrap'],
    },
  ],
};

const at = (blank: string, x: number, y: number, more: { shape?: number; turn?: number; mirror?: boolean } = {}) => ({
  blank,
  shape: 0,
  turn: 0,
  mirror: false,
  x,
  y,
  ...more,
});

export const answer: LayoutAnswer = {
  status: 'feasible',
  // The bolt: 0.5 + 4 and 3 make 7.5, two steps of 4.5 at 2 a unit; two pieces at 1 each; one scrap at its length.
  cost: 18 + 2 + 5,
  bound: 20,
  boundFrom: 'reckoned by hand',
  seconds: 0.1,
  layouts: [
    {
      cloth: 'bolt',
      count: 1,
      length: 4.5,
      firstCut: 'across',
      strips: [
        { from: 0, height: 0.5 },
        { from: 0.5, height: 4 },
      ],
      // Wedges head to tail: each advances by (3 + 1)/2.
      placements: [
        at('wedge', 0, 0.5),
        at('wedge', 5, 4.5, { turn: 180 }),
        at('wedge', 4, 0.5),
        at('wedge', 9, 4.5, { turn: 180 }),
        at('wedge', 8, 0.5),
      ],
    },
    {
      cloth: 'bolt',
      count: 1,
      length: 3,
      strips: [{ from: 0, height: 3 }],
      placements: [at('square', 0, 0), at('square', 3, 0), at('square', 6, 0), at('square', 9, 0)],
    },
    {
      cloth: 'shelf',
      count: 2,
      length: 10,
      firstCut: 'along',
      // Strips run up the piece. The second holds an L turned over and, beyond it, a long blank between the edges.
      strips: [
        { from: 0, height: 3 },
        { from: 3, height: 3 },
      ],
      placements: [
        at('square', 3, 0, { turn: 90 }),
        at('square', 0, 3),
        at('ell', 6, 0, { mirror: true }),
        at('either', 4.5, 3, { turn: 90 }),
      ],
    },
    {
      cloth: 'scrap',
      count: 1,
      length: 5,
      strips: [
        { from: 0, height: 2 },
        { from: 2, height: 2 },
      ],
      placements: [
        at('ell', 0, 0),
        at('ell', 4, 0, { turn: 90 }),
        at('either', 2, 2, { shape: 1, mirror: true }),
        at('either', 2.5, 2, { shape: 1 }),
      ],
    },
  ],
  unplaced: [],
};
