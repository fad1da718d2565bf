import fc from 'fast-check';
import { expect, test } from 'vitest';
import { centreArc, onArc } from '../../src/shape/arc.ts';
import {
  arcOfBulge,
  bulgeOfRadius,
  bulgeThrough,
  centreOfBulge,
  middleOfArc,
  radiusOf,
  sagittaOf,
} from '../../src/shape/arc-through.ts';
import { distance, type Point } from '../../src/shape/point.ts';

const part = fc.double({ min: 0.05, max: 0.95, noNaN: true });

test('three places of a circle give that circle back, whichever way round', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
      fc.double({ min: 0.1, max: 5, noNaN: true }),
      fc.boolean(),
      part,
      (start, sweep, anticlockwise, at) => {
        const on = (angle: number): Point => [3 + 5 * Math.cos(angle), -2 + 5 * Math.sin(angle)];
        const gone = anticlockwise ? sweep : -sweep;
        const [from, by, to] = [on(start), on(start + at * gone), on(start + gone)];
        const bulge = bulgeThrough(from, by, to);
        expect(bulge).toBeCloseTo(Math.tan(gone / 4), 6);
        expect(distance(middleOfArc(from, to, bulge), on(start + gone / 2))).toBeLessThan(1e-6);
        expect(distance(centreOfBulge(from, to, bulge)!, [3, -2])).toBeLessThan(1e-5);
        const arc = centreArc(from, to, arcOfBulge(from, to, bulge)!.arc);
        expect(distance(onArc(arc, arc.start + at * arc.sweep), by)).toBeLessThan(1e-5);
      },
    ),
  );
});

test('sagitta and radius of FACTS’ rings: 20 wedges of 8 in bulge .0985, 12 of 6 in .2044 (derived, R(1 − cos θ/2))', () => {
  for (const [count, radius, sagitta] of [
    [20, 8, 0.0985],
    [16, 9, 0.1729],
    [32, 10, 0.0482],
    [12, 6, 0.2044],
  ] as const) {
    const half = Math.PI / count;
    const [from, to]: readonly [Point, Point] = [
      [radius * Math.sin(half), radius * Math.cos(half)],
      [-radius * Math.sin(half), radius * Math.cos(half)],
    ];
    const bulge = bulgeOfRadius(from, to, radius);
    expect(sagittaOf(from, to, bulge)).toBeCloseTo(sagitta, 4);
    expect(radiusOf(from, to, bulge)).toBeCloseTo(radius, 9);
    // Anticlockwise about the centre, it bulges outward.
    expect(middleOfArc(from, to, bulge)[1]).toBeCloseTo(radius, 9);
  }
});

test('places in a line give a straight edge, and a radius too short is refused', () => {
  expect(bulgeThrough([0, 0], [1, 0], [3, 0])).toBe(0);
  expect(arcOfBulge([0, 0], [3, 0], 0)).toBeNull();
  expect(() => bulgeOfRadius([0, 0], [4, 0], 1.9)).toThrow(/half their distance/);
  expect(bulgeOfRadius([0, 0], [4, 0], 2)).toBeCloseTo(1, 6);
});
