/** The upright box round outlines, arcs and all. */
import type { Outline } from '../shape/outline.ts';
import { outlineBox } from '../shape/outline-measures.ts';
import type { Point } from '../shape/point.ts';

export interface Extent {
  readonly width: number;
  readonly height: number;
  readonly middle: Point;
}

export function extentOf(outlines: readonly Outline[]): Extent {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const outline of outlines) {
    const { min, max } = outlineBox(outline);
    left = Math.min(left, min[0]);
    bottom = Math.min(bottom, min[1]);
    right = Math.max(right, max[0]);
    top = Math.max(top, max[1]);
  }
  return { width: right - left, height: top - bottom, middle: [(left + right) / 2, (bottom + top) / 2] };
}
