/** Every form in a quilt of its own: written, read back, turned into what must be cut. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDrawing } from '../../src/cutting/check-drawing.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { addBlock } from '../../src/quilt/add-block.ts';
import { convertQuilt } from '../../src/quilt/convert-quilt.ts';
import { drawForm, FORMS, type Form, faultsOfForm, formSpec, rolesOfForm } from '../../src/quilt/forms/forms.ts';
import { placesOf } from '../../src/quilt/places.ts';
import type { LengthUnit, Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { unitsOf } from '../../src/quilt/units-of.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';
import { type Point, subtract } from '../../src/shape/point.ts';
import { likelyForms, startsAndChoices } from '../quilt/forms/any-form.ts';
import { clothOf, quiltOf } from './sample-quilt.ts';

/** One block of the form; each role in one cloth of a print that points one way, which is the hardest to satisfy. */
function quiltOfForm(form: Form, unit: LengthUnit): Quilt {
  const cloth = clothOf('one-way', unit === 'in' ? {} : { width: 107, step: 25 });
  const none = quiltOf([], { to: 'free' }, cloth, {
    blocks: [],
    roles: [],
    unit,
    schemes: [{ id: 's', name: 'Dawn', cloths: {} }],
  });
  const sizes = unit === 'in' ? {} : { allowance: 0.6, room: 0.6, ruler: 0.5 };
  const { quilt } = addBlock(
    { ...none, ...sizes },
    { name: formSpec(form.kind).title, form, roles: rolesOfForm(form) },
  );
  const cloths = Object.fromEntries(quilt.roles.map(({ id }) => [id, cloth.id]));
  return { ...quilt, schemes: [{ id: 's', name: 'Dawn', cloths }] };
}

describe.each(['in', 'cm'] as const)('in %s', (unit) => {
  const forms = startsAndChoices(unit);

  test.each(forms.map((form, i) => [`${form.kind}, ${i}`, form] as const))(
    '%s has a blank for every patch and no problem',
    (_, form) => {
      const quilt = quiltOfForm(form, unit);
      const read = readQuilt(writeQuilt(quilt));
      expect(read).toEqual(quilt);
      const { groups, problems } = makeCutList(read);
      expect(problems).toEqual([]);
      const patches = unitsOf(read.blocks[0]!, unit).reduce(
        (sum, each) => sum + placesOf(each).length * each.patches.length,
        0,
      );
      const blanks = groups.flatMap((group) => group.blanks);
      expect(blanks.reduce((sum, { demand }) => sum + demand, 0)).toBe(patches);
    },
  );
});

test('whatever its numbers, a form that is drawn is cut without a problem from cloth that is wide enough', () => {
  let cut = 0;
  fc.assert(
    fc.property(fc.oneof(...FORMS.map(likelyForms)), (form) => {
      if (faultsOfForm(form, 'in').length === 0) {
        const quilt = quiltOfForm(form, 'in');
        cut++;
        expect(
          makeCutList({ ...quilt, cloths: quilt.cloths.map((cloth) => ({ ...cloth, width: 400 })) }).problems,
        ).toEqual([]);
      }
    }),
    { numRuns: 30 },
  );
  expect(cut).toBeGreaterThan(10);
});

/** How far two directions are from lying along or square to each other, in degrees. */
const offGrain = ([x, y]: Point): number => {
  const degrees = (Math.atan2(y, x) * 180) / Math.PI;
  return Math.abs(degrees - 90 * Math.round(degrees / 90));
};

