/** The sector that places about a centre take up. */
import { degreesFromUp, length, modulo, type Point } from '../../shape/point.ts';

export interface Sector {
  /** Degrees anticlockwise from up, where it begins; it goes on anticlockwise. */
  readonly from: number;
  /** Degrees. */
  readonly size: number;
}

/** The narrowest sector about the origin that holds all places but those nearer than `near`; null where none is left. */
export function sectorOf(places: readonly Point[], near: number): Sector | null {
  const angles = places
    .filter((place) => length(place) > near)
    .map(degreesFromUp)
    .sort((a, b) => a - b);
  if (angles.length === 0) return null;
  let widest = { gap: -1, from: 0 };
  angles.forEach((angle, i) => {
    const gap = angles.length === 1 ? 360 : modulo(angle - angles.at(i - 1)!, 360);
    if (gap > widest.gap) widest = { gap, from: angle };
  });
  return { from: widest.from, size: 360 - widest.gap };
}

/** How many copies of a sector go round, if a whole number of them does, within half a degree each. */
export function countThatFits(sector: Sector): number | null {
  const count = Math.round(360 / sector.size);
  return count >= 2 && Math.abs(360 / count - sector.size) <= 0.5 ? count : null;
}
