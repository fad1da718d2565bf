/** A block's form with other numbers, and the roles that it then needs. */
import { addRoles, rolesField } from './add-block.ts';
import { isUsed, removeRole } from './change-blocks.ts';
import type { RoleSeed } from './drawn-block.ts';
import type { FormValue } from './forms/form-spec.ts';
import { changedForm, rolesOfForm } from './forms/forms.ts';
import type { Block, Quilt, Role, Scheme } from './quilt.ts';
import { roleIdsOf } from './units-of.ts';

/**
 * The quilt with some fields of a block's form changed. A role that the block had no need of before is added (`addRoles`); in
 * each scheme it begins with the cloth of the role that stood in its place. One that nothing has any more goes. Where the form
 * names or turns a role otherwise now, as geese that fly the other way, the block's own role does too, unless she has changed it.
 */
export function withForm(quilt: Quilt, blockId: string, fields: Readonly<Record<string, FormValue>>): Quilt {
  const block = quilt.blocks.find(({ id }) => id === blockId);
  if (block?.form === undefined) {
    return quilt;
  }
  // The fields are checked when the changed quilt is read back.
  const form = changedForm(block.form, fields);
  const exists = (id: string): boolean => quilt.roles.some((role) => role.id === id);
  const before = rolesOfForm(block.form);
  const roleOf = (seed: RoleSeed): string => block.roles?.[seed.id] ?? seed.id;
  const seeds = rolesOfForm(form);
  // A role that another block has too cannot be another from now on: this block then gets one of its own.
  const parts = (seed: RoleSeed): boolean =>
    seeds.some(({ id, name }) => id === seed.id && name !== seed.name) && sharesRole(quilt, block, roleOf(seed));
  const known = Object.fromEntries(
    before.filter((seed) => exists(roleOf(seed)) && !parts(seed)).map((seed) => [seed.id, roleOf(seed)] as const),
  );
  const added = addRoles(quilt, seeds, block.name, known);
  const needed = Object.fromEntries(seeds.map(({ id }) => [id, added.roles[id]!]));
  const { roles: _, ...bare } = block;
  const changed: Block = { ...bare, form, ...rolesField(needed) };
  const places = seeds.map(({ id }, i) => [needed[id]!, roleOf(before[Math.min(i, before.length - 1)]!)] as const);
  const whole: Quilt = {
    ...added.quilt,
    blocks: quilt.blocks.map((old) => (old === block ? changed : old)),
    roles: added.quilt.roles.map((role) => follow(role, seeds, before, needed, sharesRole(quilt, block, role.id))),
    schemes: quilt.schemes.map((scheme) =>
      places.reduce((all, [role, like]) => (exists(role) ? all : withCloth(all, role, like)), scheme),
    ),
  };
  return before
    .map(roleOf)
    .filter((role) => !isUsed(whole, role))
    .reduce(removeRole, whole);
}

/** A role as its seed is now, where it still is as its seed was before. */
function follow(
  role: Role,
  seeds: readonly RoleSeed[],
  before: readonly RoleSeed[],
  needed: Readonly<Record<string, string>>,
  isShared: boolean,
): Role {
  const now = seeds.find(({ id }) => needed[id] === role.id);
  const then = before.find(({ id }) => id === now?.id);
  if (isShared || now === undefined || then === undefined) {
    return role;
  }
  const isAsSown = JSON.stringify(role.facing) === JSON.stringify(then.facing);
  return {
    ...role,
    ...(role.name === then.name && { name: now.name }),
    ...(isAsSown && { facing: now.facing }),
  };
}

const sharesRole = (quilt: Quilt, block: Block, role: string): boolean =>
  quilt.joined.some((joined) => joined.role === role) ||
  quilt.blocks.some((other) => other !== block && roleIdsOf(other).includes(role));

function withCloth(scheme: Scheme, role: string, like: string): Scheme {
  const cloths = scheme.cloths[like];
  return cloths === undefined ? scheme : { ...scheme, cloths: { ...scheme.cloths, [role]: cloths } };
}
