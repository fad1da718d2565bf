import type { Unit } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import { degreesFromUp, length, modulo, type Point, type Polygon } from '../shape/point.ts';

/** A sector wider than this is taken to go all the way round. */
const ALL_ROUND = 359.999;

/**
 * The axis of a unit as drawn, degrees anticlockwise from up: its own, or the bisector of the sector that its patches span
 * as seen from the block's centre. null where they go all the way round.
 */
export function unitAxis(unit: Unit): number | null {
  if (unit.axis !== undefined) {
    return modulo(unit.axis, 360);
  }
  const spans = unit.patches.flatMap((patch) => edgeSpans(flatten(patch.outline, { side: 'chord', within: 1e-2 })));
  const sector = widestGap(spans);
  return sector === null ? null : modulo(sector.to + (360 - (sector.to - sector.from)) / 2, 360);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** The angles, seen from the centre, between which each edge runs. An edge that passes the centre spans nothing new. */
function edgeSpans(polygon: Polygon): readonly Span[] {
  const size = Math.max(...polygon.map(length));
  const atCentre = (point: Point) => length(point) <= 1e-9 * size;
  return polygon.flatMap((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    if (atCentre(a) || atCentre(b)) {
      return [a, b]
        .filter((end) => !atCentre(end))
        .map((end) => ({ from: degreesFromUp(end), to: degreesFromUp(end) }));
    }
    const from = degreesFromUp(a);
    const swing = modulo(degreesFromUp(b) - from + 180, 360) - 180;
    return [swing >= 0 ? { from, to: from + swing } : { from: from + swing, to: from }];
  });
}

/** The widest stretch of directions that no edge spans; null where the edges leave none. `to` may pass 360. */
function widestGap(spans: readonly Span[]): Span | null {
  const sorted = spans
    .map(({ from, to }) => ({ from: modulo(from, 360), to: modulo(from, 360) + to - from }))
    .sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) {
    return null;
  }
  let widest: Span = { from: first.from, to: first.from };
  let reached = Math.max(...sorted.map(({ to }) => to)) - 360;
  for (const { from, to } of sorted) {
    if (from - reached > widest.to - widest.from) {
      widest = { from: reached, to: from };
    }
    reached = Math.max(reached, to);
  }
  return widest.to - widest.from <= 360 - ALL_ROUND ? null : widest;
}
