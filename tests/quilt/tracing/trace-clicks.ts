/** Clicks as a hand makes them, for tests of tracings. */

import { closePatch, placeCorner, type Traced } from '../../../src/quilt/tracing/draw-lines.ts';
import { bendLine } from '../../../src/quilt/tracing/mend-lines.ts';
import { snapTo } from '../../../src/quilt/tracing/snap.ts';
import { EMPTY_TRACING, stepStart, type Tracing } from '../../../src/quilt/tracing/tracing.ts';
import type { Point } from '../../../src/shape/point.ts';

/** The tracing that came of a change. @throws Error with the fault where none did */
export function ok(traced: Traced): Tracing {
  if ('fault' in traced) throw new Error(traced.fault);
  return traced.tracing;
}

/** A patch clicked round and closed. */
export function clickRound(
  tracing: Tracing,
  places: readonly Point[],
  unit = 'A',
  role = 'Hours',
  within = 0.1,
): Tracing {
  const clicked = places.reduce(
    (rest, place) => ok(placeCorner(rest, snapTo(rest, place, { within }), { unit, role })),
    tracing,
  );
  return ok(closePatch(clicked, { unit, role }));
}

/** The line of the newest patch that begins at the place nearest to one given, bent through another. */
export function bendFrom(tracing: Tracing, from: Point, through: Point): Tracing {
  const patch = tracing.patches.at(-1)!;
  const away = (id: number): number => {
    const { at } = tracing.corners.find((corner) => corner.id === id)!;
    return Math.hypot(at[0] - from[0], at[1] - from[1]);
  };
  const step = [...patch.steps].sort((a, b) => away(stepStart(tracing, a)) - away(stepStart(tracing, b)))[0]!;
  return ok(bendLine(tracing, step.line, through));
}

export const polar = (radius: number, degrees: number, about: Point = [0, 0]): Point => [
  about[0] + radius * Math.sin((-degrees * Math.PI) / 180),
  about[1] + radius * Math.cos((degrees * Math.PI) / 180),
];

/** Wedges of a ring, one after the other, each click off by what `slip` says. */
export function traceRing(
  numbers: { readonly count: number; readonly inner: number; readonly outer: number; readonly traced: number },
  about: Point,
  slip: () => Point = () => [0, 0],
): Tracing {
  const { count, inner, outer, traced } = numbers;
  const step = 360 / count;
  const at = (radius: number, degrees: number): Point => {
    const [x, y] = polar(radius, degrees, about);
    const [dx, dy] = slip();
    return [x + dx, y + dy];
  };
  let tracing = EMPTY_TRACING;
  for (let k = 0; k < traced; k++) {
    const [a, b] = [k * step, (k + 1) * step];
    const right = at(outer, a);
    const inside = at(inner, b);
    tracing = clickRound(tracing, [at(inner, a), right, at(outer, b), inside]);
    tracing = bendFrom(tracing, right, at(outer, (a + b) / 2));
    tracing = bendFrom(tracing, inside, at(inner, (a + b) / 2));
  }
  return tracing;
}
