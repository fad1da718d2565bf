/** What holds for every form whatever its numbers: it is drawn soundly, or refused with the reason. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sewnSides } from '../../../src/cutting/sewn-side.ts';
import {
  drawForm,
  FORMS,
  type Form,
  faultsOfForm,
  formSpec,
  formValueOf,
  notesOnForm,
  rolesOfForm,
} from '../../../src/quilt/forms/forms.ts';
import { placesOf } from '../../../src/quilt/places.ts';
import type { Unit } from '../../../src/quilt/quilt.ts';
import { flatten } from '../../../src/shape/flatten.ts';
import { mirrorOutline, moveOutline, type Outline } from '../../../src/shape/outline.ts';
import { outlineFault } from '../../../src/shape/outline-fault.ts';
import { type Point, turn } from '../../../src/shape/point.ts';
import { area } from '../exact-outline.ts';
import { areaCovered, formsWithinLimits, likelyForms, startsAndChoices } from './any-form.ts';

const RUNS = { numRuns: 25 };

describe.each(FORMS.map((spec) => [spec.kind, spec] as const))('%s', (_, spec) => {
  test('whatever its numbers, it covers its block exactly or is refused with the reason', () => {
    let drawn = 0;
    const sound = (form: Form): void => {
      const faults = faultsOfForm(form, 'in');
      if (faults.length === 0) {
        drawn++;
        expectSound(form);
      }
      for (const { field, message } of faults) {
        expect(spec.fields.map((each) => each.field)).toContain(field);
        expect(message).toMatch(/^expected .+[;:] \S/);
      }
    };
    fc.assert(fc.property(likelyForms(spec), sound), RUNS);
    expect(drawn).toBeGreaterThan(RUNS.numRuns / 10);
    fc.assert(fc.property(formsWithinLimits(spec), sound), RUNS);
  });

  test('its fields tell all that the form holds, and it begins with numbers that can be drawn', () => {
    for (const unit of ['in', 'cm'] as const) {
      const form = spec.start(unit) as Form;
      const needed = spec.fields.filter(({ usual }) => usual === undefined).map(({ field }) => field);
      expect(Object.keys(form)).toEqual(expect.arrayContaining(['kind', ...needed]));
      expect(['kind', ...spec.fields.map(({ field }) => field)]).toEqual(expect.arrayContaining(Object.keys(form)));
      expect(faultsOfForm(form, unit)).toEqual([]);
      for (const note of notesOnForm(form, unit)) {
        expect(note).not.toMatch(/NaN|undefined|Infinity/);
      }
    }
  });
});

test('every role has a tone, or a number among its like', () => {
  for (const form of startsAndChoices('in')) {
    const { tones, kind } = formSpec(form.kind);
    for (const { id } of rolesOfForm(form)) {
      expect(tones[id] !== undefined || /-\d+$/.test(id), `${kind} ${id}`).toBe(true);
    }
  }
});

test('in centimetres it is drawn 2.54 times as large, where its lengths tell their unit', () => {
  for (const spec of FORMS) {
    const lengths = spec.fields.filter(({ type }) => type === 'length').map(({ field }) => field);
    const form = spec.start('in') as Form;
    const written = {
      ...form,
      ...Object.fromEntries(lengths.map((field) => [field, inInches(formValueOf(form, field))])),
    } as Form;
    const [inches, centimetres] = [drawForm(form, 'in'), drawForm(written, 'cm')].map((units) =>
      units.flatMap((unit) => unit.patches.map(({ outline }) => area(outline))),
    );
    inches!.forEach((each, i) => {
      expect(centimetres![i]! / each).toBeCloseTo(2.54 ** 2, 6);
    });
  }
});

const inInches = (value: unknown): string => (typeof value === 'string' ? value : `${value} in`);

function expectSound(form: Form): void {
  const units = drawForm(form, 'in');
  const name = JSON.stringify(form);
  expectTidy(form, units, name);
  const placed = units.flatMap(placedPatches);
  const whole = areaCovered(form, (field) => formValueOf(form, field));
  const total = placed.reduce((sum, outline) => sum + area(outline), 0);
  expect(Math.abs(total / whole - 1), name).toBeLessThan(1e-6);
  expectNoOverlap(placed, name);
  for (const unit of units.filter(({ paper }) => paper)) {
    expect(
      sewnSides(unit).flatMap(({ fault }) => fault ?? []),
      name,
    ).toEqual([]);
  }
}

function expectTidy(form: Form, units: readonly Unit[], name: string): void {
  const patches = units.flatMap((unit) => unit.patches);
  expect(new Set(units.map(({ id }) => id)).size).toBe(units.length);
  expect(new Set(patches.map(({ role }) => role)), name).toEqual(new Set(rolesOfForm(form).map(({ id }) => id)));
  for (const unit of units) {
    expect(unit.patches.map(({ number }) => number)).toEqual(unit.patches.map((__, i) => i + 1));
    for (const { number, outline } of unit.patches) {
      const where = `${unit.id}${number} of ${name}`;
      expect(outlineFault(outline), where).toBeNull();
      expect(area(outline), where).toBeGreaterThan(0);
    }
  }
}

function placedPatches(unit: Unit): readonly Outline[] {
  return placesOf(unit).flatMap((place) =>
    unit.patches.map(({ outline }) => {
      // Walked backwards a mirrored outline would be anticlockwise again; its arcs make that more than a reversal.
      const first = place.mirrored ? walkedBack(mirrorOutline(outline)) : outline;
      return moveOutline(first, (corner) => turn(corner, place.turn));
    }),
  );
}

function walkedBack(outline: Outline): Outline {
  const [corner, ...rest] = outline;
  return [
    corner!,
    ...rest.reverse().map((entry) =>
      'arc' in entry
        ? {
            arc: {
              ...entry.arc,
              turn: entry.arc.turn === 'clockwise' ? ('anticlockwise' as const) : ('clockwise' as const),
            },
          }
        : entry,
    ),
  ];
}

/** No place of a fixed scatter lies inside two patches. Inside chords, so that a hair's breadth along an arc is no overlap. */
function expectNoOverlap(placed: readonly Outline[], name: string): void {
  const polygons = placed.map((outline) => flatten(outline, { side: 'chord', within: 1e-3 }));
  const boxes = polygons.map((polygon) => {
    const [xs, ys] = [polygon.map(([x]) => x), polygon.map(([, y]) => y)];
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)] as const;
  });
  const [left, right] = [Math.min(...boxes.map(([l]) => l)), Math.max(...boxes.map(([, r]) => r))];
  const [low, high] = [Math.min(...boxes.map(([, , b]) => b)), Math.max(...boxes.map(([, , , t]) => t))];
  for (let k = 1; k <= 150; k++) {
    const p: Point = [left + ((k * 0.754877666) % 1) * (right - left), low + ((k * 0.569840291) % 1) * (high - low)];
    const holding = polygons.filter((polygon, i) => {
      const [l, r, b, t] = boxes[i]!;
      return p[0] > l && p[0] < r && p[1] > b && p[1] < t && isWithin(p, polygon);
    });
    expect(holding.length, `${p} in ${name}`).toBeLessThanOrEqual(1);
  }
}

/** Even–odd rule; nearer to an edge than the arcs are flattened counts as outside. */
function isWithin([x, y]: Point, polygon: readonly Point[]): boolean {
  let odd = false;
  for (let i = 0; i < polygon.length; i++) {
    const [x1, y1] = polygon[i]!;
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) {
      odd = !odd;
    }
    const size = Math.hypot(x2 - x1, y2 - y1) || 1;
    const along = Math.max(0, Math.min(1, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / size ** 2));
    if (Math.hypot(x - x1 - along * (x2 - x1), y - y1 - along * (y2 - y1)) < 2e-3) {
      return false;
    }
  }
  return odd;
}
