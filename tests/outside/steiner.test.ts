/**
 * Steiner's formula: a convex set of area A and perimeter P, grown by s with round joins, has area A + sP + πs²
 * (derived: convex geometry, the area of a parallel body). Blanks are not round at their corners, so each corner adds
 * what its mitre, or the square cut of its tip, has beyond the circle's sector.
 */
import { Clipper, EndType, FillRule, JoinType, type Path64 } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flatten } from '../../src/shape/flatten.ts';
import { growEvenly } from '../../src/shape/grow.ts';
import { convexHull } from '../../src/shape/hull.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { outlineArea, outlinePerimeter } from '../../src/shape/outline-measures.ts';
import { distance, type Point, type Polygon } from '../../src/shape/point.ts';
import { polygonArea, polygonPerimeter } from '../../src/shape/polygon.ts';

const polygons = fc
  .array(fc.tuple(fc.double({ min: 0, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })), {
    minLength: 3,
    maxLength: 9,
  })
  .map((points) => convexHull(points))
  .filter((hull) => polygonArea(hull) > 2 && hull.every((point, i) => distance(point, hull.at(i - 1)!) > 0.2));
const steps = fc.double({ min: 0.1, max: 0.75, noNaN: true });

const steiner = (area: number, perimeter: number, s: number): number => area + s * perimeter + Math.PI * s * s;

/** Beyond the circle's sector, a corner of interior angle θ has this much: mitred, or cut square at s where θ is sharp. */
function beyondTheCircle(theta: number, s: number): number {
  const turn = Math.PI - theta;
  const sector = (turn / 2) * s * s;
  if (Math.cos(theta) <= 1e-6) {
    return s * s * Math.tan(turn / 2) - sector;
  }
  // From the foot of one moved edge to the square cut, and half of the cut, on either side of the bisector.
  return 2 * s * s * Math.tan(turn / 4) - sector;
}

function angles(polygon: Polygon): readonly number[] {
  return polygon.map((point, i) => {
    const back = polygon.at(i - 1)!;
    const on = polygon[(i + 1) % polygon.length]!;
    const [a, b]: readonly [Point, Point] = [
      [back[0] - point[0], back[1] - point[1]],
      [on[0] - point[0], on[1] - point[1]],
    ];
    return Math.acos((a[0] * b[0] + a[1] * b[1]) / (Math.hypot(...a) * Math.hypot(...b)));
  });
}

const FINENESS = 1e6;
const toPath = (polygon: Polygon): Path64 =>
  polygon.map(([x, y]) => ({ x: Math.round(x * FINENESS), y: Math.round(y * FINENESS) }));

/** Grown by another library, with round joins. */
const rounded = (polygon: Polygon, s: number) =>
  Clipper.inflatePaths([toPath(polygon)], s * FINENESS, JoinType.Round, EndType.Polygon, 2, 1e-5 * FINENESS);

test('a polygon grown with round joins by clipper has Steiner’s area', () => {
  fc.assert(
    fc.property(polygons, steps, (polygon, s) => {
      const area = Math.abs(Clipper.areaPaths(rounded(polygon, s))) / FINENESS ** 2;
      expect(Math.abs(area - steiner(polygonArea(polygon), polygonPerimeter(polygon), s))).toBeLessThan(1e-3);
    }),
  );
});

test('a blank’s outline has Steiner’s area and what its corners have beyond the circle', () => {
  fc.assert(
    fc.property(polygons, steps, (polygon, s) => {
      const extra = angles(polygon).reduce((sum, theta) => sum + beyondTheCircle(theta, s), 0);
      const expected = steiner(polygonArea(polygon), polygonPerimeter(polygon), s) + extra;
      expect(polygonArea(growEvenly(polygon, s))).toBeCloseTo(expected, 8);
    }),
  );
});

test('a blank’s outline holds all that clipper’s round one holds', () => {
  fc.assert(
    fc.property(polygons, steps, (polygon, s) => {
      const outside = Clipper.difference(rounded(polygon, s), [toPath(growEvenly(polygon, s))], FillRule.NonZero);
      expect(Math.abs(Clipper.areaPaths(outside)) / FINENESS ** 2).toBeLessThan(1e-4);
    }),
    { numRuns: 60 },
  );
});

test('outlines with arcs: a disc grown by s is the disc of radius R + s', () => {
  const radius = 3;
  const disc: Outline = [
    [-radius, 0],
    { arc: { radius, turn: 'anticlockwise' } },
    [radius, 0],
    { arc: { radius, turn: 'anticlockwise' } },
  ];
  for (const s of [0.25, 0.5, 1]) {
    const expected = steiner(outlineArea(disc), outlinePerimeter(disc), s);
    expect(expected).toBeCloseTo(Math.PI * (radius + s) ** 2, 9);
    const grown = polygonArea(growEvenly(flatten(disc, { side: 'outside', within: 1e-4 }), s));
    expect(grown).toBeGreaterThanOrEqual(expected - 1e-9);
    expect(grown).toBeLessThan(expected + 1e-4 * 2 * Math.PI * (radius + s));
  }
});

test('a wedge with a bulging arc grows by Steiner’s formula too, its arc to the arc', () => {
  const wedge: Outline = [[0, 0], [8, 0], { arc: { radius: 8, turn: 'anticlockwise' } }, [0, 8]];
  const s = 0.25;
  const corners = 3 * beyondTheCircle(Math.PI / 2, s);
  const expected = steiner(outlineArea(wedge), outlinePerimeter(wedge), s) + corners;
  const grown = polygonArea(growEvenly(flatten(wedge, { side: 'outside', within: 1e-5 }), s));
  expect(grown).toBeGreaterThanOrEqual(expected - 1e-9);
  expect(grown).toBeLessThan(expected + 1e-3);
});
