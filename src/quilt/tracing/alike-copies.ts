/** Patches traced one by one all round that are one another, turned. */
import type { Point } from '../../shape/point.ts';
import { evenCopies } from './even-copies.ts';
import type { TracedUnit, Tracing } from './tracing.ts';

/**
 * The greatest number of times that a part of the unit stands about the centre with the rest of it as its copies, roles and all;
 * null where no part does.
 * @param within how far two places may be apart and still count as copies of one
 */
export function timesAlike(tracing: Tracing, unit: TracedUnit, centre: Point, within: number): number | null {
  const patches = tracing.patches.filter((patch) => patch.unit === unit.id);
  const size = patches.length;
  for (let count = size; count >= 2; count--) {
    if (size % count !== 0) continue;
    const { patches: left } = evenCopies(tracing, [{ ...unit, count, mirrored: 'no' }], centre, within);
    const roles = (role: string, of: readonly { readonly role: string }[]): number =>
      of.filter((each) => each.role === role).length;
    if (left.length * count === size && left.every(({ role }) => roles(role, patches) === count * roles(role, left))) {
      return count;
    }
  }
  return null;
}
