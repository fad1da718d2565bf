import type { Family } from '../strips/family.ts';

/**
 * Whether proving may leave a little open for speed: boxes are priced exactly in no time.
 */
export function mayLeaveOpen(families: readonly Family[]): boolean {
  return families.some((f) => f.slopes.length > 1);
}
