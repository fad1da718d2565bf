/**
 * Logs: each is sewn along a straight line across all before it and then trimmed by the lines of those that come after. So a log
 * is what lies beyond its own line and before every later one, and the logs cover the block exactly, whatever the lines are.
 */
import { clip, type HalfPlane } from '../../shape/half-plane.ts';
import { fromUp, type Point, type Polygon, scale } from '../../shape/point.ts';
import { tidyPolygon } from '../../shape/polygon.ts';
import type { Patch } from '../quilt.ts';
import { numbered, oblong } from './drawing.ts';

export interface Log {
  readonly role: string;
  /** Where its line stands from the centre: its direction, degrees anticlockwise from up, and how far off. */
  readonly towards: number;
  readonly from: number;
}

/** The centre and its logs, in sewing order, in a square of the given side. */
export function logPatches(centre: string, logs: readonly Log[], side: number): readonly Patch[] {
  const lines = logs.map(({ towards, from }): HalfPlane => ({ normal: fromUp(towards), reach: from }));
  const half = side / 2;
  const whole: Polygon = oblong(-half, -half, half, half);
  const before = (polygon: Polygon, first: number): Polygon => lines.slice(first).reduce(clip, polygon);
  const outlines = [before(whole, 0), ...lines.map((line, i) => before(clip(whole, beyond(line)), i + 1))];
  const within = 1e-9 * side;
  return numbered(
    outlines.map(
      (outline, i) => [i === 0 ? centre : logs[i - 1]!.role, tidyPolygon(outline, within).map(tidy)] as const,
    ),
  );
}

const beyond = ({ normal, reach }: HalfPlane): HalfPlane => ({ normal: scale(normal, -1), reach: -reach });

/** Corners that two clips reach by different ways come out alike. */
const tidy = ([x, y]: Point): Point => [Math.round(x * 1e12) / 1e12 + 0, Math.round(y * 1e12) / 1e12 + 0];
