/** What she may give up so that the cloth in hand will do: one thing at a time, or several together. */
import { canServe, hiddenRoles, withHiddenFreed, withOtherCloth, withSpares } from '../cutting/given-up.ts';
import { isDirectional } from '../cutting/turn-sets.ts';
import { clothsOf, withRoom, withTolerance } from '../cutting/variants.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { nearestFirst } from './near-cloths.ts';

/** Something asked for less of, for the patches cut from the cloth alone; or another cloth that serves a role of it. */
export type Change =
  | { readonly kind: 'room'; readonly room: Length }
  | { readonly kind: 'facing'; readonly within: number }
  | { readonly kind: 'hidden' }
  | { readonly kind: 'spares'; readonly spares: number }
  | OtherCloth;

export interface OtherCloth {
  readonly kind: 'cloth';
  readonly role: string;
  readonly cloth: string;
  /** True: only for what the cloth in hand cannot give. False: in its stead. */
  readonly beside: boolean;
}

/** How far off a print may point before most eyes see it. */
const TOLERANCE = 8;

/** Less room than is usual, and none. */
const ROOMS = { in: ['1/8 in', 0], cm: ['3 mm', 0] } as const;

/** So many other cloths are tried for a role in a cloth's stead, and so many beside it: those nearest in colour. */
const STEAD_MOST = 4;
const BESIDE_MOST = 2;

/** The roles that the scheme fills with a cloth, alone or among others. */
export const rolesOf = (quilt: Quilt, cloth: string): readonly string[] =>
  quilt.roles.map(({ id }) => id).filter((role) => clothsOf(quilt, role).some(({ id }) => id === cloth));

/** Less of one thing asked for, the gentlest first. */
export function lessAsked(quilt: Quilt, cloth: string): readonly Change[] {
  const own = new Set(rolesOf(quilt, cloth));
  const directional = quilt.cloths.some((each) => each.id === cloth && isDirectional(each));
  const spares = Math.max(0, ...quilt.roles.filter(({ id }) => own.has(id)).map((role) => role.spares ?? quilt.spares));
  const hidden = directional && hiddenRoles(quilt, (role) => own.has(role)).length > 0;
  return [
    ...ROOMS[quilt.unit].map((room): Change => ({ kind: 'room', room })),
    ...(hidden ? [{ kind: 'hidden' } as const] : []),
    ...(directional ? [{ kind: 'facing', within: TOLERANCE } as const] : []),
    ...(spares > 0 ? [{ kind: 'spares', spares: spares - 1 } as const] : []),
  ];
}

/**
 * Another cloth of the quilt for one of the cloth's roles, those nearest in colour first. Where the cloth has a single role,
 * also beside it, so that what is in hand still serves.
 */
export function otherCloths(quilt: Quilt, cloth: string): readonly OtherCloth[] {
  const short = quilt.cloths.find((each) => each.id === cloth)!;
  const own = rolesOf(quilt, cloth);
  return own.flatMap((role) => {
    const serving = clothsOf(quilt, role).map(({ id }) => id);
    const others = quilt.cloths.filter((each) => canServe(each) && !serving.includes(each.id));
    const near = nearestFirst(others, short);
    const change = (beside: boolean) => (other: { readonly id: string }) =>
      ({ kind: 'cloth', role, cloth: other.id, beside }) as const;
    const beside = own.length > 1 ? [] : near.slice(0, BESIDE_MOST).map(change(true));
    return [...beside, ...near.slice(0, STEAD_MOST).map(change(false))];
  });
}

/** All that can be given up together: of each kind that which asks for least. */
export function allTogether(alone: readonly Change[]): readonly Change[] {
  return [...new Map(alone.map((change) => [change.kind, change])).values()];
}

/** Every choice of so many kinds of change, one of each kind, the gentlest first. */
export function choices(alone: readonly Change[], size: number): readonly (readonly Change[])[] {
  if (size === 0) {
    return [[]];
  }
  return alone.flatMap((first, i) =>
    choices(
      alone.slice(i + 1).filter(({ kind }) => kind !== first.kind),
      size - 1,
    ).map((rest) => [first, ...rest]),
  );
}

/** The quilt with all of that given up, in the scheme being planned. */
export function givenUp(quilt: Quilt, cloth: string, changes: readonly Change[]): Quilt {
  const own = new Set(rolesOf(quilt, cloth));
  const roles = (role: string) => own.has(role);
  const atMost = (a: Length, b: Length) => (lengthIn(quilt.unit, a) <= lengthIn(quilt.unit, b) ? a : b);
  const make = (after: Quilt, change: Change): Quilt => {
    switch (change.kind) {
      case 'room':
        return withRoom(after, change.room, atMost, roles);
      case 'facing':
        return withTolerance(after, change.within, roles);
      case 'hidden':
        return withHiddenFreed(after, roles);
      case 'spares':
        return withSpares(after, change.spares, roles);
      case 'cloth':
        return withOtherCloth(after, change.role, cloth, change.cloth, change.beside);
    }
  };
  let after = quilt;
  for (const change of changes) {
    after = make(after, change);
  }
  return after;
}

/** Whether a change asks for as little as another, or less. */
export function asksNoMore(change: Change, than: Change, { unit }: Quilt): boolean {
  if (change.kind === 'room' && than.kind === 'room') {
    return lengthIn(unit, change.room) <= lengthIn(unit, than.room);
  }
  return JSON.stringify(change) === JSON.stringify(than);
}
