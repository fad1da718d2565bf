import type { Cloth, Quilt } from '../quilt/quilt.ts';

/** A role without a cloth is shown in the grey of unprinted paper. */
const NO_CLOTH = '#d8d4cc';

/** The first cloth that fills a role in the scheme being planned. */
export function clothOfRole(quilt: Quilt, role: string): Cloth | undefined {
  const scheme = quilt.schemes.find(({ id }) => id === quilt.scheme);
  const [id] = [scheme?.cloths[role] ?? []].flat();
  return quilt.cloths.find((cloth) => cloth.id === id);
}

export const colourOfRole = (quilt: Quilt, role: string): string => clothOfRole(quilt, role)?.colour ?? NO_CLOTH;
