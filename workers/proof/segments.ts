/**
 * Three stages: whether square cuts part a strip into segments of which each holds a row, cut as a strip is, or a stack, whose
 * blanks lie one above the other, parted by cuts along the strip.
 */
import type { Polygon } from '../../src/shape/point.ts';
import { type Box, boxOf } from './box.ts';
import { type StripFrame, uncuttable } from './straight-cuts.ts';

interface Lying {
  readonly index: number;
  readonly hull: Polygon;
  readonly box: Box;
}

/**
 * Blanks of a segment that can be neither; none when the strip can be cut whole.
 * @param hulls in the strip's frame, convex, anticlockwise
 * @param touch how deep a cut may run into a blank and still pass along it
 */
export function unparted(hulls: readonly Polygon[], strip: StripFrame, touch: number): readonly number[] {
  if (uncuttable(hulls, strip, touch).length === 0) return [];
  const groups = between(
    hulls.map((hull, index) => ({ index, hull, box: boxOf(hull) })),
    touch,
  );
  // Where a square cut stands between two groups makes no odds to stacks; a row may need what is left on either side of it.
  const marks = groups.map((group, g): readonly number[] => {
    const before = groups[g - 1];
    if (!before) return [0];
    const [low, high] = [rightOf(before), Math.min(...group.map(({ box }) => box.left))];
    return high - low > touch ? [low, high] : [low];
  });
  // From the strip's end: the places from which on all can be parted. What lies between two marks is one segment, of few groups
  // first, since they nearly always serve.
  const parted: (readonly number[])[] = [...groups.map(() => []), [strip.length]];
  const canEnd = (g: number, from: number): boolean => {
    const held: Lying[] = [];
    for (let end = g + 1; end <= groups.length; end++) {
      held.push(...groups[end - 1]!);
      if (parted[end]!.some((to) => isStack(held, touch) || isRow(held, from, to, strip, touch))) return true;
    }
    return false;
  };
  for (let g = groups.length - 1; g >= 0; g--) parted[g] = marks[g]!.filter((from) => canEnd(g, from));
  if (parted[0]!.length > 0) return [];
  return groups[parted.findLastIndex((places) => places.length === 0)]!.map(({ index }) => index);
}

/** Blanks between which no square cut passes, group by group along the strip. */
function between(all: readonly Lying[], touch: number): readonly (readonly Lying[])[] {
  const groups: Lying[][] = [];
  let right = -Infinity;
  for (const one of [...all].sort((a, b) => a.box.left - b.box.left)) {
    if (one.box.left >= right - touch) groups.push([one]);
    else groups.at(-1)!.push(one);
    right = Math.max(right, one.box.right);
  }
  return groups;
}

const rightOf = (group: readonly Lying[]): number => Math.max(...group.map(({ box }) => box.right));

/** Whether cuts along the strip part all of them: a cut that runs beside a box runs beside all that is trimmed from it. */
function isStack(held: readonly Lying[], touch: number): boolean {
  const up = held.map(({ box }) => box).sort((a, b) => a.bottom - b.bottom);
  return up.every((box, i) => i === 0 || box.bottom >= up[i - 1]!.top - touch);
}

/** Whether they are a row of the strip that is left between two square cuts. */
function isRow(held: readonly Lying[], from: number, to: number, strip: StripFrame, touch: number): boolean {
  const shifted = held.map(({ hull }) => hull.map(([u, v]) => [u - from, v] as const));
  return uncuttable(shifted, { ...strip, length: to - from }, touch).length === 0;
}
