/** What a block is joined from: each foundation at each of its places, and each patch that is sewn without one. */
import { placesOf } from '../quilt/places.ts';
import type { Unit } from '../quilt/quilt.ts';
import { mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { turn } from '../shape/point.ts';

export interface BlockPiece {
  /** "A" for a foundation, "D1" for a patch sewn without one. */
  readonly name: string;
  readonly mirrored: boolean;
  /** Degrees anticlockwise about the block's centre. */
  readonly turn: number;
  /** Its patches where they lie in the block. */
  readonly patches: readonly PlacedOutline[];
}

export interface PlacedOutline {
  readonly unit: string;
  readonly number: number;
  readonly role: string;
  readonly outline: Outline;
}

export function blockPieces(units: readonly Unit[]): readonly BlockPiece[] {
  return units.flatMap((unit) =>
    placesOf(unit).flatMap(({ mirrored, turn: degrees }) => {
      const patches = unit.patches.map(({ number, role, outline }): PlacedOutline => {
        const hand = mirrored ? mirrorOutline(outline) : outline;
        return { unit: unit.id, number, role, outline: moveOutline(hand, (corner) => turn(corner, degrees)) };
      });
      return unit.paper
        ? [{ name: unit.id, mirrored, turn: degrees, patches }]
        : patches.map((patch) => ({ name: `${unit.id}${patch.number}`, mirrored, turn: degrees, patches: [patch] }));
    }),
  );
}
