/** Where patches lie over one another, and where they leave a gap between them, by more than a tolerance. */
import { difference, intersection, union, widen } from '../shape/combine.ts';
import type { Polygon } from '../shape/point.ts';
import { boxHeight, boxWidth, polygonArea, polygonBox, polygonPerimeter } from '../shape/polygon.ts';

export interface Overlap {
  /** The two patches, by index. */
  readonly patches: readonly [number, number];
  readonly places: readonly Polygon[];
}

export interface Overlaps {
  readonly overlaps: readonly Overlap[];
  /** Places that patches go all round, or slits between them, and nothing covers. */
  readonly gaps: readonly Polygon[];
  /** False where there were too many pairs to look at all. */
  readonly complete: boolean;
}

const MOST_PAIRS = 40_000;
const MOST_FOUND = 60;

/** @param tolerance what is nowhere wider than it is let pass */
export function findOverlaps(patches: readonly Polygon[], tolerance: number): Overlaps {
  const pairs = pairsThatMayOverlap(patches, tolerance);
  const overlaps: Overlap[] = [];
  for (const [a, b] of pairs.slice(0, MOST_PAIRS)) {
    const places = intersection(patches[a]!, patches[b]!).filter((each) => isWide(each, tolerance));
    if (places.length > 0) overlaps.push({ patches: [a, b], places });
    if (overlaps.length >= MOST_FOUND) break;
  }
  const complete = pairs.length <= MOST_PAIRS && overlaps.length < MOST_FOUND;
  return { overlaps, gaps: gapsBetween(patches, tolerance).slice(0, MOST_FOUND), complete };
}

/** By their boxes, swept from left to right. One pair more than is looked at is enough. */
function pairsThatMayOverlap(patches: readonly Polygon[], tolerance: number): readonly (readonly [number, number])[] {
  const boxes = patches.map((patch, index) => ({ ...polygonBox(patch), index })).sort((a, b) => a.min[0] - b.min[0]);
  const pairs: [number, number][] = [];
  for (const [i, box] of boxes.entries()) {
    for (let k = i + 1; k < boxes.length && boxes[k]!.min[0] < box.max[0] - tolerance / 2; k++) {
      const other = boxes[k]!;
      if (other.min[1] < box.max[1] - tolerance / 2 && box.min[1] < other.max[1] - tolerance / 2) {
        pairs.push(box.index < other.index ? [box.index, other.index] : [other.index, box.index]);
        if (pairs.length > MOST_PAIRS) return pairs;
      }
    }
  }
  return pairs;
}

/** Whether a disc as wide as the tolerance finds room in it. */
export function isWide(polygon: Polygon, tolerance: number): boolean {
  const { area, perimeter } = { area: Math.abs(polygonArea(polygon)), perimeter: polygonPerimeter(polygon) };
  return area > (tolerance * perimeter) / 50 && widen([polygon], -tolerance / 2).length > 0;
}

function gapsBetween(patches: readonly Polygon[], tolerance: number): readonly Polygon[] {
  // Grown a little first, lest neighbours that only touch be told apart.
  const together = union(widen(union(patches), tolerance / 20));
  const holes = together.filter((each) => polygonArea(each) < 0).map((hole) => [...hole].reverse());
  const outside = together.filter((each) => polygonArea(each) > 0);
  return [...holes, ...slits(outside, 4 * tolerance)].filter((each) => isWide(each, tolerance));
}

/** What is filled up when the outside is grown and shrunk again, if it is long: a short one is only a corner rounded. */
function slits(outside: readonly Polygon[], reach: number): readonly Polygon[] {
  const closed = widen(widen(outside, reach / 2), -reach / 2);
  return closed
    .flatMap((each) =>
      outside.reduce<readonly Polygon[]>((left, out) => left.flatMap((part) => difference(part, out)), [each]),
    )
    .filter((each) => Math.max(boxWidth(polygonBox(each)), boxHeight(polygonBox(each))) > 4 * reach);
}
