/** Flying geese in a curve, as a ring of them and an arc of them draw it. */
import type { OutlineEntry } from '../../shape/outline.ts';
import type { RoleSeed } from '../drawn-block.ts';
import type { LengthUnit } from '../quilt.ts';
import { at, bow, hollow, mirrored, type Piece } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormFault } from './form-spec.ts';
import { leastReach } from './in-row.ts';

export type Way = 'anticlockwise' | 'clockwise';

export const WAYS = [
  { value: 'clockwise', words: 'clockwise' },
  { value: 'anticlockwise', words: 'anticlockwise' },
] as const;

/** Their print points the way they fly, and geese that fly the other way are told apart. */
export const gooseRole = (way: Way): RoleSeed => ({
  id: 'geese',
  name: way === 'clockwise' ? 'Geese' : 'Geese, anticlockwise',
  facing: { to: way, from: 'middle' },
});

export const SKY: RoleSeed = { id: 'geese-sky', name: 'Sky behind the geese', facing: { to: 'free' } };

/**
 * Geese one behind the other between two circles, each followed by the sky on its outer and its inner side. In this order each
 * piece is sewn along one straight line with all before it on one side, as long as the curve is less than half a turn.
 * @param from where the first goose's base stands, degrees; geese that fly clockwise go down from it
 * @param step degrees that a goose takes
 */
export function geese(
  count: number,
  from: number,
  step: number,
  inner: number,
  outer: number,
  way: Way,
): readonly Piece[] {
  if (way === 'clockwise') {
    const pieces = geese(count, -from, step, inner, outer, 'anticlockwise');
    return pieces.map(([role, outline]) => [role, mirrored(outline)] as const);
  }
  return Array.from({ length: count }, (_, k) => from + k * step).flatMap((base) =>
    oneGoose(base, base + step, inner, outer),
  );
}

/** Its base along one radius, its tip halfway along the other; the sky's outer and inner edges are arcs. */
function oneGoose(base: number, tip: number, inner: number, outer: number): readonly Piece[] {
  const point = at((inner + outer) / 2, tip);
  const goose: readonly OutlineEntry[] = [at(inner, base), at(outer, base), point];
  return [
    ['geese', goose],
    ['geese-sky', [at(outer, base), bow(outer), at(outer, tip), point]],
    ['geese-sky', [at(inner, base), point, at(inner, tip), hollow(inner)]],
  ];
}

/** Geese too long for their ring would lie along its inner edge or across it. @param step degrees that a goose takes */
export function gooseFault(
  field: string,
  step: number,
  inner: number,
  outer: number,
  unit: LengthUnit,
): readonly FormFault[] {
  const middle = leastReach(inner, step);
  const least = 2 * middle - inner;
  if (outer > least) {
    return [];
  }
  const room = Number.isFinite(least) ? `, or {outer} beyond ${reckoned(least, unit)}` : '';
  return [{ field, message: `expected more geese${room}; so long a goose lies along the {inner} or across it` }];
}
