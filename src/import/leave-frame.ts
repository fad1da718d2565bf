import { difference } from '../shape/combine.ts';
import { flatten } from '../shape/flatten.ts';
import { outlineArea } from '../shape/outline-measures.ts';
import { anticlockwise, polygonArea } from '../shape/polygon.ts';
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
  if (largest.shape.names.role !== '') return { kept: shapes, frame: null };
  const filled = others.reduce((sum, each) => sum + area(each), 0) >= 0.97 * area(largest);
  const bare = !largest.filled && others.every((each) => each.filled);
  return (filled || bare) && holdsAll(largest, others)
    ? { kept: others, frame: largest }
    : { kept: shapes, frame: null };
}

/** Whether hardly anything of the others lies outside of it. */
function holdsAll(frame: TracedShape, others: readonly TracedShape[]): boolean {
  const polygon = (shape: TracedShape) => anticlockwise(flatten(shape.outline, { side: 'chord', within: 0.01 }));
  const cover = polygon(frame);
  return others.every((other) => {
    const shape = polygon(other);
    const outside = difference(shape, cover).reduce((sum, each) => sum + polygonArea(each), 0);
    return outside <= 0.02 * polygonArea(shape);
  });
}
