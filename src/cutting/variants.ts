/** The same quilt with one thing about its cutting changed, so that its price can be seen. All are pure. */
import { parseLength } from '../quilt/measure.ts';
import type { Block, Cloth, Facing, Length, Patch, Quilt, Role, Scheme } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { isDirectional } from './turn-sets.ts';

/** Which roles a change is for. */
export type ForRoles = (role: string) => boolean;

const ALL: ForRoles = () => true;

/**
 * Facing ignored: prints lie as the cutting likes. A patch that followed its print did not keep its edges to the grain, and
 * still need not, or the grain's price would be counted as facing's.
 */
export function withoutFacing(quilt: Quilt): Quilt {
  const followsPrint = (role: Role) => role.facing.to !== 'free' && clothsOf(quilt, role.id).every(isDirectional);
  const roles = quilt.roles.map((role): Role => {
    const free: Role = { ...role, facing: { to: 'free' } };
    return followsPrint(role) ? { ...free, biasAllowed: true } : free;
  });
  return withPatches({ ...quilt, roles }, ({ facing: _, facingAt: __, ...patch }) => patch);
}

/** Room of no more than so much, for the patches of some roles. */
export function withRoom(
  quilt: Quilt,
  room: Length,
  atMost: (a: Length, b: Length) => Length,
  roles: ForRoles = ALL,
): Quilt {
  const changed = quilt.roles.map((role) =>
    roles(role.id) ? { ...role, room: atMost(role.room ?? quilt.room, room) } : role,
  );
  return withPatches({ ...quilt, roles: changed }, (patch) =>
    patch.room === undefined || !roles(patch.role) ? patch : { ...patch, room: atMost(patch.room, room) },
  );
}

/** Prints may point so many degrees off, either way, for the patches of some roles. */
export function withTolerance(quilt: Quilt, degrees: number, roles: ForRoles = ALL): Quilt {
  const wider = (facing: Facing): Facing =>
    facing.to === 'free' ? facing : { ...facing, within: Math.max(facing.within ?? 0, degrees) };
  const changed = quilt.roles.map((role) => (roles(role.id) ? { ...role, facing: wider(role.facing) } : role));
  return withPatches({ ...quilt, roles: changed }, (patch) => (roles(patch.role) ? withFacings(patch, wider) : patch));
}

/**
 * As the usual rule of thumb has it: every patch boxed, each role from the first of its cloths that can be bought, nothing
 * from the shelf. A cloth that cannot be bought stays as it is.
 */
export function boxedFromBolts(quilt: Quilt): Quilt {
  const canBuy = new Set(quilt.cloths.filter((cloth) => cloth.step !== undefined).map((cloth) => cloth.id));
  const onlyFirst = (scheme: Scheme): Scheme => ({
    ...scheme,
    cloths: Object.fromEntries(
      Object.entries(scheme.cloths).map(([role, cloths]) => {
        const ids = [cloths].flat();
        return [role, ids.find((id) => canBuy.has(id)) ?? ids[0]!];
      }),
    ),
  });
  return {
    ...quilt,
    roles: quilt.roles.map((role) => ({ ...role, shapes: ['box'] })),
    cloths: quilt.cloths.map((cloth) => (canBuy.has(cloth.id) ? { ...cloth, pieces: [] } : cloth)),
    schemes: quilt.schemes.map(onlyFirst),
  };
}

/** The name of the piece that stands for what she has in hand. */
export const IN_HAND = 'in hand';

/**
 * So much of a cloth in hand, as bought and not yet washed; no more is to be had, and it costs nothing. Where no other cloth can be bought for
 * the same patches it is a bolt sold in that one length: then the engine's bound tells whether one is enough. Else it is a
 * piece like those on the shelf, and what it cannot give is bought of the others.
 * @param alone whether no other cloth can be bought for the same patches
 */
export function inHand(quilt: Quilt, cloth: string, have: Length, alone: boolean): Quilt {
  const length = withUnit(quilt, have);
  const cloths = quilt.cloths.map((each): Cloth => {
    if (each.id !== cloth) {
      return each;
    }
    const { step: _, price: __, ...owned } = each;
    // What was in hand before is what is in hand now, told anew.
    const pieces = (each.pieces ?? []).filter(({ id }) => id !== IN_HAND);
    const shelf = each.pieces === undefined ? {} : { pieces };
    return alone
      ? { ...owned, ...shelf, step: length }
      : { ...owned, pieces: [...pieces, { id: IN_HAND, width: each.width, length, washed: false }] };
  });
  return { ...quilt, cloths };
}

/** A length as it may stand in a quilt file, where text without a unit may not. */
const withUnit = (quilt: Quilt, length: Length): Length =>
  typeof length === 'string' && parseLength(length).unit === null ? `${length} ${quilt.unit}` : length;

/** So much of a cloth laid on its shelf, at its whole width and not yet washed. It can still be bought as it could. */
export function onShelf(quilt: Quilt, cloth: string, have: Length): Quilt {
  const cloths = quilt.cloths.map((each): Cloth => {
    const pieces = (each.pieces ?? []).filter(({ id }) => id !== IN_HAND);
    const piece = { id: IN_HAND, width: each.width, length: withUnit(quilt, have), washed: false };
    return each.id === cloth ? { ...each, pieces: [...pieces, piece] } : each;
  });
  return { ...quilt, cloths };
}

/** A patch with each facing of its own changed. */
function withFacings(patch: Patch, change: (facing: Facing) => Facing): Patch {
  const { facing, facingAt } = patch;
  const places = Object.entries(facingAt ?? {}).map(([place, own]) => [place, change(own)] as const);
  return {
    ...patch,
    ...(facing !== undefined && { facing: change(facing) }),
    ...(facingAt !== undefined && { facingAt: Object.fromEntries(places) }),
  };
}

/** Every patch changed that has something of its own; those that a form draws otherwise follow their role. */
export function withPatches(quilt: Quilt, change: (patch: Patch) => Patch): Quilt {
  const blocks = quilt.blocks.map((block): Block => {
    if (block.units === undefined && block.own === undefined) {
      return block;
    }
    const { form: _, own: __, roles: ___, ...rest } = block;
    const units = unitsOf(block, quilt.unit).map((unit) => ({ ...unit, patches: unit.patches.map(change) }));
    return { ...rest, units };
  });
  return { ...quilt, blocks };
}

/** The cloths that the quilt's scheme gives to a role. */
export function clothsOf(quilt: Quilt, role: string) {
  const cloths = quilt.schemes.find((scheme) => scheme.id === quilt.scheme)?.cloths ?? {};
  const ids = Object.hasOwn(cloths, role) ? [cloths[role]!].flat() : [];
  return quilt.cloths.filter((cloth) => ids.includes(cloth.id));
}
