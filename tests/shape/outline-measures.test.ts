import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flatten } from '../../src/shape/flatten.ts';
import { mirrorOutline, moveOutline, type Outline } from '../../src/shape/outline.ts';
import { outlineArea, outlineBox, outlineCentroid, outlinePerimeter } from '../../src/shape/outline-measures.ts';
import { add, turn } from '../../src/shape/point.ts';
import { polygonArea, polygonBox, polygonCentroid, polygonPerimeter } from '../../src/shape/polygon.ts';

const halfDisc: Outline = [[-3, 0], [3, 0], { arc: { radius: 3, turn: 'anticlockwise' } }];
const bitten: Outline = [
  [0, 0],
  [4, 0],
  { arc: { radius: 3, turn: 'clockwise' } },
  [4, 4],
  { arc: { radius: 2.5, turn: 'anticlockwise', large: true } },
  [0, 4],
];

test('a half disc has the area, the length round and the middle of the textbook', () => {
  expect(outlineArea(halfDisc)).toBeCloseTo((Math.PI * 9) / 2, 12);
  expect(outlinePerimeter(halfDisc)).toBeCloseTo(6 + 3 * Math.PI, 12);
  expect(outlineCentroid(halfDisc)[0]).toBeCloseTo(0, 12);
  expect(outlineCentroid(halfDisc)[1]).toBeCloseTo(4 / Math.PI, 12);
  expect(outlineBox(halfDisc)).toEqual({ min: [-3, 0], max: [3, expect.closeTo(3, 12)] });
});

test('exact measures are what finer and finer polygons tend to', () => {
  const fine = flatten(bitten, { side: 'chord', within: 1e-7 });
  expect(outlineArea(bitten)).toBeCloseTo(polygonArea(fine), 4);
  expect(outlinePerimeter(bitten)).toBeCloseTo(polygonPerimeter(fine), 4);
  expect(outlineCentroid(bitten)[0]).toBeCloseTo(polygonCentroid(fine)[0], 4);
  expect(outlineCentroid(bitten)[1]).toBeCloseTo(polygonCentroid(fine)[1], 4);
  expect(outlineBox(bitten).max[1]).toBeCloseTo(polygonBox(fine).max[1], 4);
});

test('measures move with the outline', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -360, max: 360, noNaN: true }),
      fc.double({ min: -500, max: 500, noNaN: true }),
      (degrees, step) => {
        const moved = moveOutline(bitten, (corner) => add(turn(corner, degrees), [step, -step]));
        const [x, y] = add(turn(outlineCentroid(bitten), degrees), [step, -step]);
        expect(outlineArea(moved)).toBeCloseTo(outlineArea(bitten), 8);
        expect(outlineCentroid(moved)[0]).toBeCloseTo(x, 8);
        expect(outlineCentroid(moved)[1]).toBeCloseTo(y, 8);
      },
    ),
  );
});

test('a mirror image has the same area, walked the other way', () => {
  expect(outlineArea(mirrorOutline(bitten))).toBeCloseTo(-outlineArea(bitten), 12);
  expect(outlineCentroid(mirrorOutline(bitten))[0]).toBeCloseTo(-outlineCentroid(bitten)[0], 12);
});
