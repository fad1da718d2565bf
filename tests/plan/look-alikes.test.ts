import { expect, test } from 'vitest';
import type { Layout, LayoutAnswer, LayoutJob, Turns } from '../../src/plan/layout-job.ts';
import { lookAlikes, sayLookAlike } from '../../src/plan/look-alikes.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { mirrorPolygon, turnPolygon } from '../../src/shape/polygon.ts';
import { groupOf } from './cut-group.ts';

/** A wedge with one square side: its mirror image is no turn of it. */
const hand: Polygon = [
  [0, 0],
  [3, 0],
  [1, 5],
  [0, 5],
];
const box = (w: number, h: number): Polygon => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];

interface Cut {
  readonly outline: Polygon;
  readonly turns?: Turns;
  readonly mirror?: boolean;
  readonly cloth?: string;
}

function found(cuts: Readonly<Record<string, Cut>>) {
  const entries = Object.entries(cuts);
  const cloths = [...new Set(entries.map(([, { cloth = 'bolt' }]) => cloth))].map((id) => ({ id, width: 40 }));
  const job: LayoutJob = {
    method: 'strips',
    cloths,
    blanks: entries.map(([id, { outline, turns = [0], mirror = false, cloth = 'bolt' }]) => ({
      id,
      demand: 1,
      outline,
      turns,
      mirror,
      cloths: [cloth],
    })),
  };
  const layouts = cloths.map(
    ({ id }): Layout => ({
      cloth: id,
      count: 1,
      length: 5,
      placements: entries
        .filter(([, { cloth = 'bolt' }]) => cloth === id)
        .map(([blank, { turns = [0] }]) => {
          const turn = turns === 'any' ? 0 : Number(turns[0]);
          return { blank, shape: 0, turn, mirror: false, x: 0, y: 0 };
        }),
    }),
  );
  return lookAlikes(groupOf(job), { layouts } as unknown as LayoutAnswer, 'in').map(({ blanks, how }) => [
    ...blanks,
    how,
  ]);
}

test('two hands are flagged, however each is turned', () => {
  expect(found({ A2: { outline: hand }, A3: { outline: mirrorPolygon(hand) } })).toEqual([['A2', 'A3', 'hands']]);
  expect(found({ A2: { outline: hand }, A3: { outline: turnPolygon(mirrorPolygon(hand), 73) } })).toEqual([
    ['A2', 'A3', 'hands'],
  ]);
  expect(sayLookAlike({ blanks: ['A2', 'A3'], cloth: 'bolt', how: 'hands' })).toBe(
    'A2 and A3 look alike: left and right hand; mark one on the wrong side with chalk.',
  );
});

test('hands of a cloth without a wrong side, and blanks of different cloths, are not', () => {
  const any = { turns: 'any', mirror: true } as const;
  expect(found({ A2: { outline: hand, ...any }, A3: { outline: mirrorPolygon(hand), ...any } })).toEqual([]);
  expect(found({ A2: { outline: hand }, A3: { outline: mirrorPolygon(hand), cloth: 'other' } })).toEqual([]);
});

test('sizes within an eighth of an inch are flagged, farther ones are not', () => {
  expect(found({ A: { outline: box(4, 3) }, B: { outline: box(4.125, 3) } })).toEqual([['A', 'B', 'size']]);
  expect(found({ A: { outline: box(4, 3) }, B: { outline: box(4.3, 3) } })).toEqual([]);
});

test('one shape whose print lies another way is flagged; what serves for the other is not', () => {
  expect(found({ A: { outline: box(4, 3) }, B: { outline: box(3, 4) } })).toEqual([['A', 'B', 'print']]);
  expect(found({ A: { outline: box(4, 3), turns: 'any' }, B: { outline: box(3, 4), turns: 'any' } })).toEqual([]);
  expect(found({ A: { outline: box(4, 3) }, B: { outline: box(4, 3) } })).toEqual([]);
});
