/** Where patches meet, the angles round the place add up: points that should meet do, and no sliver is left beside one. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawForm, FORMS, type Form, faultsOfForm, formValueOf } from '../../../src/quilt/forms/forms.ts';
import { placesOf } from '../../../src/quilt/places.ts';
import type { Outline } from '../../../src/shape/outline.ts';
import { mirrorOutline, moveOutline } from '../../../src/shape/outline.ts';
import { type Point, turn } from '../../../src/shape/point.ts';
import { type Side, sides } from '../exact-outline.ts';
import { likelyForms } from './any-form.ts';

const SQUARES = FORMS.filter(
  ({ kind }) => !['hexagon-rosette', 'setting-triangles', 'sashing', 'border'].includes(kind),
);

/** The same form as a whole square, without holes. */
const asSquare = (form: Form): Form => {
  const given = form as unknown as Record<string, unknown>;
  const filled = ['middle', 'ground', 'square'].filter((field) => field in given).map((field) => [field, true]);
  return { ...form, ...Object.fromEntries(filled) } as Form;
};

test.each(SQUARES.map((spec) => [spec.kind, spec] as const))(
  '%s: round every corner the angles make a full turn, on the outside a half or a quarter',
  (_, spec) => {
    let drawn = 0;
    fc.assert(
      fc.property(likelyForms(spec).map(asSquare), (form) => {
        if (faultsOfForm(form, 'in').length > 0) {
          return;
        }
        drawn++;
        const side = formValueOf(form, 'side') as number;
        const [low, high] = 'square' in form ? [0, side] : [-side / 2, side / 2];
        const onOutside = (value: number): boolean => Math.min(Math.abs(value - low), Math.abs(value - high)) < 1e-6;
        const edges = placedEdges(form);
        for (const [place, angle] of anglesRound(edges)) {
          const wanted = [360, 180, 90][place.filter(onOutside).length]!;
          expect(angle, `${place} of ${JSON.stringify(form)}`).toBeCloseTo(wanted, 4);
        }
      }),
      { numRuns: spec.kind === 'wedge-ring' ? 60 : 20 },
    );
    expect(drawn).toBeGreaterThan(4);
  },
);

/** All edges of all patches in all places, patch by patch. */
function placedEdges(form: Form): readonly (readonly Side[])[] {
  return drawForm(form, 'in').flatMap((unit) =>
    placesOf(unit).flatMap((place) =>
      unit.patches.map(({ outline }) => {
        const hand: Outline = place.mirrored ? mirrorOutline(outline) : outline;
        return sides(moveOutline(hand, (corner) => turn(corner, place.turn)));
      }),
    ),
  );
}

/** Each corner once, with what all patches take round it: their angles there, and a half turn where it lies on an edge. */
function anglesRound(patches: readonly (readonly Side[])[]): readonly (readonly [Point, number])[] {
  const corners = new Map<string, Point>();
  for (const { from } of patches.flat()) {
    corners.set(from.map((value) => (Math.round(value * 1e5) / 1e5 + 0).toFixed(5)).join(), from);
  }
  return [...corners.values()].map((place) => [place, patches.reduce((sum, patch) => sum + angleAt(place, patch), 0)]);
}

function angleAt(place: Point, patch: readonly Side[]): number {
  const near = (other: Point): boolean => Math.hypot(place[0] - other[0], place[1] - other[1]) < 1e-5;
  return patch.reduce((sum, edge, i) => {
    if (near(edge.from)) {
      const before = patch.at(i - 1)!;
      const turned = degrees(headingAt(edge, edge.from)) - degrees(headingAt(before, edge.from));
      const left = ((turned + 540) % 360) - 180;
      // A mirrored patch runs clockwise: its inside lies to the right.
      return sum + 180 - (isAnticlockwise(patch) ? left : -left);
    }
    return sum + (!near(edge.to) && liesOn(place, edge) ? 180 : 0);
  }, 0);
}

const degrees = ([x, y]: Point): number => (Math.atan2(y, x) * 180) / Math.PI;

/** Which way an edge runs at a place on it. Arcs of forms are about the block's centre. */
function headingAt({ from, to, arc }: Side, [x, y]: Point): Point {
  return arc === null ? [to[0] - from[0], to[1] - from[1]] : arc.turn === 'anticlockwise' ? [-y, x] : [y, -x];
}

function liesOn(place: Point, { from, to, arc }: Side): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const along = ((place[0] - from[0]) * dx + (place[1] - from[1]) * dy) / (dx * dx + dy * dy);
  if (along <= 0 || along >= 1) {
    return false;
  }
  // To the left of the chord; an arc of up to half a circle bulges to the right where it turns anticlockwise.
  const left = (dx * (place[1] - from[1]) - dy * (place[0] - from[0])) / Math.hypot(dx, dy);
  return arc === null
    ? Math.abs(left) < 1e-6
    : Math.abs(Math.hypot(...place) - arc.radius) < 1e-6 && left < 0 === (arc.turn === 'anticlockwise');
}

const known = new WeakMap<readonly Side[], boolean>();
function isAnticlockwise(patch: readonly Side[]): boolean {
  const before = known.get(patch);
  if (before !== undefined) {
    return before;
  }
  const found = patch.reduce((sum, { from, to }) => sum + from[0] * to[1] - from[1] * to[0], 0) > 0;
  known.set(patch, found);
  return found;
}
