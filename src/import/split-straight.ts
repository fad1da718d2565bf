/** Patches parted in two along a straight line that crosses none of them. */
import { flatten } from '../shape/flatten.ts';
import { edgesOf } from '../shape/outline.ts';
import { cross, distance, dot, type Point, type Polygon, scale, subtract } from '../shape/point.ts';
import type { FoundPatch } from './found-patch.ts';

const MOST_LINES = 400;

/** The evenest of such parts; null where every line along an edge crosses something. */
export function splitStraight(
  patches: readonly FoundPatch[],
  within: number,
): readonly [readonly FoundPatch[], readonly FoundPatch[]] | null {
  const polygons = patches.map(({ outline }) => flatten(outline, { side: 'chord', within: 1e-3 }));
  let best: readonly [readonly FoundPatch[], readonly FoundPatch[]] | null = null;
  let evenest = 0;
  for (const { from, normal } of linesOf(patches, within)) {
    const sides = polygons.map((polygon) => sideOf(polygon, from, normal, within));
    if (sides.includes(0)) continue;
    const left = patches.filter((_, i) => sides[i] === 1);
    const even = Math.min(left.length, patches.length - left.length);
    if (even > evenest) {
      evenest = even;
      best = [left, patches.filter((_, i) => sides[i] === -1)];
    }
  }
  return best;
}

interface Line {
  readonly from: Point;
  /** Of length 1. */
  readonly normal: Point;
}

/** The lines of straight edges, each once. */
function linesOf(patches: readonly FoundPatch[], within: number): readonly Line[] {
  const lines: Line[] = [];
  for (const { from, to, arc } of patches.flatMap(({ outline }) => edgesOf(outline))) {
    const size = distance(from, to);
    if (arc !== undefined || size <= 4 * within) continue;
    const along = scale(subtract(to, from), 1 / size);
    const normal: Point = [-along[1], along[0]];
    const known = lines.some(
      (line) =>
        Math.abs(cross(line.normal, normal)) < 1e-3 && Math.abs(dot(subtract(from, line.from), line.normal)) <= within,
    );
    if (!known) lines.push({ from, normal });
    if (lines.length >= MOST_LINES) break;
  }
  return lines;
}

/** 1 to the left, −1 to the right, 0 on both. */
function sideOf(polygon: Polygon, from: Point, normal: Point, within: number): number {
  const reaches = polygon.map((corner) => dot(subtract(corner, from), normal));
  if (Math.min(...reaches) >= -2 * within) return 1;
  return Math.max(...reaches) <= 2 * within ? -1 : 0;
}
