import type { DrawnBlock, RoleSeed } from '../quilt/drawn-block.ts';
import type { Facing } from '../quilt/quilt.ts';

/**
 * A block with its roles called otherwise. Roles that come to have one name are one; a name that a role of the quilt has already
 * stands for that role.
 * @param names by the id of the block's seed
 * @param facing of the roles that are new
 */
export function renameRoles(
  block: DrawnBlock,
  names: ReadonlyMap<string, string>,
  known: readonly RoleSeed[],
  facing: Facing,
): DrawnBlock {
  const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
  const roles: RoleSeed[] = [];
  const idOf = new Map<string, string>();
  for (const seed of block.roles) {
    const name = names.get(seed.id) ?? seed.name;
    const twin = roles.find((role) => same(role.name, name)) ?? known.find((role) => same(role.name, name));
    // An id that another role of the quilt has would be taken for that role.
    const taken = known.some(({ id }) => id === seed.id);
    const role: RoleSeed = twin ?? { ...seed, id: taken ? `${seed.id}-drawn` : seed.id, name, facing };
    idOf.set(seed.id, role.id);
    if (!roles.some(({ id }) => id === role.id)) {
      roles.push({ id: role.id, name: role.name, facing: role.facing });
    }
  }
  const units = block.units.map((unit) => ({
    ...unit,
    patches: unit.patches.map((patch) => ({ ...patch, role: idOf.get(patch.role) ?? patch.role })),
  }));
  return { ...block, units, roles };
}
