import type { Point, Polygon } from '../shape/point.ts';
import { isInside, polygonArea } from '../shape/polygon.ts';

/** The words that stand in each patch; where patches lie over one another, they go to the smallest. */
export function wordsInside(
  patches: readonly Polygon[],
  words: readonly { readonly text: string; readonly at: Point }[],
): readonly (readonly string[])[] {
  const inside: string[][] = patches.map(() => []);
  const areas = patches.map((patch) => Math.abs(polygonArea(patch)));
  const bySize = patches.map((_, i) => i).sort((a, b) => areas[a]! - areas[b]!);
  for (const { text, at } of words) {
    const holder = bySize.find((i) => isInside(patches[i]!, at[0], at[1]));
    if (holder !== undefined) inside[holder]!.push(text);
  }
  return inside;
}
