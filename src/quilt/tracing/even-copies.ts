/**
 * A unit that stands several times about the centre, evened out: what meets its own copies meets them exactly, what was traced in
 * several copies is the mean of them, arcs about the centre have the centre for their own.
 */

import { middleOfArc } from '../../shape/arc-through.ts';
import {
  degreesFromUp,
  distance,
  fromUp,
  length,
  modulo,
  type Point,
  scale,
  subtract,
  turn,
} from '../../shape/point.ts';
import { bulgeOf } from './line-shape.ts';
import { sectorOf } from './sector.ts';
import { cornersOfPatch, type Line, stepStart, type TracedPatch, type TracedUnit, type Tracing } from './tracing.ts';

export interface Evened {
  /** Corner id to its place about the centre. */
  readonly places: ReadonlyMap<number, Point>;
  /** Line id to its bulge from its beginning to its end. */
  readonly bulges: ReadonlyMap<number, number>;
  /** The patches that are left once copies of others are taken away. */
  readonly patches: readonly TracedPatch[];
}

/** A corner as the copy of another: turned by so many steps. */
interface Copy {
  readonly root: number;
  readonly steps: number;
}

/**
 * Several units are evened out together, so that what they share stays shared.
 * @param units that stand as many times about the centre, and are mirrored alike
 * @param centre of the block, in the tracing's plane
 * @param within how far two places may be apart and still count as copies of one
 */
export function evenCopies(
  tracing: Tracing,
  units: readonly [TracedUnit, ...TracedUnit[]],
  centre: Point,
  within: number,
): Evened {
  const [unit] = units;
  const patches = tracing.patches.filter((patch) => units.some(({ id }) => patch.unit === id));
  const ids = [...new Set(patches.flatMap((patch) => cornersOfPatch(tracing, patch).map((corner) => corner.id)))];
  const drawn = new Map(
    tracing.corners
      .filter((corner) => ids.includes(corner.id))
      .map((corner) => [corner.id, subtract(corner.at, centre)]),
  );
  const used = new Set(patches.flatMap((patch) => patch.steps.map((step) => step.line)));
  const lines = tracing.lines.filter((line) => used.has(line.id));
  const bulges = new Map(lines.map((line) => [line.id, bulgeOf(tracing, line)]));
  if (unit.count < 2) {
    return { places: drawn, bulges, patches };
  }
  const copies = findCopies(drawn, unit, within);
  const places = meanPlaces(drawn, copies, unit, within);
  const round = lines.filter((line) => isRound(line, places, bulges, within));
  evenRadii(places, round, copies);
  const evened = meanBulges(lines, bulges, copies, unit.count);
  for (const line of round) {
    evened.set(line.id, roundBulge(places.get(line.from)!, places.get(line.to)!));
  }
  return { places, bulges: evened, patches: withoutCopies(tracing, patches, copies, unit.count) };
}

/** Mirrored neighbours do not repeat by turning by one step, but by two; with 'also' each step has its whole pair. */
const turningCount = ({ count, mirrored }: TracedUnit): number =>
  mirrored === 'alternate' && count % 2 === 0 ? count / 2 : count;

function findCopies(drawn: ReadonlyMap<number, Point>, unit: TracedUnit, within: number): ReadonlyMap<number, Copy> {
  const copies = new Map<number, Copy>([...drawn.keys()].map((id) => [id, { root: id, steps: 0 }]));
  const count = turningCount(unit);
  const step = 360 / count;
  const list = [...drawn];
  list.forEach(([a, placeA], i) => {
    for (const [b, placeB] of list.slice(i + 1)) {
      const steps = modulo(Math.round((degreesFromUp(placeB) - degreesFromUp(placeA)) / step), count);
      const same = steps !== 0 && distance(turn(placeA, steps * step), placeB) <= within;
      const [ofA, ofB] = [copies.get(a)!, copies.get(b)!];
      if (same && ofA.root !== ofB.root) {
        // All that were copies of b's root become copies of a's.
        const shift = ofA.steps + steps - ofB.steps;
        for (const [id, copy] of copies) {
          if (copy.root === ofB.root) {
            copies.set(id, { root: ofA.root, steps: modulo(copy.steps + shift, count) });
          }
        }
      }
    }
  });
  return copies;
}

function meanPlaces(
  drawn: ReadonlyMap<number, Point>,
  copies: ReadonlyMap<number, Copy>,
  unit: TracedUnit,
  within: number,
): Map<number, Point> {
  const step = 360 / turningCount(unit);
  const sums = new Map<number, { x: number; y: number; count: number }>();
  for (const [id, place] of drawn) {
    const { root, steps } = copies.get(id)!;
    const [x, y] = turn(place, -steps * step);
    const sum = sums.get(root) ?? { x: 0, y: 0, count: 0 };
    sums.set(root, { x: sum.x + x, y: sum.y + y, count: sum.count + 1 });
  }
  const places = new Map<number, Point>();
  for (const id of drawn.keys()) {
    const { root, steps } = copies.get(id)!;
    const { x, y, count } = sums.get(root)!;
    const mean: Point = [x / count, y / count];
    places.set(id, length(mean) <= within ? [0, 0] : turn(mean, steps * step));
  }
  return unit.mirrored === 'no' ? places : onMirrors(places, unit, within);
}

