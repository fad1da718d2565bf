/** Every patch of a block at every one of its places, as they lie in the finished block. */
import { type Place, placesOf } from '../quilt/places.ts';
import type { Block, Facing, LengthUnit, Patch, Unit } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { edgesOf, mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { modulo, turn } from '../shape/point.ts';
import { type PlacedPatch, printDirection } from './facing.ts';
import { unitAxis } from './unit-axis.ts';

export interface BlockPatch {
  readonly unit: Unit;
  readonly patch: Patch;
  readonly place: Place;
  /** In the block, about its centre. */
  readonly outline: Outline;
  /** In its unit's frame, for its facing. */
  readonly placed: PlacedPatch;
}

/**
 * Where several stand at one place, as alike pieces of a loose block do, the first stands for all.
 * @param unit the quilt's
 */
export function blockPatches(block: Block, unit: LengthUnit): readonly BlockPatch[] {
  return unitsOf(block, unit).flatMap((each) => {
    const axis = unitAxis(each);
    const hands = [false, true].map((mirrored) =>
      each.patches.map(({ outline }) => {
        const own = mirrored ? mirrorOutline(outline) : outline;
        return { own, middle: outlineCentroid(own), edges: edgesOf(own) };
      }),
    );
    return seenPlaces(each).flatMap((place) =>
      each.patches.map((patch, i): BlockPatch => {
        const { own, middle, edges } = hands[place.mirrored ? 1 : 0]![i]!;
        const { turn: turned, mirrored } = place;
        return {
          unit: each,
          patch,
          place,
          outline: moveOutline(own, (corner) => turn(corner, turned)),
          placed: { middle, edges, axis: axis === null || !mirrored ? axis : -axis, turn: turned, mirrored },
        };
      }),
    );
  });
}

const seenPlaces = (unit: Unit): readonly Place[] =>
  unit.repeat.over === 0 ? placesOf(unit).slice(0, unit.repeat.mirrored === 'also' ? 2 : 1) : placesOf(unit);

/**
 * Where a print's up points in the block as it is drawn, degrees anticlockwise from up, from 0 to 360; null where it may point
 * anywhere or has no answer.
 */
export function printInBlock(facing: Facing, { placed }: Pick<BlockPatch, 'placed'>): number | null {
  const direction = printDirection(facing, placed);
  return typeof direction === 'number' ? modulo(direction + placed.turn, 360) : null;
}
