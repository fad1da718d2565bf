/** The changes that the page can make to single patches and units, each from the old quilt to the new. */
import { removeRole, usedRoles } from '../quilt/change-blocks.ts';
import { type PatchName, renumbered, withoutPatch, withPatch, withPatchFacing, withUnit } from '../quilt/patch-own.ts';
import type { Block, Facing, Unit } from '../quilt/quilt.ts';
import type { Edit } from './edit-event.ts';

/** For which patches a facing is meant: at one place, at all places of the patch, or wherever its role is. */
export type FacingScope = 'place' | 'patch' | 'role';

export interface FacingOf extends PatchName {
  readonly block: string;
  readonly place: number;
  readonly role: string;
}

/** What the patch had more narrowly of its own goes, so that it faces as is said now. */
export const setFacingOf =
  (patch: FacingOf, scope: FacingScope, facing: Facing): Edit =>
  (quilt) => {
    switch (scope) {
      case 'place':
        return changeBlock(patch.block, (block) => withPatchFacing(block, patch, patch.place, facing))(quilt);
      case 'patch':
        return changeBlock(patch.block, (block) => withPatchFacing(block, patch, null, facing))(quilt);
      case 'role': {
        const freed = changeBlock(patch.block, (block) => withPatchFacing(block, patch, null, null))(quilt);
        const roles = freed.roles.map((role) => (role.id === patch.role ? { ...role, facing } : role));
        return { ...freed, roles };
      }
    }
  };

/** Another role for a listed patch. */
export const setPatchRole = (block: string, patch: PatchName, role: string): Edit =>
  changeBlock(block, (old) => withPatch(old, patch, (one) => ({ ...one, role })));

export const setPatchNumber = (block: string, patch: PatchName, number: number): Edit =>
  changeBlock(block, (old) => renumbered(old, patch, number));

/** A role that only it had goes with it. */
export const removePatch =
  (block: string, patch: PatchName): Edit =>
  (quilt) => {
    const before = usedRoles(quilt);
    const without = changeBlock(block, (old) => withoutPatch(old, patch))(quilt);
    const after = usedRoles(without);
    return [...before].filter((role) => !after.has(role)).reduce(removeRole, without);
  };

export const setUnit = (block: string, unit: string, fields: Partial<Pick<Unit, 'name' | 'paper'>>): Edit =>
  changeBlock(block, (old) => withUnit(old, unit, (one) => ({ ...one, ...fields })));

function changeBlock(id: string, change: (block: Block) => Block): Edit {
  return (quilt) => ({ ...quilt, blocks: quilt.blocks.map((block) => (block.id === id ? change(block) : block)) });
}
