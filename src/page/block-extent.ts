import { placesOf } from '../quilt/places.ts';
import type { Block, LengthUnit } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { cornersOf } from '../shape/outline.ts';
import { turn } from '../shape/point.ts';

/** Roughly how wide a block is, in the quilt's unit, by its corners: enough to choose a size of text. */
export function blockExtent(block: Block, unit: LengthUnit): number {
  const xs = unitsOf(block, unit).flatMap((one) =>
    placesOf(one).flatMap((place) =>
      one.patches.flatMap((patch) => cornersOf(patch.outline).map((corner) => turn(corner, place.turn)[0])),
    ),
  );
  return xs.length === 0 ? 1 : Math.max(...xs) - Math.min(...xs);
}
