/** Where the copies of what is traced will stand, in the tracing's plane. */
import { placesOf } from '../../quilt/places.ts';
import { type DrawnTracing, middleOfAll } from '../../quilt/tracing/draw-tracing.ts';
import type { Tracing } from '../../quilt/tracing/tracing.ts';
import { isArc, mirrorOutline, moveOutline, type Outline } from '../../shape/outline.ts';
import { add, type Point, turn } from '../../shape/point.ts';

/** The outlines of every unit that repeats, at all its places. */
export function copyOutlines(tracing: Tracing, drawn: DrawnTracing): readonly Outline[] {
  if ('faults' in drawn) return [];
  const centre = tracing.centre ?? middleOfAll(tracing);
  return drawn.block.units
    .filter((unit) => unit.repeat.count > 1)
    .flatMap((unit) =>
      placesOf(unit).flatMap((place) =>
        unit.patches.map(({ outline }) =>
          moveOutline(place.mirrored ? mirrorOutline(outline) : outline, (corner) =>
            add(turn(corner, place.turn), centre),
          ),
        ),
      ),
    );
}

export function copyPlaces(tracing: Tracing, drawn: DrawnTracing): readonly Point[] {
  return copyOutlines(tracing, drawn).flatMap((outline) => outline.filter((entry): entry is Point => !isArc(entry)));
}
