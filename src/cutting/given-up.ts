/** The same quilt with a little less asked for, for the patches of some roles: what may be given up when cloth is short. */
import type { Cloth, Facing, Patch, Quilt, Role, Scheme } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { isDirectional } from './turn-sets.ts';
import { clothsOf, type ForRoles, withPatches } from './variants.ts';

/** At most so many extra blanks of each kind. */
export function withSpares(quilt: Quilt, most: number, roles: ForRoles): Quilt {
  const changed = quilt.roles.map((role): Role => {
    const spares = role.spares ?? quilt.spares;
    return roles(role.id) && spares > most ? { ...role, spares: most } : role;
  });
  return { ...quilt, roles: changed };
}

/** The roles that have a patch of which she said that its print is hardly seen, and that is not free already. */
export function hiddenRoles(quilt: Quilt, roles: ForRoles): readonly string[] {
  const listed = quilt.blocks.filter(({ units, own }) => units !== undefined || own !== undefined);
  const patches = listed.flatMap((block) => unitsOf(block, quilt.unit).flatMap((unit) => unit.patches));
  const minds = (facing: Facing) => facing.to !== 'free';
  return quilt.roles
    .filter(({ id }) => roles(id))
    .filter(({ id, facing, hidden }) => {
      const own = patches.filter((patch) => patch.role === id);
      return (
        (hidden === true && minds(facing)) ||
        own.some(
          (patch) =>
            (patch.hidden ?? hidden) === true &&
            [patch.facing ?? facing, ...Object.values(patch.facingAt ?? {})].some(minds),
        )
      );
    })
    .map(({ id }) => id);
}

/**
 * Patches that are hardly seen lie as the cutting likes; those of the same role that are seen face as they did. As where
 * facing is ignored (variants.ts), what followed its print did not keep to the grain, and still need not.
 */
export function withHiddenFreed(quilt: Quilt, roles: ForRoles): Quilt {
  const free: Facing = { to: 'free' };
  const before = new Map(quilt.roles.map((role) => [role.id, role]));
  const freed = new Set(hiddenRoles(quilt, roles));
  const changed = quilt.roles.map((role): Role => {
    if (!freed.has(role.id)) {
      return role;
    }
    const followsPrint = role.facing.to !== 'free' && clothsOf(quilt, role.id).every(isDirectional);
    const own: Role = role.hidden === true ? { ...role, facing: free } : role;
    return followsPrint ? { ...own, biasAllowed: true } : own;
  });
  return withPatches({ ...quilt, roles: changed }, (patch): Patch => {
    const role = before.get(patch.role);
    if (role === undefined || !freed.has(role.id)) {
      return patch;
    }
    const isHidden = (patch.hidden ?? role.hidden) === true;
    const { facingAt: _, ...still } = patch;
    return isHidden ? { ...still, facing: free } : { ...patch, facing: patch.facing ?? role.facing };
  });
}

/**
 * Another cloth serves a role in the scheme being planned: in one cloth's stead, or beside it, after it.
 * @param cloth the one that is short
 */
export function withOtherCloth(quilt: Quilt, role: string, cloth: string, other: string, beside: boolean): Quilt {
  const serve = (ids: readonly string[]): readonly string[] =>
    ids.flatMap((id) => (id !== cloth ? [id] : beside ? [cloth, other] : [other]));
  const changed = (scheme: Scheme): Scheme => {
    const ids = [...new Set(serve([scheme.cloths[role] ?? []].flat()))];
    return { ...scheme, cloths: { ...scheme.cloths, [role]: ids.length === 1 ? ids[0]! : ids } };
  };
  return { ...quilt, schemes: quilt.schemes.map((each) => (each.id === quilt.scheme ? changed(each) : each)) };
}

/** Whether anything can be cut from a cloth at all. */
export const canServe = (cloth: Cloth): boolean => cloth.step !== undefined || (cloth.pieces ?? []).length > 0;
