import type { Family } from '../strips/family.ts';

/**
 * Whether proving may leave a little open for speed. Boxes are priced exactly in no time; and only where every strip comes
 * off a bolt do scaled prices make a proof of what is left open.
 */
export function mayLeaveOpen(families: readonly Family[]): boolean {
  return families.every((f) => f.stack === null) && families.some((f) => f.slopes.length > 1);
}