test('setting triangles keep the quilt’s edge on the grain: side ones their long side, corner ones their short sides', () => {
  const quilt = quiltOfForm({ kind: 'setting-triangles', block: 10, across: 3, down: 3 }, 'in');
  const solid = { ...quilt, cloths: quilt.cloths.map((cloth) => ({ ...cloth, print: 'solid' as const })) };
  const { groups, problems } = makeCutList(solid);
  expect(problems).toEqual([]);
  for (const { patch, finishedArea } of groups[0]!.blanks) {
    const edges = patch!
      .map((from, i) => subtract(patch![(i + 1) % patch!.length]!, from))
      .sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
    const isSide = finishedArea > 40;
    expect(finishedArea).toBeCloseTo(isSide ? 50 : 25, 9);
    for (const edge of isSide ? edges.slice(2) : edges.slice(0, 2)) {
      expect(offGrain(edge)).toBeLessThan(1e-6);
    }
  }
});

test('nothing is left open, doubled or unequal in any form’s drawing, but for the openings that blocks fill', () => {
  for (const form of startsAndChoices('in')) {
    const faults = checkDrawing(drawForm(form, 'in'), { tolerance: 1e-3, near: 1 / 16 });
    const isOpen = 'middle' in form ? form.middle === false : formSpec(form.kind).frame !== undefined;
    expect(
      faults.filter(({ kind }) => kind !== 'hole' || !isOpen),
      JSON.stringify(form),
    ).toEqual([]);
  }
});

test('a form’s bare lengths are converted with the quilt, and nothing else of it', () => {
  for (const form of startsAndChoices('in')) {
    const there = convertQuilt(quiltOfForm(form, 'in'), 'cm').blocks[0]!.form!;
    for (const [field, value] of Object.entries(form)) {
      const length = formSpec(form.kind).fields.some((each) => each.field === field && each.type === 'length');
      const found = (there as unknown as Record<string, unknown>)[field];
      expect(found).toEqual(length && typeof value === 'number' ? value * 2.54 : value);
    }
  }
});

describe('a form that is no form', () => {
  const messages = (change: (form: Record<string, unknown>) => void): string => {
    const data = JSON.parse(
      writeQuilt(quiltOfForm({ kind: 'wedge-ring', wedges: 20, inner: 2, outer: 8, side: 18 }, 'in')),
    );
    change(data.blocks[0].form);
    try {
      readQuilt(JSON.stringify(data));
      return 'none';
    } catch (error) {
      return (error as Error).message;
    }
  };

  test.each<[string, (form: Record<string, unknown>) => void, RegExp]>([
    [
      'of an unknown kind',
      (f) => (f.kind = 'spiral'),
      /^blocks\[0\]\.form.*: expected a form, with a kind that is one of "compass-star", "wedge-ring",/,
    ],
    [
      'with a field of another form',
      (f) => (f.points = 8),
      /has "points", which this version of Yardwright does not know/,
    ],
    ['without a field', (f) => delete f.wedges, /form\.wedges: expected a number; it is missing/],
    [
      'of an unknown choice',
      (f) => (f.edge = 'wavy'),
      /form\.edge: expected one of "curved", "flat", "pointed"; found "wavy"/,
    ],
    ['with half a wedge', (f) => (f.wedges = 7.5), /form\.wedges: expected a(?: whole)? number; found 7.5/],
    [
      'with too little ground',
      (f) => (f.side = 15),
      /form\.outer: expected less than half the side, which is half of 15 in; found 8 in/,
    ],
    [
      'with cloths that do not come out even',
      (f) => (f.inTurn = 3),
      /form\.inTurn: expected a number that goes evenly into wedges, which is 20; found 3/,
    ],
    [
      'with a tip as long as the wedge',
      (f) => Object.assign(f, { edge: 'pointed', tip: 6 }),
      /form\.tip: expected less than 6 in, the length of a wedge; found 6 in/,
    ],
    [
      'too small to sew',
      (f) => Object.assign(f, { inner: '1/32 in' }),
      /form\.inner: expected none, or at least 1\/16 in; found 1\/32 in/,
    ],
    [
      'all but without wedges',
      (f) => Object.assign(f, { inner: 7.95 }),
      /form\.inner: expected less than outer, which is 8 in, by at least 1\/16 in; found 7.95 in/,
    ],
  ])('%s is told', (_, change, message) => {
    expect(messages(change)).toMatch(message);
  });
});