/** What meets a mirrored copy lies on the line between the two, which goes out from the centre. */
function onMirrors(places: Map<number, Point>, unit: TracedUnit, within: number): Map<number, Point> {
  const sector = sectorOf([...places.values()], within);
  if (sector === null) return places;
  const half = (unit.mirrored === 'also' ? 180 : 360) / unit.count / 2;
  const middle = sector.from + sector.size / 2;
  for (const [id, place] of places) {
    for (const ray of [fromUp(middle - half), fromUp(middle + half)]) {
      const along = place[0] * ray[0] + place[1] * ray[1];
      const on = scale(ray, along);
      if (along > 0 && distance(on, place) <= within) places.set(id, on);
    }
  }
  return places;
}

/** Whether a line might as well be an arc about the centre. */
function isRound(
  line: Line,
  places: ReadonlyMap<number, Point>,
  bulges: ReadonlyMap<number, number>,
  within: number,
): boolean {
  const [from, to, bulge] = [places.get(line.from)!, places.get(line.to)!, bulges.get(line.id)!];
  const near = Math.min(length(from), length(to));
  if (bulge === 0 || near <= within || Math.abs(length(from) - length(to)) > within) return false;
  return distance(middleOfArc(from, to, bulge), middleOfArc(from, to, roundBulge(from, to))) <= within;
}

/** The bulge of the arc about the centre between two places as far from it. */
function roundBulge(from: Point, to: Point): number {
  const swing = modulo(degreesFromUp(to) - degreesFromUp(from) + 180, 360) - 180;
  return Math.tan((swing * Math.PI) / 720);
}

/** Corners joined by arcs about the centre, and their copies, all as far from it. */
function evenRadii(places: Map<number, Point>, round: readonly Line[], copies: ReadonlyMap<number, Copy>): void {
  const group = new Map<number, number>();
  const root = (id: number): number => {
    const own = copies.get(id)!.root;
    let at = own;
    while (group.has(at)) at = group.get(at)!;
    return at;
  };
  for (const line of round) {
    const [a, b] = [root(line.from), root(line.to)];
    if (a !== b) group.set(b, a);
  }
  const onArcs = new Set(round.flatMap((line) => [root(line.from)]));
  for (const each of onArcs) {
    const members = [...places].filter(([id]) => root(id) === each);
    const radius = members.reduce((sum, [, place]) => sum + length(place), 0) / members.length;
    for (const [id, place] of members) places.set(id, scale(place, radius / length(place)));
  }
}

/** Lines that are copies of one another bend alike. */
function meanBulges(
  lines: readonly Line[],
  bulges: ReadonlyMap<number, number>,
  copies: ReadonlyMap<number, Copy>,
  count: number,
): Map<number, number> {
  const keyed = lines.map((line) => {
    const [a, b] = [copies.get(line.from)!, copies.get(line.to)!];
    const forward = a.root < b.root || (a.root === b.root && modulo(b.steps - a.steps, count) <= count / 2);
    const [one, other] = forward ? [a, b] : [b, a];
    const bulge = bulges.get(line.id)! * (forward ? 1 : -1);
    // Two lines between the same corners bend to different sides.
    const key = `${one.root} ${other.root} ${modulo(other.steps - one.steps, count)} ${Math.sign(bulge)}`;
    return { line, key, bulge, sign: forward ? 1 : -1 };
  });
  return new Map(
    keyed.map(({ line, key, sign }) => {
      const alike = keyed.filter((each) => each.key === key);
      return [line.id, (sign * alike.reduce((sum, each) => sum + each.bulge, 0)) / alike.length];
    }),
  );
}

/** Each patch but those that are an earlier one turned. */
function withoutCopies(
  tracing: Tracing,
  patches: readonly TracedPatch[],
  copies: ReadonlyMap<number, Copy>,
  count: number,
): readonly TracedPatch[] {
  const kept: TracedPatch[] = [];
  for (const patch of patches) {
    if (!kept.some((other) => isCopy(tracing, other, patch, copies, count))) kept.push(patch);
  }
  return kept;
}

function isCopy(
  tracing: Tracing,
  one: TracedPatch,
  other: TracedPatch,
  copies: ReadonlyMap<number, Copy>,
  count: number,
): boolean {
  if (one.unit !== other.unit || one.steps.length !== other.steps.length) return false;
  const ofCorners = (patch: TracedPatch): readonly Copy[] =>
    patch.steps.map((step) => copies.get(stepStart(tracing, step))!);
  const a = ofCorners(one);
  const b = ofCorners(other);
  const matches = (order: readonly Copy[]): boolean =>
    order.some((_, shift) => {
      const turned = order.map((each, i) => order[(i + shift) % order.length] ?? each);
      const steps = modulo(turned[0]!.steps - a[0]!.steps, count);
      return a.every(
        (each, i) => turned[i]!.root === each.root && modulo(turned[i]!.steps - each.steps, count) === steps,
      );
    });
  return matches(b) || matches([...b].reverse());
}
