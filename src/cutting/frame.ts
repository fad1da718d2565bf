/**
 * The frame in which a blank is told: the print's up at +y where the print has one, else the side that serves best along x.
 * Of frames that its turns make alike one is chosen by the shape alone, so that equal blanks come out equal however their
 * patches were drawn.
 */
import type { BlankShapeKind } from '../quilt/quilt.ts';
import { sharpTips } from '../shape/grow.ts';
import { degreesFromUp, length, modulo, type Point, type Polygon } from '../shape/point.ts';
import { polygonArea } from '../shape/polygon.ts';
import { toOrigin } from '../shape/same-outline.ts';
import { boxOf, slantOf } from './blank-shapes.ts';
import { mirrorRough, type RoughPatch, type Side, turnRough } from './rough-patch.ts';

/** Where a side runs, degrees anticlockwise from +x. */
export const directionOf = ({ along }: Side): number => (Math.atan2(along[1], along[0]) * 180) / Math.PI;

/** The straight sides of a patch; of one that has none, the chords of its arcs. */
export function straightSides({ sides }: RoughPatch): readonly Side[] {
  const straight = sides.filter((side) => side.straight);
  return straight.length > 0 ? straight : sides;
}

/**
 * Of some sides, the direction (degrees from +x) that has the greatest length of them along or square to it; the longest
 * side's among equals.
 */
export function mainDirection(sides: readonly Side[]): number {
  const ranked = sides
    .map((side) => ({
      direction: directionOf(side),
      size: length(side.along),
      along: alongOrSquare(sides, directionOf(side)),
    }))
    .sort((a, b) => (Math.abs(a.along - b.along) > SAME ? b.along - a.along : b.size - a.size));
  return ranked[0]!.direction;
}

/** The length of those sides that lie along or square to a direction (degrees from +x). */
function alongOrSquare(sides: readonly Side[], direction: number): number {
  return sides.reduce((sum, side) => sum + (squareTo(directionOf(side) - direction) ? length(side.along) : 0), 0);
}

/** A turn that lays more of the sides along or across the grain may cost this much more cloth: bias edges stretch. */
const GRAIN_FAVOUR = 1.05;
const SAME = 1e-6;

/**
 * The turns (degrees, 0 to 180) that serve a blank without direction best: among those at which its slant or box is nearly
 * smallest, those that leave the greatest length of sides along or square to x. Equally good ones are all given. Tried are
 * the turns that lay a side, or the square cut of a sharp tip, along or square to x. An outline is no smaller at any turn.
 */
export function bestLays(rough: RoughPatch, kind: BlankShapeKind, ruler: number): readonly number[] {
  const sides = straightSides(rough);
  const directions = [
    ...sides.map(directionOf),
    ...sharpTips(rough.patch).map(({ bisector }) => degreesFromUp(bisector)),
  ];
  const lays = distinct(directions.flatMap((each) => [modulo(-each, 180), modulo(90 - each, 180)])).map((turn) => ({
    turn,
    area: areaWhenLaid(rough, turn, kind, ruler),
    along: alongOrSquare(sides, -turn),
  }));
  const least = Math.min(...lays.map(({ area }) => area));
  const near = lays.filter(({ area }) => area <= least * GRAIN_FAVOUR + SAME);
  const longest = Math.max(...near.map(({ along }) => along));
  const aligned = near.filter(({ along }) => along >= longest - SAME * longest);
  const smallest = Math.min(...aligned.map(({ area }) => area));
  return aligned.filter(({ area }) => area <= smallest + SAME).map(({ turn }) => turn);
}

function areaWhenLaid(rough: RoughPatch, turn: number, kind: BlankShapeKind, ruler: number): number {
  const turned = turnRough(rough, turn);
  return kind === 'slant'
    ? polygonArea(slantOf(turned, 0, ruler))
    : kind === 'box'
      ? polygonArea(boxOf(turned, ruler))
      : 0;
}

const squareTo = (degrees: number): boolean => Math.abs(modulo(degrees + 45, 90) - 45) < 1e-4;

function distinct(turns: readonly number[]): readonly number[] {
  const kept: number[] = [];
  for (const turn of turns) {
    if (!kept.some((other) => Math.abs(modulo(turn - other + 90, 180) - 90) < 1e-5)) {
      kept.push(turn);
    }
  }
  return kept;
}

/**
 * Of the frames that its turns make alike, the one whose outline comes first in a fixed order.
 * @param lays turns to start from
 * @param period every multiple of it is alike; 360 for none
 * @param turnOver whether the other hand is alike too
 */
export function canonicalFrame(
  rough: RoughPatch,
  lays: readonly number[],
  period: number,
  turnOver: boolean,
): RoughPatch {
  const alike: RoughPatch[] = [];
  for (const lay of lays) {
    for (let more = 0; more < 360 - SAME; more += period) {
      const turned = turnRough(rough, modulo(lay + more, 360));
      alike.push(turned, ...(turnOver ? [mirrorRough(turned)] : []));
    }
  }
  return alike.reduce((first, each) => (comesBefore(each, first) ? each : first));
}

function comesBefore(a: RoughPatch, b: RoughPatch): boolean {
  const one = fromLowest(a.roughAskew).flat();
  const other = fromLowest(b.roughAskew).flat();
  const differing = one.findIndex((value, i) => Math.abs(value - (other[i] ?? 0)) > SAME);
  return differing >= 0 && one[differing]! < (other[differing] ?? 0);
}

/** The polygon at the origin, told from its lowest corner, the leftmost of several. */
function fromLowest(polygon: Polygon): readonly Point[] {
  const moved = toOrigin(polygon);
  const level = moved.map(([x, y]) => (y < SAME ? x : Number.POSITIVE_INFINITY));
  const start = level.indexOf(Math.min(...level));
  return [...moved.slice(start), ...moved.slice(0, start)];
}
