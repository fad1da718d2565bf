/** The patch that is looked at on the picture, and what it is in the quilt as that stands now. */
import { type BlockPatch, blockPatches } from '../cutting/block-patches.ts';
import { isDirectional } from '../cutting/turn-sets.ts';
import { facingOf } from '../quilt/facing-of.ts';
import type { PatchName } from '../quilt/patch-own.ts';
import type { Block, Cloth, Facing, Quilt, Role } from '../quilt/quilt.ts';
import type { FacingScope } from './patch-edits.ts';

export interface ChosenPatch extends PatchName {
  readonly place: number;
}

/** Sent when another patch is pointed at. */
export type ChooseEvent = CustomEvent<ChosenPatch>;

export interface PatchInSight {
  readonly each: BlockPatch;
  readonly role: Role;
  readonly facing: Facing;
  readonly cloth: Cloth | undefined;
}

/** What is chosen, or else the first patch whose print points anywhere, or else the first. Null where the block has none. */
export function patchInSight(quilt: Quilt, block: Block, chosen: ChosenPatch | null): PatchInSight | null {
  const all = blockPatches(block, quilt.unit);
  const each =
    (chosen !== null && all.find((one) => isChosen(one, chosen))) ||
    all.find(
      ({ patch }) => firstCloth(quilt, patch.role) !== undefined && isDirectional(firstCloth(quilt, patch.role)!),
    ) ||
    all[0];
  const role = quilt.roles.find(({ id }) => id === each?.patch.role);
  if (each === undefined || role === undefined) {
    return null;
  }
  const facing = facingOf(block, each.patch, role, each.place.index);
  return { each, role, facing, cloth: firstCloth(quilt, role.id) };
}

function firstCloth(quilt: Quilt, role: string): Cloth | undefined {
  const scheme = quilt.schemes.find(({ id }) => id === quilt.scheme);
  const [first] = [scheme?.cloths[role] ?? []].flat();
  return quilt.cloths.find(({ id }) => id === first);
}

export const isChosen = ({ unit, patch, place }: BlockPatch, chosen: ChosenPatch): boolean =>
  unit.id === chosen.unit && patch.number === chosen.number && place.index === chosen.place;

/** How widely the patch's facing is meant now. */
export function scopeOf({ each }: PatchInSight): FacingScope {
  const { patch, place } = each;
  if (patch.facingAt?.[place.index] !== undefined) {
    return 'place';
  }
  return patch.facing === undefined ? 'role' : 'patch';
}
