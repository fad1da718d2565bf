/** The changes that the page can make to a quilt, each a pure function from the old one to the new. */
import type { FormValue } from '../quilt/forms/form-spec.ts';
import type { Block, Facing, Quilt, Role, Scheme } from '../quilt/quilt.ts';
import { withForm } from '../quilt/set-form.ts';
import type { Edit } from './edit-event.ts';

type Habit = 'allowance' | 'room' | 'ruler' | 'squaring' | 'spares' | 'stacks' | 'keep' | 'scheme' | 'name';

/** Allowance, room, ruler, squaring, spares, stacks, what is kept, scheme. */
export const setQuilt =
  (fields: Partial<Pick<Quilt, Habit>>): Edit =>
  (quilt) => ({ ...quilt, ...fields });

/** Which block is cut first, before all others; null for none. */
export const setTestBlock =
  (block: string | null): Edit =>
  ({ testBlock: _, ...quilt }) =>
    block === null ? quilt : { ...quilt, testBlock: block };

export const setBlockCount =
  (block: string, count: number): Edit =>
  (quilt) =>
    mapBlock(quilt, block, (old) => ({ ...old, count }));

/** Other numbers for a block's form; roles that it then needs are added. */
export const setForm =
  (block: string, fields: Readonly<Record<string, FormValue>>): Edit =>
  (quilt) =>
    withForm(quilt, block, fields);

/** Which cloths fill a role in the scheme being planned: one, or several any of which will do; none leaves it open. */
export const setRoleCloths =
  (role: string, cloths: readonly string[]): Edit =>
  (quilt) => ({
    ...quilt,
    schemes: quilt.schemes.map((scheme) =>
      scheme.id === quilt.scheme ? { ...scheme, cloths: withRole(scheme.cloths, role, cloths) } : scheme,
    ),
  });

/** How a role faces. A patch that has a facing of its own keeps it. */
export const setFacing =
  (role: string, fields: Partial<Facing>): Edit =>
  (quilt) => ({
    ...quilt,
    roles: quilt.roles.map((old) => (old.id === role ? { ...old, facing: { ...old.facing, ...fields } } : old)),
  });

/** What a role asks for beyond the quilt's habits; undefined takes a field out, so that the quilt's holds. */
export const setRole =
  (
    role: string,
    fields: { readonly [Field in 'room' | 'spares' | 'hidden' | 'oneCloth']?: Role[Field] | undefined },
  ): Edit =>
  (quilt) => ({
    ...quilt,
    roles: quilt.roles.map((old) => {
      const entries = Object.entries({ ...old, ...fields }).filter(([, value]) => value !== undefined);
      return old.id === role ? (Object.fromEntries(entries) as unknown as Role) : old;
    }),
  });

function withRole(old: Scheme['cloths'], role: string, cloths: readonly string[]): Scheme['cloths'] {
  const [first, ...more] = new Set(cloths);
  if (first === undefined) {
    return Object.fromEntries(Object.entries(old).filter(([id]) => id !== role));
  }
  return { ...old, [role]: more.length === 0 ? first : [first, ...more] };
}

function mapBlock(quilt: Quilt, id: string, change: (block: Block) => Block): Quilt {
  return { ...quilt, blocks: quilt.blocks.map((block) => (block.id === id ? change(block) : block)) };
}
