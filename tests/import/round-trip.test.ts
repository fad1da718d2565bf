/** A block written as SVG and read back is the same block: every patch in its place, units, orders, repeats and roles. */
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
