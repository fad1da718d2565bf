/** The drawing of rings and stars against plane geometry worked out on its own. */
import { describe, expect, test } from 'vitest';
import type { CompassStarForm } from '../../src/quilt/forms/compass-star.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import { type Point, subtract } from '../../src/shape/point.ts';
import { area, type Side, sides, span } from '../quilt/exact-outline.ts';

const form: CompassStarForm = {
  kind: 'compass-star',
  points: 16,
  inner: 1,
  outer: 10,
  ring: 13,
  wedges: 20,
  side: 28,
};
const chord = (side: Side) => Math.hypot(...subtract(side.to, side.from));

describe('a ring of n wedges between radii r and R', () => {
  // Plane geometry: chord 2r sin(θ/2), arc rθ, sagitta R(1 − cos(θ/2)), area θ(R² − r²)/2, with θ = 2π/n; four decimals.
  test.each([
    { n: 20, r: 2, R: 8, innerChord: 0.6257, outerChord: 2.503, arc: 2.5133, sagitta: 0.0985, wedge: 9.4248 },
    { n: 16, r: 3, R: 9, innerChord: 1.1705, outerChord: 3.5116, arc: 3.5343, sagitta: 0.1729, wedge: 14.1372 },
    { n: 32, r: 4, R: 10, innerChord: 0.7841, outerChord: 1.9603, arc: 1.9635, sagitta: 0.0482, wedge: 8.2467 },
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a published figure to four decimals that happens to be π
    { n: 12, r: 3, R: 6, innerChord: 1.5529, outerChord: 3.1058, arc: 3.1416, sagitta: 0.2044, wedge: 7.0686 },
  ])('$n, $r, $R', (row) => {
    const units = drawForm({ ...form, wedges: row.n, outer: row.r, ring: row.R }, 'in');
    const outline = units.find((unit) => unit.id === 'C')!.patches[0]!.outline;
    const outer = sides(outline).find((side) => side.arc?.turn === 'anticlockwise')!;
    const inner = sides(outline).find((side) => side.arc?.turn === 'clockwise')!;
    expect(chord(inner)).toBeCloseTo(row.innerChord, 4);
    expect(chord(outer)).toBeCloseTo(row.outerChord, 4);
    expect(span(outer) * row.R).toBeCloseTo(row.arc, 4);
    expect(row.R - outer.from[1]).toBeCloseTo(row.sagitta, 4);
    expect(area(outline)).toBeCloseTo(row.wedge, 4);
  });

  // The trade's usual rings: 10 wedges of 36°, 20 of 18°, 24 of 15°.
  test.each([
    [10, 36],
    [20, 18],
    [24, 15],
  ])('%i wedges span %i° each', (wedges, degrees) => {
    const outline = drawForm({ ...form, wedges }, 'in').find((unit) => unit.id === 'C')!.patches[0]!.outline;
    const outer = sides(outline).find((side) => side.arc?.turn === 'anticlockwise')!;
    expect((span(outer) * 180) / Math.PI).toBeCloseTo(degrees, 9);
  });
});

describe('a star', () => {
  // A full turn shared among 8, 16 or 32 points.
  test.each([
    [8, 45],
    [16, 22.5],
    [32, 11.25],
  ])('of %i points has sectors of %f°', (points, degrees) => {
    const [long] = drawForm({ ...form, points }, 'in');
    const [, [x, y]] = long!.patches[0]!.outline as readonly [Point, Point];
    expect((2 * Math.atan2(x, y) * 180) / Math.PI).toBeCloseTo(degrees, 9);
  });
});
