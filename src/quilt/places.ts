/** Where a unit stands about its block's centre. */
import type { Unit } from './quilt.ts';

export interface Place {
  readonly index: number;
  /** Degrees anticlockwise about the block's centre, applied after the reflection. */
  readonly turn: number;
  /** Whether the unit is reflected in the vertical (x to −x) before it is turned. */
  readonly mirrored: boolean;
}

/** The places of a unit, in order. With 'also', each turn gives two places, as drawn and then mirrored. */
export function placesOf(unit: Unit): readonly Place[] {
  const { count, from = 0, over = 360, mirrored = 'no' } = unit.repeat;
  const places: Place[] = [];
  for (let k = 0; k < count; k++) {
    const turn = from + (k * over) / count;
    for (const hand of mirrored === 'also' ? [false, true] : [mirrored === 'alternate' && k % 2 === 1]) {
      places.push({ index: places.length, turn, mirrored: hand });
    }
  }
  return places;
}
