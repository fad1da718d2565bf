/** A block's form with other numbers, and the roles that it then needs. */
import { addRoles, rolesField } from './add-block.ts';
import type { FormValue } from './forms/form-spec.ts';
import { changedForm, rolesOfForm } from './forms/forms.ts';
import type { Quilt, Scheme } from './quilt.ts';

/**
 * The quilt with some fields of a block's form changed. A role that the block had no need of before is added (`addRoles`); in
 * each scheme it begins with the cloth of the role that stood in its place.
 */
export function withForm(quilt: Quilt, blockId: string, fields: Readonly<Record<string, FormValue>>): Quilt {
  const block = quilt.blocks.find(({ id }) => id === blockId);
  if (block?.form === undefined) {
    return quilt;
  }
  // The fields are checked when the changed quilt is read back.
  const form = changedForm(block.form, fields);
  const exists = (id: string): boolean => quilt.roles.some((role) => role.id === id);
  const before = rolesOfForm(block.form).map(({ id }) => [id, block.roles?.[id] ?? id] as const);
  const known = Object.fromEntries(
    [...before, ...Object.entries(block.roles ?? {})].filter(([, role]) => exists(role)),
  );
  const seeds = rolesOfForm(form);
  const added = addRoles(quilt, seeds, block.name, known);
  const { roles: _, ...bare } = block;
  const changed = { ...bare, form, ...rolesField(added.roles) };
  const places = seeds.map(({ id }, i) => [added.roles[id]!, before[Math.min(i, before.length - 1)]![1]] as const);
  return {
    ...added.quilt,
    blocks: quilt.blocks.map((old) => (old === block ? changed : old)),
    schemes: quilt.schemes.map((scheme) =>
      places.reduce((all, [role, like]) => (exists(role) ? all : withCloth(all, role, like)), scheme),
    ),
  };
}

function withCloth(scheme: Scheme, role: string, like: string): Scheme {
  const cloths = scheme.cloths[like];
  return cloths === undefined ? scheme : { ...scheme, cloths: { ...scheme.cloths, [role]: cloths } };
}
