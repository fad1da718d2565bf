import { outlineArea, outlineBox } from '../shape/outline-measures.ts';
import { distance } from '../shape/point.ts';
import { extentOf } from './extent.ts';
import type { TracedShape } from './svg/trace-shapes.ts';

/** A shape that goes round all the others, where they fill it or are painted and it is not, is a frame or a backdrop. */
export function withoutFrame(shapes: readonly TracedShape[]): {
  kept: readonly TracedShape[];
  frame: TracedShape | null;
} {
  const area = (shape: TracedShape): number => Math.abs(outlineArea(shape.outline));
  const largest = shapes.reduce<TracedShape | null>(
    (best, each) => (best === null || area(each) > area(best) ? each : best),
    null,
  );
  const others = shapes.filter((each) => each !== largest);
  if (largest === null || others.length < 2) return { kept: shapes, frame: null };
  const [outer, inner] = [outlineBox(largest.outline), extentOf(others.map(({ outline }) => outline))];
  const holds =
    inner.width <= outer.max[0] - outer.min[0] + 0.02 &&
    inner.height <= outer.max[1] - outer.min[1] + 0.02 &&
    distance(inner.middle, [(outer.min[0] + outer.max[0]) / 2, (outer.min[1] + outer.max[1]) / 2]) <=
      0.02 + (outer.max[0] - outer.min[0] - inner.width + outer.max[1] - outer.min[1] - inner.height) / 2;
  const filled = others.reduce((sum, each) => sum + area(each), 0) >= 0.97 * area(largest);
  const bare = !largest.filled && others.every((each) => each.filled);
  return holds && (filled || bare) ? { kept: others, frame: largest } : { kept: shapes, frame: null };
}
