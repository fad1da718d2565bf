import { describe, expect, test } from 'vitest';
import type { Point, Polygon } from '../../src/shape/point.ts';
import { hull } from '../../workers/proof/convex.ts';
import { uncuttable } from '../../workers/proof/straight-cuts.ts';

const box = (x: number, y: number, width: number, height: number): Polygon => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

const strip = { length: 14, near: 0, far: 4 };
const TOUCH = 14e-6;
const left = (...blanks: readonly Polygon[]) => uncuttable(blanks.map(hull), strip, TOUCH);

describe('blanks that straight subcuts part', () => {
  test.each<[string, Polygon[]]>([
    ['none', []],
    ['one alone', [box(0, 0, 4, 4)]],
    ['a row, given in any order', [box(9, 0, 5, 4), box(0, 0, 4, 2), box(4, 2, 5, 2)]],
    [
      'wedges head to tail',
      [
        [
          [0, 0],
          [3, 0],
          [2, 4],
          [1, 4],
        ],
        [
          [3, 0],
          [4, 0],
          [5, 4],
          [2, 4],
        ],
      ],
    ],
    ['a low and a high one with a slanted cut from edge to edge between them', [box(4, 0, 6, 1), box(8, 3, 6, 1)]],
    ['two that touch in a corner only, one low and one high', [box(0, 0, 6, 2), box(6, 2, 6, 2)]],
    [
      'low triangles at the end whose cut leaves the strip by its end',
      [
        [
          [10, 0],
          [11, 0],
          [13, 1],
        ],
        [
          [11, 0],
          [14, 0],
          [13, 1],
        ],
      ],
    ],
  ])('%s', (_, blanks) => {
    expect(left(...blanks)).toEqual([]);
  });
});

describe('blanks that no straight subcuts part', () => {
  test.each<[string, Polygon[], number]>([
    ['two that touch along a line that runs along the strip', [box(0, 0, 6, 2), box(0, 2, 6, 2)], 2],
    ['two stacked over the whole strip: a cut from end to end is no subcut', [box(0, 0, 14, 1), box(0, 3, 14, 1)], 2],
    ['two that overlap', [box(0, 0, 6, 2), box(5, 0, 6, 2)], 2],
    ['a stack at the end of a row', [box(0, 0, 4, 4), box(4, 0, 6, 2), box(5, 2, 6, 2), box(12, 0, 2, 4)], 3],
    ['four round a square', [box(0, 0, 3, 1), box(3, 0, 1, 3), box(1, 3, 3, 1), box(0, 1, 1, 3)], 4],
  ])('%s', (_, blanks, count) => {
    expect(left(...blanks)).toHaveLength(count);
  });
});

test('order counts from the start of the strip: what can be cut off only from its end is not cuttable', () => {
  // Once the square is off, a slanted cut parts the high one from the low one beneath it; while the square is there, the
  // low one lies inside the hull of the two others.
  const square = box(0, 0, 4, 4);
  const high: Polygon = [
    [5, 2],
    [12, 3.9],
    [12, 4],
    [5, 4],
  ];
  const low: Polygon = [
    [5.5, 2],
    [12, 3],
    [12, 3.8],
  ];
  const blanks = [square, high, low];
  const mirrored = blanks.map((blank) => blank.map(([x, y]): Point => [14 - x, y]));
  expect([left(...blanks).length, left(...mirrored).length]).toEqual([0, 3]);
});
