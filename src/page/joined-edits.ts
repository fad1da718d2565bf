/** The changes that the page can make to joined lengths, each from the old quilt to the new. */
import type { Block, JoinedLength, LengthUnit, Quilt, Role, Scheme } from '../quilt/quilt.ts';
import { roleIdsOf } from '../quilt/units-of.ts';
import { blockExtent } from './block-extent.ts';
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
 * A joined length to begin with, in a role and a cloth of its own in every scheme, sized as if the blocks lay side by side
 * in as square a quilt as they make.
 * @param cloth in the scheme being planned; the others begin with the cloth of their first role
 */
export const addJoined =
  (sort: JoinedSort, id: string, cloth: string): Edit =>
  (quilt) => {
    const role = freeRole(quilt, id);
    const number = quilt.joined.filter(({ name }) => name === sort || name.startsWith(`${sort} `)).length + 1;
    const name = number === 1 ? sort : `${sort} ${number}`;
    const facing: Role['facing'] = { to: sort === 'Backing' ? 'upright' : 'free' };
    return {
      ...quilt,
      joined: [...quilt.joined, { id, name, role, ...sized(quilt, sort) }],
      roles: [...quilt.roles, { id: role, name, facing }],
      schemes: quilt.schemes.map((scheme) => ({
        ...scheme,
        cloths: { ...scheme.cloths, [role]: scheme.id === quilt.scheme ? cloth : firstCloth(scheme, cloth) },
      })),
    };
  };

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
  in: {
    binding: '2 1/2 in',
    slant: '2 1/2 in',
    strip: '2 1/2 in',
    straight: '1/2 in',
    seam: '1 in',
    over: '4 in',
    ends: 10,
    up: 1,
  },
  cm: {
    binding: '6.5 cm',
    slant: '6.5 cm',
    strip: '6.5 cm',
    straight: '13 mm',
    seam: '25 mm',
    over: '10 cm',
    ends: 25,
    up: 2.5,
  },
} as const;

function sized(quilt: Quilt, sort: JoinedSort): Omit<JoinedLength, 'id' | 'name' | 'role'> {
  const usual = USUAL[quilt.unit];
  const { width, length, between } = sizeOf(quilt);
  const written = (value: number) => `${Math.max(usual.up, Math.ceil(value / usual.up) * usual.up)} ${quilt.unit}`;
  switch (sort) {
    case 'Binding':
      return { length: written(2 * (width + length) + usual.ends), width: usual.binding, join: usual.slant };
    case 'Sashing':
      return { length: written(between), width: usual.strip, join: usual.straight };
    case 'Border':
      return { length: written(2 * (width + length) + usual.ends), width: usual.strip, join: usual.straight };
    case 'Backing':
      return { kind: 'panels', length: written(length), width: written(width), join: usual.seam, overhang: usual.over };
  }
}

/** As square as the blocks make it: so many abreast and so many rows, each as wide as the widest. */
export function sizeOf({ blocks, unit }: { readonly blocks: readonly Block[]; readonly unit: LengthUnit }) {
  const count = Math.max(
    1,
    blocks.reduce((sum, block) => sum + block.count, 0),
  );
  const side = blocks.length === 0 ? 1 : Math.max(...blocks.map((block) => blockExtent(block, unit)));
  const abreast = Math.ceil(Math.sqrt(count));
  const rows = Math.ceil(count / abreast);
  const [width, length] = [abreast * side, rows * side];
  return { abreast, rows, width, length, between: (abreast - 1) * length + (rows - 1) * width };
}
