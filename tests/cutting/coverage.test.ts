import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shapesOfKind } from '../../src/cutting/blank-shapes.ts';
import { coversInPlace, coversWhenFlipped, levelSide } from '../../src/cutting/coverage.ts';
import { type Making, type RoughPatch, roughPatch, turnRough } from '../../src/cutting/rough-patch.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import { difference } from '../../src/shape/combine.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { distance, type Point, type Polygon } from '../../src/shape/point.ts';
import { isConvex, polygonArea, turnPolygon } from '../../src/shape/polygon.ts';
import { areaOutside, leastBare } from './lay-and-flip.ts';

const paper: Making = { allowance: 0.25, room: 0.25, sewnEdge: 0, paper: true, ruler: 0.125 };

/** A patch whose seam is its first edge, along y = 0, the patch above. */
const patches = fc
  .record({
    seam: fc.double({ min: 0.7, max: 14, noNaN: true }),
    height: fc.double({ min: 0.5, max: 9, noNaN: true }),
    tip: fc.double({ min: -0.3, max: 1.3, noNaN: true }),
    second: fc.option(fc.double({ min: 0.1, max: 0.9, noNaN: true })),
  })
  .map(({ seam, height, tip, second }): Outline => {
    const far: Point = [tip * seam, height];
    return second === null ? [[0, 0], [seam, 0], far] : [[0, 0], [seam, 0], [far[0] + second * seam, height], far];
  });

const foundation = (outline: Outline, rough: RoughPatch) => ({
  seamLength: (outline[1] as Point)[0],
  allowance: 0.25,
  sewn: rough.sewn,
});

test('a template laid level, sewn and flipped covers the sewn patch, level and 2° askew', () => {
  fc.assert(
    fc.property(patches, (outline) => {
      const rough = roughPatch(outline, paper);
      const side = levelSide(rough.template, rough.seam!)!;
      expect(leastBare(rough.template, side, foundation(outline, rough), 2)).toBeLessThan(1e-5);
    }),
    { numRuns: 40 },
  );
});

test('a slant laid with its sewn side level covers the sewn patch, level and 2° askew', () => {
  let level = 0;
  fc.assert(
    fc.property(patches, fc.constantFrom(0, 20, 90, 137), (outline, turned) => {
      const rough = turnRough(roughPatch(outline, paper), turned);
      const slant = turnPolygon(shapesOfKind('slant', rough, [[0]], 0.125)[0]!, -turned);
      const unturned = turnRough(rough, -turned);
      const side = levelSide(slant, unturned.seam!);
      if (side === null) {
        expect(areaOutside(unturned.sewn, slant)).toBeLessThan(1e-5);
      } else {
        level++;
        expect(leastBare(slant, side, foundation(outline, unturned), 2)).toBeLessThan(1e-5);
      }
    }),
    { numRuns: 60 },
  );
  expect(level).toBeGreaterThan(5);
});

test('the check says no where hands would find the patch bare', () => {
  const outline: Outline = [
    [0, 0],
    [8, 0],
    [8, 3],
    [0, 3],
  ];
  const rough = roughPatch(outline, paper);
  const rectangle = (from: Point, to: Point): Polygon => [from, [to[0], from[1]], to, [from[0], to[1]]];
  const enough = rectangle([-0.5, -0.25], [8.5, 3.6]);
  const short = rectangle([-0.5, -0.25], [8.5, 3.5]);
  const narrow = rectangle([-0.3, -0.25], [8.3, 3.6]);
  for (const [blank, covers] of [
    [enough, true],
    [short, false],
    [narrow, false],
  ] as const) {
    expect(coversWhenFlipped(blank, rough)).toBe(covers);
    expect(leastBare(blank, 0, foundation(outline, rough), 2) < 1e-5).toBe(covers);
    // Level, all three would do: the room is what askew takes.
    expect(coversInPlace(blank, rough)).toBe(true);
  }
});

test('more on the sewn side is no help, since that side is laid level', () => {
  const outline: Outline = [
    [0, 0],
    [8, 0],
    [8, 3],
    [0, 3],
  ];
  const rough = roughPatch(outline, paper);
  const low: Polygon = [
    [-0.5, -3],
    [8.5, -3],
    [8.5, 0.5],
    [-0.5, 0.5],
  ];
  const shifted = low.map(([x, y]): Point => [x, y + 3.1]);
  expect(coversWhenFlipped(low, rough)).toBe(coversWhenFlipped(shifted, rough));
});

test('a long seam asks for more than the room: the far side grows by what 2° takes', () => {
  const long: Outline = [
    [0, 0],
    [16, 0],
    [16, 2],
    [0, 2],
  ];
  const short: Outline = [
    [0, 0],
    [3, 0],
    [3, 2],
    [0, 2],
  ];
  const top = (outline: Outline) => Math.max(...roughPatch(outline, paper).template.map(([, y]) => y));
  expect(top(short)).toBeCloseTo(2.5, 9);
  // The seam with its allowances, 16.5 in, times tan 2° (derived), less what the turned far side gains.
  expect(top(long)).toBeGreaterThan(2.25 + 16 * Math.tan((2 * Math.PI) / 180));
  expect(top(long)).toBeLessThan(2.25 + 16.6 * Math.tan((2 * Math.PI) / 180));
});

test('every patch of the star is covered by every shape, arcs to the arc', () => {
  const units = drawForm(
    { kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13, wedges: 20, side: 28 },
    'in',
  );
  for (const unit of units) {
    for (const patch of unit.patches) {
      const rough = roughPatch(patch.outline, { ...paper, sewnEdge: null, paper: false, room: 0 });
      for (const kind of ['outline', 'box', 'slant'] as const) {
        for (const outline of shapesOfKind(kind, rough, [[0]], 0.125)) {
          const bare = isConvex(outline) ? areaOutside(rough.sewn, outline) : hollowAreaOutside(rough.sewn, outline);
          expect(bare).toBeLessThan(1e-5);
        }
      }
    }
  }
});

test('a template has few edges and covers little that it need not', () => {
  const [, , ring] = drawForm(
    { kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13, wedges: 20, side: 28 },
    'in',
  );
  const rough = roughPatch(ring!.patches[0]!.outline, { ...paper, sewnEdge: null, paper: false, room: 0 });
  expect(rough.template.length).toBeLessThan(15);
  expect(polygonArea(rough.template)).toBeLessThan(polygonArea(rough.sewn) * 1.01);
  const edges = rough.template.map((point, i) => distance(point, rough.template.at(i - 1)!));
  expect(Math.min(...edges)).toBeGreaterThan(0.01);
});

const hollowAreaOutside = (inner: Polygon, outer: Polygon): number =>
  difference(inner, outer).reduce((sum, piece) => sum + Math.abs(polygonArea(piece)), 0);
