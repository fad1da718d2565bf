/** Corners set where they must have been meant: on straight seams, and where copies about the centre meet. */
import { add, distance, type Point } from '../../shape/point.ts';
import { type Evened, evenCopies } from './even-copies.ts';
import { edgeOfLine } from './line-shape.ts';
import { straightenSeams } from './straight-seams.ts';
import { lineOf, type TracedUnit, type Tracing } from './tracing.ts';

/** Straight seams and meeting copies are asked for by turns; each time what is left to move is a small part of what was. */
const ROUNDS = 8;

/**
 * The tracing with its corners settled.
 * @param within how far two places may be apart and still count as copies of one; off a straight seam a third of it
 */
export function settle(tracing: Tracing, units: readonly TracedUnit[], centre: Point, within: number): Tracing {
  const off = reachFor(tracing, units, within / 3);
  let settled = tracing;
  for (let round = 0; round < ROUNDS; round++) {
    const straight = straightenSeams(settled, off);
    if (straight === settled && round > 0) break;
    settled = straight;
    for (const unit of units) {
      settled = moved(settled, evenUnit(settled, unit, units, centre, within), centre);
    }
  }
  return settled;
}

function moved(tracing: Tracing, { places }: Evened, centre: Point): Tracing {
  const corners = tracing.corners.map((corner) => {
    const place = places.get(corner.id);
    return place === undefined ? corner : { ...corner, at: add(place, centre) };
  });
  return { ...tracing, corners };
}

/** A unit evened out together with those that stand as often, since they share corners. What is mirrored stands for itself. */
export function evenUnit(
  tracing: Tracing,
  unit: TracedUnit,
  all: readonly TracedUnit[],
  centre: Point,
  within: number,
): Evened {
  const alike = (other: TracedUnit): boolean =>
    other !== unit && unit.mirrored === 'no' && other.mirrored === 'no' && other.count === unit.count;
  const group = [unit, ...all.filter(alike)] as const;
  const evened = evenCopies(tracing, group, centre, reachFor(tracing, group, within));
  return { ...evened, patches: evened.patches.filter((patch) => patch.unit === unit.id) };
}

/** Never so far that two corners of one patch might be taken for one. */
function reachFor(tracing: Tracing, units: readonly TracedUnit[], within: number): number {
  const chords = tracing.patches
    .filter((patch) => units.some(({ id }) => patch.unit === id))
    .flatMap((patch) => patch.steps.map((step) => edgeOfLine(tracing, lineOf(tracing, step.line))))
    .map((edge) => distance(edge.from, edge.to));
  return Math.min(within, Math.min(...chords) / 4);
}
