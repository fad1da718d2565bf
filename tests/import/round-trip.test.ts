/** A block written as SVG and read back is the same block: every patch in its place, units, orders, repeats and roles. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sewnSides } from '../../src/cutting/sewn-side.ts';
import { blockToSvg } from '../../src/draw/block-to-svg.ts';
import { importSvg } from '../../src/import/import-svg.ts';
import { drawForm, FORMS, type Form, rolesOfForm } from '../../src/quilt/forms/forms.ts';
import { placesOf } from '../../src/quilt/places.ts';
import type { LengthUnit, Unit } from '../../src/quilt/quilt.ts';
import { edgesOf, mirrorOutline, moveOutline } from '../../src/shape/outline.ts';
import { outlineArea, outlineCentroid } from '../../src/shape/outline-measures.ts';
import { turn } from '../../src/shape/point.ts';

/** Every patch of every place in a form that tells two of them apart, to a thousandth. */
function patchesOf(units: readonly Unit[]): readonly string[] {
  const near = (value: number): number => Math.round(value * 500) / 500 + 0;
  return units
    .flatMap((unit) =>
      placesOf(unit).flatMap((place) =>
        unit.patches.map(({ number, role, outline }) => {
          const hand = place.mirrored ? mirrorOutline(outline) : outline;
          const placed = moveOutline(hand, (corner) => turn(corner, place.turn));
          const arcs = edgesOf(placed).some((edge) => edge.arc !== undefined) ? 'arcs' : 'straight';
          const middle = outlineCentroid(placed).map(near);
          return `${unit.id}${number} ${unit.paper ? 'paper' : 'plain'} ${role} ${middle} ${near(Math.abs(outlineArea(placed)))} ${arcs}`;
        }),
      ),
    )
    .sort();
}

/** Every form in inches; the first few in centimetres too. */
const cases = FORMS.flatMap((spec, i) =>
  (i < 3 ? (['in', 'cm'] as const) : (['in'] as const)).map((unit): [string, Form, LengthUnit] => [
    `${spec.title}, ${unit}`,
    spec.start(unit) as Form,
    unit,
  ]),
);

test.each(cases)('%s', (_, form, unit) => {
  const units = drawForm(form, unit);
  const roles = rolesOfForm(form).map((role, i) => ({
    ...role,
    colour: `#${(i + 1).toString(16).repeat(6).slice(0, 6)}`,
  }));
  const text = blockToSvg({ name: 'Block', units, unit, roles });
  const read = importSvg(text, { unit, name: 'Block' });
  expect(read.notes.filter(({ kind, text: said }) => kind !== 'note' || !said.includes('opening'))).toEqual([]);
  expect(patchesOf(read.block!.units)).toEqual(patchesOf(units));
  expect(read.block!.units.length).toBeLessThanOrEqual(units.length + 2);
  expect(read.block!.roles.map(({ id, name }) => ({ id, name }))).toEqual(
    expect.arrayContaining(
      read.block!.roles.map(({ id }) => ({ id, name: roles.find((role) => role.id === id)!.name })),
    ),
  );
});

/** As a drawing program might hand it on: no groups, ids, titles or roles, each role one colour; but the centre is marked. */
function bare(text: string): string {
  return text
    .replace(/ (?:id="(?!centre)|data-\w+=")[^"]*"/g, '')
    .replace(/<title>[^<]*<\/title>/g, '')
    .replace(/<\/?g[^>]*>/g, '');
}

test.each(FORMS.map((spec): [string, Form] => [spec.title, spec.start('in') as Form]))(
  '%s with nothing said: every patch is there, and what is called paper can be sewn on paper',
  (_, form) => {
    const units = drawForm(form, 'in');
    const roles = rolesOfForm(form).map((role, i) => ({ ...role, colour: COLOURS[i]! }));
    const read = importSvg(bare(blockToSvg({ name: 'Block', units, unit: 'in', roles })), {
      unit: 'in',
      name: 'Block',
    });
    const placesAndAreas = (list: readonly Unit[]) =>
      patchesOf(list)
        .map((told) => told.split(' ').slice(3).join(' '))
        .sort();
    expect(placesAndAreas(read.block!.units)).toEqual(placesAndAreas(units));
    for (const unit of read.block!.units.filter(({ paper }) => paper)) {
      expect(
        sewnSides(unit)
          .map(({ fault }) => fault)
          .filter((fault) => fault !== null),
      ).toEqual([]);
    }
  },
);

const COLOURS = ['#f2d16b', '#a8741a', '#9ec3dd', '#2d5f86', '#dfe6ea', '#b23a48', '#1d2a44', '#88aa66'];

test('the same drawing in any unit, at any scale of its viewBox, inside transforms that undo each other', () => {
  const perInch = { in: 1, cm: 2.54, mm: 25.4, pt: 72, pc: 6, px: 96 } as const;
  const forms = FORMS.slice(0, 8).map((spec) => spec.start('in') as Form);
  fc.assert(
    fc.property(
      fc.constantFrom(...forms),
      fc.constantFrom(...(Object.keys(perInch) as (keyof typeof perInch)[])),
      fc.double({ min: 0.05, max: 400, noNaN: true }),
      fc.integer({ min: -180, max: 180 }),
      fc.integer({ min: -300, max: 300 }),
      (form, written, k, degrees, away) => {
        const units = drawForm(form, 'in');
        const roles = rolesOfForm(form).map((role) => ({ ...role, colour: '#336699' }));
        const text = blockToSvg({ name: 'Block', units, unit: 'in', roles });
        const [x, y, w, h] = /viewBox="([^"]*)"/.exec(text)![1]!.split(' ').map(Number) as [
          number,
          number,
          number,
          number,
        ];
        const inside = text.slice(text.indexOf('>', text.indexOf('<svg')) + 1, text.lastIndexOf('</svg>'));
        const dressed = `<svg xmlns="http://www.w3.org/2000/svg" width="${w * perInch[written]}${written}" height="${h * perInch[written]}${written}" viewBox="${x * k} ${y * k} ${w * k} ${h * k}">
          <g transform="translate(${away},${-away}) rotate(${degrees})scale(${2 * k})"><g transform="scale(.5) rotate(${-degrees}) translate(${-away / k} ${away / k})">${inside}</g></g></svg>`;
        const read = importSvg(dressed, { unit: 'in', name: 'Block' });
        expect(patchesOf(read.block!.units)).toEqual(patchesOf(units));
      },
    ),
    { numRuns: 12, seed: 8 },
  );
});
