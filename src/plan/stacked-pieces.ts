/**
 * Third cuts: blanks of a strip that lie one above the other between two square cuts. Such a segment is cut once more along the
 * strip, and each blank is trimmed from what lies between two of those cuts.
 */
import type { Polygon } from '../shape/point.ts';
import type { InStack } from './cut-steps.ts';
import { type CutRules, RULER_PARTS } from './parting-cut.ts';

/**
 * Which blanks are cut together, by their outlines in the strip's frame: a stack from the near edge up, any other blank alone.
 * @returns indices, group by group along the strip
 */
export function stacksIn(outlines: readonly Polygon[], tolerance: number): readonly (readonly number[])[] {
  const boxes = outlines.map((outline) => ({ along: reach(outline, 0), up: reach(outline, 1) }));
  const groups: number[][] = [];
  let right = -Infinity;
  for (const index of [...boxes.keys()].sort((a, b) => boxes[a]!.along.low - boxes[b]!.along.low)) {
    const { low, high } = boxes[index]!.along;
    if (low >= right - tolerance) groups.push([index]);
    else groups.at(-1)!.push(index);
    right = Math.max(right, high);
  }
  return groups.flatMap((group) => {
    const up = [...group].sort((a, b) => boxes[a]!.up.low - boxes[b]!.up.low);
    const parted = up.every((index, i) => i === 0 || boxes[index]!.up.low >= boxes[up[i - 1]!]!.up.high - tolerance);
    return parted ? [up] : group.map((index) => [index]);
  });
}

/**
 * Where a stack is cut along, from the near edge up: on marks of the ruler between one blank and the next where there are any.
 * @param outlines from the near edge up @param from where its segment begins along the strip
 */
export function layersOf(outlines: readonly Polygon[], from: number, rules: CutRules): readonly InStack[] {
  let low = 0;
  return outlines.map((outline, i): InStack => {
    const { low: bottom, high: top } = reach(outline, 1);
    const next = outlines[i + 1];
    const high = markBetween(top, next ? reach(next, 1).low : rules.height, rules);
    const { low: left, high: right } = reach(outline, 0);
    const layer = { layer: i + 1, of: outlines.length, from, low, high, width: right - left, height: top - bottom };
    low = high;
    return layer;
  });
}

/** The first mark, as coarse as can be, that lies between; else the nearer end. */
export function markBetween(from: number, to: number, { ruler, tolerance }: CutRules): number {
  for (const part of ruler === null ? [] : RULER_PARTS) {
    const mark = Math.ceil((from / ruler!) * part - 1e-6) * (ruler! / part);
    if (mark <= to + tolerance) return mark;
  }
  return from;
}

export function reach(outline: Polygon, axis: 0 | 1): { readonly low: number; readonly high: number } {
  const values = outline.map((point) => point[axis]);
  return { low: Math.min(...values), high: Math.max(...values) };
}
