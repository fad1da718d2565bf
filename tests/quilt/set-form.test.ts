import { expect, test } from 'vitest';
import { addBlock } from '../../src/quilt/add-block.ts';
import { emptyQuilt } from '../../src/quilt/empty-quilt.ts';
import { type Form, formSpec, rolesOfForm } from '../../src/quilt/forms/forms.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { withForm } from '../../src/quilt/set-form.ts';
import { writeQuilt } from '../../src/quilt/write-quilt.ts';

/** A quilt with a block of the kind; each role in a cloth that bears the role's id. */
function quiltOf(kind: string, into: Quilt = emptyQuilt('in')): Quilt {
  const form = formSpec(kind).start('in') as Form;
  const { quilt } = addBlock(into, { name: formSpec(kind).title, form, roles: rolesOfForm(form) });
  const cloths = quilt.roles.map(({ id }) => ({ id, name: id, colour: '#888888', print: 'solid' as const, width: 42 }));
  return {
    ...quilt,
    cloths,
    schemes: quilt.schemes.map((scheme) => ({
      ...scheme,
      cloths: Object.fromEntries(cloths.map(({ id }) => [id, id])),
    })),
  };
}
const changed = (quilt: Quilt, block: number, fields: Parameters<typeof withForm>[2]): Quilt =>
  readQuilt(writeQuilt(withForm(quilt, quilt.blocks[block]!.id, fields)));
const ids = (quilt: Quilt): readonly string[] => quilt.roles.map(({ id }) => id);

test('roles that the form needs now come with the cloth of those in their place, and those nothing has go', () => {
  const star = quiltOf('compass-star');
  const whole = changed(star, 0, { split: false });
  expect(ids(whole)).toEqual(expect.arrayContaining(['long', 'short']));
  expect(ids(whole)).not.toContain('long-light');
  expect(whole.schemes[0]!.cloths).toMatchObject({ long: 'long-light', short: 'long-dark' });
  expect(whole.schemes[0]!.cloths).not.toHaveProperty('short-dark');
  expect(new Set(ids(changed(whole, 0, { split: true })))).toEqual(new Set(ids(star)));
});

test('geese that are told to fly the other way take their role’s facing with them, unless she has changed it', () => {
  const ring = quiltOf('geese-ring');
  const role = (quilt: Quilt) => quilt.roles.find(({ id }) => id === 'geese')!;
  expect(role(changed(ring, 0, { way: 'anticlockwise' }))).toMatchObject({
    name: 'Geese, anticlockwise',
    facing: { to: 'anticlockwise' },
  });
  const hers = {
    ...ring,
    roles: ring.roles.map((each) => ({ ...each, name: 'Swifts', facing: { to: 'upright' as const } })),
  };
  expect(role(changed(hers, 0, { way: 'anticlockwise' }))).toMatchObject({ name: 'Swifts', facing: { to: 'upright' } });
});

test('a role that another block has stays as it is; the block gets one of its own where it must differ', () => {
  const both = quiltOf('geese-arc', quiltOf('geese-ring'));
  expect(ids(both).filter((id) => id.startsWith('geese'))).toEqual(['geese', 'geese-sky']);
  const turned = changed(both, 1, { way: 'anticlockwise' });
  expect(turned.roles.find(({ id }) => id === 'geese')).toEqual(both.roles.find(({ id }) => id === 'geese'));
  expect(turned.blocks[1]!.roles).toEqual({ geese: 'geese-2' });
  expect(turned.roles.find(({ id }) => id === 'geese-2')).toMatchObject({ facing: { to: 'anticlockwise' } });
  expect(turned.schemes[0]!.cloths['geese-2']).toBe('geese');
  const alone = changed(both, 1, { square: false });
  expect(ids(alone)).not.toContain('arc-ground');
  expect(ids(alone)).toContain('ground');
});
