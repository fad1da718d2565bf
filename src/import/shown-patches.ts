import { placesOf } from '../quilt/places.ts';
import type { Unit } from '../quilt/quilt.ts';
import { mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { turn } from '../shape/point.ts';

/** A patch where it lies in the block. */
export interface ShownPatch {
  /** "A1". */
  readonly name: string;
  readonly role: string;
  readonly outline: Outline;
  /** What the file fills it with, "#rrggbb"; null where that is no plain colour. */
  readonly colour: string | null;
}

/** @param colours of roles, by id */
export function shownPatches(units: readonly Unit[], colours: ReadonlyMap<string, string>): readonly ShownPatch[] {
  return units.flatMap((unit) =>
    placesOf(unit).flatMap((place) =>
      unit.patches.map(({ number, role, outline }) => ({
        name: `${unit.id}${number}`,
        role,
        colour: colours.get(role) ?? null,
        outline: moveOutline(place.mirrored ? mirrorOutline(outline) : outline, (corner) => turn(corner, place.turn)),
      })),
    ),
  );
}
