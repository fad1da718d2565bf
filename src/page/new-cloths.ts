/** Cloths made for roles that have none yet, so that a plan is one step away; what they really are is told afterwards. */
import type { Cloth, PrintKind, Quilt, Role } from '../quilt/quilt.ts';
import { addCloth, freeId, newCloth } from './cloth-edits.ts';
import type { Edit } from './edit-event.ts';
import { setRoleCloths } from './edits.ts';

/** Colours of dyed cotton, light and dark by turns, so that neighbours differ by more than hue. */
const COLOURS: readonly string[] = [
  '#e4c987',
  '#2f4a6d',
  '#d9b3a6',
  '#5b2f3a',
  '#b9cfae',
  '#37563f',
  '#e3dccb',
  '#7a4a24',
  '#a9bfd6',
  '#4b3b66',
  '#d6a35c',
  '#1f5c63',
];

/** The roles that the scheme being planned gives no cloth and that something is cut for. */
export function rolesWithoutCloth(quilt: Quilt, isUsed: (role: string) => boolean): readonly Role[] {
  const cloths = quilt.schemes.find((scheme) => scheme.id === quilt.scheme)?.cloths ?? {};
  return quilt.roles.filter(({ id }) => (cloths[id] ?? []).length === 0 && isUsed(id));
}

/**
 * The print to begin with. A one-way print where the role faces somewhere: a plan for it serves any other print too, while
 * the other way about she would run short.
 */
export const firstPrint = (role: Role): PrintKind => (role.facing.to === 'free' ? 'solid' : 'one-way');

/** A new cloth in a colour that no other has yet, if one is left. */
export function clothFor(quilt: Quilt, role: Role, print: PrintKind): Cloth {
  const taken = new Set(quilt.cloths.map((cloth) => cloth.colour));
  const colour = COLOURS.find((one) => !taken.has(one)) ?? COLOURS[quilt.cloths.length % COLOURS.length]!;
  return {
    ...newCloth(quilt, freeId('cloth', quilt.cloths)),
    name: `Cloth for ${role.name.charAt(0).toLowerCase()}${role.name.slice(1)}`,
    colour,
    print,
  };
}

/** What fills a role from now on: a new cloth of a print, or a cloth that is there. */
export type Filling = { readonly print: PrintKind } | { readonly cloth: string };

/** Fills each role in the scheme being planned. */
export const fillRoles =
  (fillings: ReadonlyMap<string, Filling>): Edit =>
  (quilt) => {
    let filled = quilt;
    for (const role of quilt.roles) {
      const filling = fillings.get(role.id);
      if (filling !== undefined && 'cloth' in filling) {
        filled = setRoleCloths(role.id, [filling.cloth])(filled);
      } else if (filling !== undefined) {
        const cloth = clothFor(filled, role, filling.print);
        filled = setRoleCloths(role.id, [cloth.id])(addCloth(cloth)(filled));
      }
    }
    return filled;
  };

/** A new cloth at one place in the list of cloths that serve a role. */
export const addRoleCloth =
  (role: Role, cloths: readonly string[], place: number): Edit =>
  (quilt) => {
    const cloth = clothFor(quilt, role, firstPrint(role));
    return setRoleCloths(role.id, [...cloths.slice(0, place), cloth.id, ...cloths.slice(place + 1)])(
      addCloth(cloth)(quilt),
    );
  };
