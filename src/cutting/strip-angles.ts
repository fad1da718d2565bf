import type { Turns } from '../plan/layout-job.ts';
import { modulo } from '../shape/point.ts';
import { directionOf } from './frame.ts';
import type { Side } from './rough-patch.ts';

/**
 * The turns, modulo 180, at which a slant's parallel sides may run along the strip: a set's turns, and for a range its
 * middle, its ends, and every turn inside it that lays a side of the patch along the strip. Any turn: as the frame lies.
 */
export function stripAngles(turns: Turns, sides: readonly Side[]): readonly number[] {
  if (turns === 'any') {
    return [0];
  }
  const angles = turns.flatMap((range) => {
    if (typeof range === 'number') {
      return [range];
    }
    const { centre, within } = range;
    const laid = sides
      .map((side) => centre + modulo(-directionOf(side) - centre + 90, 180) - 90)
      .filter((turn) => Math.abs(turn - centre) <= within);
    return [centre, ...laid, centre - within, centre + within];
  });
  return [...new Set(angles.map((angle) => (Math.round(modulo(angle, 180) * 1e9) / 1e9) % 180))];
}
