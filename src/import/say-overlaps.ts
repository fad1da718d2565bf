/** What lies over what, and where nothing lies, in words with places. */
import { outlineCentroid } from '../shape/outline-measures.ts';
import { distance, type Polygon } from '../shape/point.ts';
import { polygonCentroid } from '../shape/polygon.ts';
import type { ImportNotes } from './import-notes.ts';
import { findOverlaps, isWide } from './overlaps.ts';
import type { ShownPatch } from './shown-patches.ts';

/** What is so many tolerances wide is open because it is meant to be: half an inch, at the usual one. */
const OPENING = 32;

/**
 * @param polygons the patches as the drawing has them
 * @param shown the same as they are named, in any order
 */
export function sayOverlaps(
  polygons: readonly Polygon[],
  tolerance: number,
  shown: readonly ShownPatch[],
  notes: ImportNotes,
): void {
  const { overlaps, gaps, complete } = findOverlaps(polygons, tolerance);
  const middles = shown.map(({ outline }) => outlineCentroid(outline));
  const nameOf = (index: number): string => {
    const middle = polygonCentroid(polygons[index]!);
    let best = 0;
    middles.forEach((each, i) => {
      if (distance(each, middle) < distance(middles[best]!, middle)) best = i;
    });
    return shown[best]!.name;
  };
  for (const { patches, places } of overlaps) {
    notes.warn(
      `${nameOf(patches[0])} and ${nameOf(patches[1])} lie over one another; cloth would be planned for both.`,
      places,
    );
  }
  for (const gap of gaps) {
    if (isWide(gap, OPENING * tolerance)) {
      notes.note('Patches go round an opening here.', [gap]);
    } else {
      notes.warn('A gap between patches.', [gap]);
    }
  }
  if (!complete) notes.warn('Very many patches lie over one another; only the first are told.');
}
