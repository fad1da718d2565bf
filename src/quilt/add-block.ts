/** Puts a block into a quilt, and the roles that it names where the quilt has none such. */
import type { DrawnBlock, RoleSeed } from './drawn-block.ts';
import type { Form } from './forms/forms.ts';
import { freshIdFor, freshName } from './fresh-id.ts';
import type { Block, Quilt } from './quilt.ts';
import { inRoles } from './units-of.ts';

/** A block that is drawn from the numbers of a form. */
export interface FormBlock {
  readonly name: string;
  readonly form: Form;
  /** Every role that the form fills, once. */
  readonly roles: readonly RoleSeed[];
  /** How many of it the quilt has. Default 1. */
  readonly count?: number;
}

export interface BlockAdded {
  readonly quilt: Quilt;
  /** The new block's id. */
  readonly block: string;
  /** From the ids of the block's seeds to those of the quilt's roles. */
  readonly roles: Readonly<Record<string, string>>;
}

/**
 * The quilt with one such block more, at its end. A block of a name that is taken gets a number after its name. Roles: see
 * `addRoles`. Lengths are the block's own and must be in the quilt's unit.
 */
export function addBlock(quilt: Quilt, block: DrawnBlock | FormBlock): BlockAdded {
  const name = freshName(
    block.name,
    quilt.blocks.map((one) => one.name),
  );
  const id = freshIdFor(name, quilt.blocks, 'block');
  const { quilt: withRoles, roles } = addRoles(quilt, block.roles, name);
  const added: Block =
    'form' in block
      ? { id, name, count: block.count ?? 1, form: block.form, ...rolesField(roles) }
      : {
          id,
          name,
          count: 1,
          ...(block.loose === true && { loose: true }),
          units: inRoles(block.units, roles),
          ...(block.traced !== undefined && { traced: block.traced }),
        };
  return { quilt: { ...withRoles, blocks: [...withRoles.blocks, added] }, block: id, roles };
}

/**
 * The quilt with a role for each seed. A role of the same id and the same name is shared; a role of the same id alone is
 * another, so the seed gets an id of its own. A name that another role has already is told apart by the block's.
 * @param known roles that stand for seeds already, by the seed's id
 */
export function addRoles(
  quilt: Quilt,
  seeds: readonly RoleSeed[],
  blockName: string,
  known: Readonly<Record<string, string>> = {},
): { readonly quilt: Quilt; readonly roles: Readonly<Record<string, string>> } {
  const all = [...quilt.roles];
  const roles: Record<string, string> = { ...known };
  for (const seed of seeds) {
    const same = all.find((role) => role.id === seed.id && role.name === seed.name);
    if (roles[seed.id] !== undefined) {
      continue;
    }
    if (same !== undefined) {
      roles[seed.id] = seed.id;
      continue;
    }
    const names = all.map((role) => role.name);
    const id = freshIdFor(seed.id, all, 'role');
    const isTaken = names.includes(seed.name);
    all.push({ ...seed, id, name: isTaken ? freshName(`${seed.name} of ${blockName}`, names) : seed.name });
    roles[seed.id] = id;
  }
  return { quilt: { ...quilt, roles: all }, roles };
}

/** What a block with a form writes of its roles: only those that do not go by the form's own id. */
export function rolesField(roles: Readonly<Record<string, string>>): Pick<Block, 'roles'> {
  const other = Object.entries(roles).filter(([seed, role]) => seed !== role);
  return other.length === 0 ? {} : { roles: Object.fromEntries(other) };
}
