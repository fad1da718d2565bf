/** The changes that the page can make to joined lengths, each from the old quilt to the new. */
import type { JoinedLength, LengthUnit, Quilt, Role, Scheme } from '../quilt/quilt.ts';
import { followed } from '../quilt/quilt-size.ts';
import { roleIdsOf } from '../quilt/units-of.ts';
import type { Edit } from './edit-event.ts';

export const JOINED_SORTS = ['Binding', 'Sashing', 'Border', 'Backing'] as const;
export type JoinedSort = (typeof JOINED_SORTS)[number];

/** New values for some fields; undefined takes a field out. */
type Changes = { readonly [Field in keyof JoinedLength]?: JoinedLength[Field] | undefined };

export const setJoined =
  (id: string, fields: Changes): Edit =>
  (quilt) => ({
    ...quilt,
    joined: quilt.joined.map((old) => {
      const entries = Object.entries({ ...old, ...fields }).filter(([, value]) => value !== undefined);
      return old.id === id ? (Object.fromEntries(entries) as unknown as JoinedLength) : old;
    }),
  });

/**
 * A joined length to begin with, in a role and a cloth of its own in every scheme, of a size that follows from the quilt's.
 * @param cloth in the scheme being planned; the others begin with the cloth of their first role
 */
export const addJoined =
  (sort: JoinedSort, id: string, cloth: string): Edit =>
  (quilt) => {
    const role = freeRole(quilt, id);
    const number = quilt.joined.filter(({ name }) => name === sort || name.startsWith(`${sort} `)).length + 1;
    const name = number === 1 ? sort : `${sort} ${number}`;
    const facing: Role['facing'] = { to: sort === 'Backing' ? 'upright' : 'free' };
    const added: JoinedLength = { id, name, role, ...begun(quilt.unit, sort) };
    const all = { ...quilt, joined: [...quilt.joined, added] };
    return {
      ...all,
      joined: all.joined.map((joined) => (joined === added ? followed(all, joined) : joined)),
      roles: [...quilt.roles, { id: role, name, facing }],
      schemes: quilt.schemes.map((scheme) => ({
        ...scheme,
        cloths: { ...scheme.cloths, [role]: scheme.id === quilt.scheme ? cloth : firstCloth(scheme, cloth) },
      })),
    };
  };

/** Lets a joined length follow the quilt's size; or settles it at what it has come to, with other values for some fields. */
export const letFollow =
  (id: string, follows: JoinedLength['follows'] | undefined, fields: Changes = {}): Edit =>
  (quilt) => {
    const joined = quilt.joined.find((old) => old.id === id);
    if (joined === undefined) {
      return quilt;
    }
    const { length, width } = followed(quilt, joined);
    return setJoined(id, { length, ...(joined.kind === 'panels' && { width }), ...fields, follows })(quilt);
  };

/** How large the finished quilt is; null for as it is reckoned. */
export const setFinished =
  (finished: Quilt['finished'] | null): Edit =>
  ({ finished: _, ...quilt }) =>
    finished == null ? quilt : { ...quilt, finished };

/** Takes a joined length out, and its role where nothing else has it. */
export const removeJoined =
  (id: string): Edit =>
  (quilt) => {
    const gone = quilt.joined.find((old) => old.id === id);
    const joined = quilt.joined.filter((old) => old.id !== id);
    if (gone === undefined || isShared({ ...quilt, joined }, gone.role)) {
      return { ...quilt, joined };
    }
    return {
      ...quilt,
      joined,
      roles: quilt.roles.filter((role) => role.id !== gone.role),
      schemes: quilt.schemes.map((scheme) => ({
        ...scheme,
        cloths: Object.fromEntries(Object.entries(scheme.cloths).filter(([role]) => role !== gone.role)),
      })),
    };
  };

/** Gives a joined length that shares its role with patches one of its own, of the same cloths to begin with. */
export const giveOwnRole =
  (id: string): Edit =>
  (quilt) => {
    const own = quilt.joined.find((old) => old.id === id);
    if (own === undefined) {
      return quilt;
    }
    const role = freeRole(quilt, id);
    const before = quilt.roles.find((each) => each.id === own.role);
    return {
      ...quilt,
      joined: quilt.joined.map((old) => (old.id === id ? { ...old, role } : old)),
      roles: [...quilt.roles, { id: role, name: own.name, facing: before?.facing ?? { to: 'free' } }],
      schemes: quilt.schemes.map((scheme) => {
        const cloths = scheme.cloths[own.role];
        return cloths === undefined ? scheme : { ...scheme, cloths: { ...scheme.cloths, [role]: cloths } };
      }),
    };
  };

/** Whether patches, or several joined lengths, have a role. @param quilt without the joined length that is asked about */
export function isShared(quilt: Quilt, role: string): boolean {
  return (
    quilt.joined.some((each) => each.role === role) || quilt.blocks.some((block) => roleIdsOf(block).includes(role))
  );
}

function freeRole({ roles }: Quilt, wish: string): string {
  let id = wish;
  for (let number = 2; roles.some((role) => role.id === id); number++) {
    id = `${wish} ${number}`;
  }
  return id;
}

const firstCloth = (scheme: Scheme, otherwise: string): string => Object.values(scheme.cloths).flat()[0] ?? otherwise;

/** Widths, losses and overhangs to begin with are common practice; a straight seam takes twice its allowance. */
const USUAL = {
  in: { binding: '2 1/2 in', strip: '2 1/2 in', straight: '1/2 in', seam: '1 in', over: '4 in' },
  cm: { binding: '6.5 cm', strip: '6.5 cm', straight: '13 mm', seam: '25 mm', over: '10 cm' },
} as const;

/** Its length, and a backing's width, follow from the quilt's size; what stands there meanwhile is any length. */
function begun(unit: LengthUnit, sort: JoinedSort): Omit<JoinedLength, 'id' | 'name' | 'role'> {
  const usual = USUAL[unit];
  const length = usual.strip;
  switch (sort) {
    case 'Binding':
      // Joined on the slant, which loses as much as the strip is wide.
      return { follows: 'binding', length, width: usual.binding, join: usual.binding };
    case 'Sashing':
      return { follows: 'sashing', length, width: usual.strip, join: usual.straight };
    case 'Border':
      return { follows: 'border', length, width: usual.strip, join: usual.straight };
    case 'Backing':
      return { kind: 'panels', follows: 'backing', length, width: length, join: usual.seam, overhang: usual.over };
  }
}
