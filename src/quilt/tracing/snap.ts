/** What a click means: the corner, middle, centre or line that is near enough, or the place itself. */
import { distance, type Point } from '../../shape/point.ts';
import { edgeOfLine, middleOf, nearestOn } from './line-shape.ts';
import type { Tracing } from './tracing.ts';

export type Snap =
  | { readonly kind: 'corner'; readonly at: Point; readonly corner: number }
  | { readonly kind: 'middle' | 'line'; readonly at: Point; readonly line: number }
  | { readonly kind: 'centre' | 'copy' | 'free'; readonly at: Point };

export interface SnapOptions {
  /** How near is near enough, in the tracing's unit. */
  readonly within: number;
  /** Corners of the copies of units about the centre. */
  readonly copies?: readonly Point[];
  /** A corner that is not snapped to, nor the lines at it: the one that is being moved. */
  readonly but?: number;
}

/**
 * What lies within reach of a place, the likeliest first: corners, the centre, middles of lines, corners of copies, lines. Of several
 * of a kind the nearest.
 */
export function snapTo(tracing: Tracing, at: Point, { within, copies = [], but }: SnapOptions): Snap {
  const lines = tracing.lines.filter((line) => but === undefined || (line.from !== but && line.to !== but));
  const edges = lines.map((line) => ({ line: line.id, edge: edgeOfLine(tracing, line) }));
  const corners = tracing.corners.filter((corner) => corner.id !== but);
  const kinds: readonly (readonly Snap[])[] = [
    corners.map((corner) => ({ kind: 'corner', at: corner.at, corner: corner.id })),
    tracing.centre === undefined ? [] : [{ kind: 'centre', at: tracing.centre }],
    edges.map(({ line, edge }) => ({ kind: 'middle', at: middleOf(edge), line })),
    copies.map((place) => ({ kind: 'copy', at: place })),
    edges.map(({ line, edge }) => ({ kind: 'line', at: nearestOn(edge, at), line })),
  ];
  for (const kind of kinds) {
    const near = nearest(kind, at);
    // Middles are rarer than corners, so they pull only from half as far.
    const reach = near?.kind === 'middle' ? within / 2 : within;
    if (near !== null && distance(near.at, at) <= reach) return near;
  }
  return { kind: 'free', at };
}

function nearest(snaps: readonly Snap[], at: Point): Snap | null {
  let best: Snap | null = null;
  for (const snap of snaps) {
    if (best === null || distance(snap.at, at) < distance(best.at, at)) best = snap;
  }
  return best;
}
