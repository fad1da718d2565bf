import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CompassStarForm } from '../../../src/quilt/forms/compass-star.ts';
import { drawForm, rolesOfForm } from '../../../src/quilt/forms/forms.ts';
import { placesOf } from '../../../src/quilt/places.ts';
import type { Patch, Unit } from '../../../src/quilt/quilt.ts';
import { degreesFromUp, type Point, reflect, subtract, turn } from '../../../src/shape/point.ts';
import { area, flattenAboutCentre, sides, span } from '../exact-outline.ts';

const dial: CompassStarForm = {
  kind: 'compass-star',
  points: 16,
  inner: 4,
  outer: 10,
  ring: 13,
  wedges: 20,
  side: 28,
};

/** Any form that the file allows. */
const forms = fc
  .record({
    points: fc.integer({ min: 2, max: 32 }).map((half) => half * 2),
    wedges: fc.integer({ min: 3, max: 60 }),
    inner: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    outer: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
    ring: fc.double({ min: 0.5, max: 0.97, noNaN: true }),
    side: fc.double({ min: 4, max: 60, noNaN: true }),
  })
  .map(({ points, wedges, side, ...part }): CompassStarForm => {
    const ring = (part.ring * side) / 2;
    const outer = part.outer * ring;
    return { kind: 'compass-star', points, wedges, side, ring, outer, inner: part.inner * outer };
  });

describe('the drawing closes', () => {
  test('the areas of all patches in all places add up to the square', () => {
    fc.assert(
      fc.property(forms, (form) => {
        const total = drawForm(form, 'in').reduce(
          (sum, unit) =>
            sum + placesOf(unit).length * unit.patches.reduce((all, patch) => all + area(patch.outline), 0),
          0,
        );
        const square = (form.side as number) ** 2;
        expect(Math.abs(total / square - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('every patch runs anticlockwise and has an area of its own', () => {
    fc.assert(
      fc.property(forms, (form) => {
        for (const unit of drawForm(form, 'in')) {
          for (const patch of unit.patches) {
            expect(area(patch.outline)).toBeGreaterThan(0);
          }
        }
      }),
    );
  });

  test('every place of the square lies in just one patch', () => {
    const patches = drawForm(dial, 'in').flatMap((unit) =>
      placesOf(unit).flatMap((place) =>
        unit.patches.map((patch) =>
          flattenAboutCentre(patch.outline, 60).map((p) => turn(place.mirrored ? reflect(p) : p, place.turn)),
        ),
      ),
    );
    expect(patches).toHaveLength(8 * 4 + 8 * 4 + 20 + 4);
    // A fixed scatter that falls on no seam; the flattened arcs are within 0.0001 in of the true ones.
    for (let k = 1; k <= 3000; k++) {
      const p: Point = [((k * 0.754877666) % 1) * 28 - 14, ((k * 0.569840291) % 1) * 28 - 14];
      expect(patches.filter((polygon) => inside(p, polygon)).length, `at ${p}`).toBe(1);
    }
  });

  test('the angles of the wedges at the centre and round the ring add up to a full turn', () => {
    const [long, short, ring] = drawForm(dial, 'in') as [Unit, Unit, Unit];
    const atCentre = (unit: Unit) =>
      unit.patches.slice(0, 2).reduce((sum, patch) => {
        const [, right, left] = patch.outline as readonly Point[];
        return sum + ((degreesFromUp(left!) - degreesFromUp(right!) + 360) % 360);
      }, 0);
    expect(8 * atCentre(long) + 8 * atCentre(short)).toBeCloseTo(360, 9);
    const outerArc = sides(ring.patches[0]!.outline).find((side) => side.arc?.turn === 'anticlockwise')!;
    expect(20 * span(outerArc)).toBeCloseTo(2 * Math.PI, 12);
  });
});

describe('the foundations', () => {
  test('each patch is sewn along one straight seam with all before it on the other side', () => {
    fc.assert(
      fc.property(forms, (form) => {
        for (const unit of drawForm(form, 'in').filter((each) => each.paper)) {
          unit.patches.slice(1).forEach((patch, k) => {
            const earlier = unit.patches.slice(0, k + 1);
            expect(hasStraightSeam(patch, earlier, form.side as number), `${unit.id}${patch.number}`).toBe(true);
          });
        }
      }),
    );
  });

  test('the short point has two hands, and mirrored in turn they make the star its own mirror image', () => {
    const [, short] = drawForm(dial, 'in') as [Unit, Unit];
    const [right, left] = [short.patches[2]!, short.patches[3]!];
    expect(area(right.outline)).not.toBeCloseTo(area(left.outline), 3);
    const drawn = new Map(placesOf(short).map((place) => [place.turn, place.mirrored]));
    for (const [degrees, mirrored] of drawn) {
      expect(drawn.get(360 - degrees)).toBe(!mirrored);
    }
  });

  test('only the roles of the form are used, and all of them', () => {
    const used = drawForm(dial, 'in').flatMap((unit) => unit.patches.map((patch) => patch.role));
    expect(new Set(used)).toEqual(new Set(rolesOfForm(dial).map(({ id }) => id)));
  });

  test('a form written in inches is drawn the same in centimetres, 2.54 times as large', () => {
    const written = { ...dial, inner: '4 in', outer: '10 in', ring: '13 in', side: '28 in' };
    const [inches, centimetres] = (['in', 'cm'] as const).map((unit) =>
      drawForm(written, unit).map((each) => each.patches.map((patch) => area(patch.outline))),
    );
    inches!.flat().forEach((value, i) => {
      expect(centimetres!.flat()[i]! / value).toBeCloseTo(2.54 ** 2, 9);
    });
  });
});

/** Whether one straight side of the patch, prolonged, has the patch on one hand and all the earlier ones on the other. */
function hasStraightSeam(patch: Patch, earlier: readonly Patch[], size: number): boolean {
  const points = (some: Patch) => flattenAboutCentre(some.outline, 24);
  return sides(patch.outline)
    .filter((side) => side.arc === null)
    .some(({ from, to }) => {
      const [dx, dy] = subtract(to, from);
      const offset = ([x, y]: Point) => (dx * (y - from[1]) - dy * (x - from[0])) / Math.hypot(dx, dy);
      const tolerance = 1e-9 * size;
      return (
        points(patch).every((p) => offset(p) > -tolerance) &&
        earlier.every((before) => points(before).every((p) => offset(p) < tolerance))
      );
    });
}

/** Even–odd rule. */
function inside([x, y]: Point, polygon: readonly Point[]): boolean {
  let odd = false;
  polygon.forEach(([x1, y1], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) {
      odd = !odd;
    }
  });
  return odd;
}
