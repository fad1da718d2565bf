import type { Block, Facing, Patch, Role } from './quilt.ts';

/**
 * How a patch faces at one place of its unit: as said for that place, else for the patch, else for its role. In a loose block
 * outward and the like are taken along the unit's axis.
 * @param place its index (places.ts)
 */
export function facingOf(block: Pick<Block, 'loose'>, patch: Patch, role: Pick<Role, 'facing'>, place: number): Facing {
  const facing = patch.facingAt?.[place] ?? patch.facing ?? role.facing;
  return block.loose === true ? { ...facing, from: 'axis' } : facing;
}
