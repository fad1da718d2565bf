import type { Point, Polygon } from '../shape/point.ts';
import { lineRun, type Run } from './display-list.ts';

/**
 * Slanting lines that fill a convex polygon, `gap` apart, rising to the right at 45°. They are drawn as lines and not as
 * a pattern, so that a printer and a file show what the screen shows; they start from the origin, so that the hatching
 * of neighbours runs on.
 */
export function hatch(polygon: Polygon, gap: number): readonly Run[] {
  const along = (p: Point): number => p[1] - p[0];
  const values = polygon.map(along);
  const step = gap * Math.SQRT2;
  const runs: Run[] = [];
  for (let line = Math.ceil(Math.min(...values) / step); line * step <= Math.max(...values); line++) {
    const hits: Point[] = [];
    polygon.forEach((from, index) => {
      const to = polygon[(index + 1) % polygon.length]!;
      const [a, b] = [along(from) - line * step, along(to) - line * step];
      if (a < 0 !== b < 0) {
        const share = a / (a - b);
        hits.push([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
      }
    });
    const [start, end] = hits;
    if (start !== undefined && end !== undefined) {
      runs.push(lineRun(start, end));
    }
  }
  return runs;
}
