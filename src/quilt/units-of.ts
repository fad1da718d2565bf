import { drawCompassStar } from './compass-star.ts';
import type { Block, LengthUnit, Unit } from './quilt.ts';

/**
 * A block's units: those listed, or those drawn from the numbers of its form.
 * @param unit the quilt's unit, in which outlines come back
 */
export function unitsOf(block: Block, unit: LengthUnit): readonly Unit[] {
  if (block.units !== undefined) {
    return block.units;
  }
  return block.form === undefined ? [] : drawCompassStar(block.form, unit);
}
