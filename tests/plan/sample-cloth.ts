import type { Blank, CutList, Group } from '../../src/cutting/cut-list.ts';
import type { Layout, LayoutAnswer } from '../../src/plan/layout-job.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import type { Tally } from '../../src/plan/tally.ts';
import type { Cloth, Quilt } from '../../src/quilt/quilt.ts';
import type { Polygon } from '../../src/shape/point.ts';

export const rectangle = (w: number, h: number): Polygon => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];

export function blank(id: string, w: number, h: number, more: Partial<Blank> = {}): Blank {
  return {
    id,
    role: 'r',
    demand: 4,
    spares: 0,
    shapes: [{ kind: 'box', outline: rectangle(w, h) }],
    patch: rectangle(w - 1, h - 1),
    finishedArea: (w - 1) * (h - 1),
    sewnArea: (w - 0.5) * (h - 0.5),
    uses: [],
    directional: false,
    joined: null,
    ...more,
  };
}

export const linen: Cloth = {
  id: 'linen',
  name: 'Linen',
  colour: '#d9cfb4',
  print: 'solid',
  width: '40 in',
  step: '1/4 yd',
  price: { amount: 12, per: 'yd', currency: '$' },
};

export function quiltWith(...cloths: readonly Cloth[]): Quilt {
  return {
    format: 'yardwright',
    version: 1,
    name: 'Test',
    unit: 'in',
    allowance: 0.25,
    room: 0.25,
    ruler: 0.125,
    squaring: 1,
    spares: 0,
    blocks: [],
    joined: [],
    roles: [],
    cloths,
    schemes: [],
    scheme: 's',
  };
}

export function groupOf(blanks: readonly Blank[], lengths: Group['lengths'], cloths: Group['job']['cloths']): Group {
  return {
    id: lengths.map((length) => length.cloth).join('+'),
    cloths: [...new Set(lengths.map((length) => length.cloth))],
    job: {
      method: 'strips',
      cloths,
      blanks: blanks.map(({ id, demand, shapes }) => ({ id, demand, shapes })),
    },
    blanks,
    lengths,
  };
}

export const onBolt = (blanks: readonly Blank[]): Group =>
  groupOf(blanks, [{ id: 'linen', cloth: 'linen', piece: null }], [{ id: 'linen', width: 40, step: 9, squaring: 1 }]);

export function answerOf(layouts: readonly Layout[], more: Partial<LayoutAnswer> = {}): LayoutAnswer {
  return { status: 'optimal', cost: 9, bound: 9, boundFrom: '', seconds: 0, layouts, unplaced: [], ...more };
}

/** One strip of four blanks of 5 × 3 after a strip of 1 that squares the end. */
export const four: Layout = {
  cloth: 'linen',
  count: 1,
  length: 4,
  strips: [
    { from: 0, height: 1 },
    { from: 1, height: 3 },
  ],
  placements: [0, 5, 10, 15].map((x) => ({ blank: 'A1', shape: 0, turn: 0, mirror: false, x, y: 1 })),
};

export const tally = (quilt: Quilt, group: Group, answer: LayoutAnswer): Tally => {
  const cutList: CutList = { groups: [group], problems: [] };
  return makeTally(quilt, cutList, [answer]);
};
