/** Units drawn at random: some that can be sewn because they were cut so, some that cannot because of what is at their heart. */
import clipping from 'polygon-clipping';
import { difference } from '../../src/shape/combine.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { add, distance, fromUp, type Point, type Polygon, scale, subtract } from '../../src/shape/point.ts';
import {
  anticlockwise,
  movePolygon,
  polygonArea,
  polygonBox,
  polygonCentroid,
  polygonPerimeter,
} from '../../src/shape/polygon.ts';
import { type Cells, outlineOf } from './cell-units.ts';

export type Random = () => number;

/** Numbers from 0 to 1, the same for the same seed (mulberry32, public domain). */
export function seeded(seed: number): Random {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const between = (random: Random, low: number, high: number): number => low + random() * (high - low);
const whole = (random: Random, low: number, high: number): number => Math.floor(between(random, low, high + 1));

export function shuffled<Item>(random: Random, items: readonly Item[]): readonly Item[] {
  const rest = [...items];
  return items.map(() => rest.splice(Math.floor(random() * rest.length), 1)[0]!);
}

/** A star-shaped region with some notches, or a convex one. */
function region(random: Random, notched: boolean): Polygon {
  const corners = whole(random, 4, 9);
  const size = between(random, 3, 8);
  return Array.from({ length: corners }, (_, k) => {
    const reach = notched ? between(random, 0.55, 1) : 1;
    return scale(fromUp((360 * (k + between(random, 0, 0.6))) / corners), size * reach);
  });
}

/** Both parts of a polygon beside a line; more than two where the line leaves it and comes back. */
function cut(polygon: Polygon, at: Point, degrees: number): readonly [Polygon[], Polygon[]] {
  const along = fromUp(degrees);
  const left: Point = [-along[1], along[0]];
  const half = (side: 1 | -1): Polygon => {
    const [back, ahead] = [add(at, scale(along, -100)), add(at, scale(along, 100))];
    const corners = [back, ahead, add(ahead, scale(left, side * 100)), add(back, scale(left, side * 100))];
    return side === 1 ? corners : corners.reverse();
  };
  return [[...difference(polygon, half(-1))], [...difference(polygon, half(1))]];
}

/** Thinner than this it is no patch that anybody sews. */
const isStout = (polygon: Polygon): boolean =>
  polygonArea(polygon) > 0.1 * polygonPerimeter(polygon) &&
  polygon.every((corner, i) => distance(corner, polygon[(i + 1) % polygon.length]!) > 0.08);

/**
 * Patches cut off a region one after the other by straight lines right across what is left, in sewing order: the last cut off
 * comes first.
 */
export function cutUnit(random: Random, patches: number, notched = random() < 0.4): readonly Polygon[] {
  for (;;) {
    const pieces = cutOff(random, region(random, notched), patches - 1);
    if (pieces !== null) {
      return pieces;
    }
  }
}

function cutOff(random: Random, whole_: Polygon, cuts: number): readonly Polygon[] | null {
  let rest = whole_;
  const taken: Polygon[] = [];
  for (let tries = 0; taken.length < cuts; tries++) {
    if (tries > 60) {
      return null;
    }
    const { min, max } = polygonBox(rest);
    const at: Point = [between(random, min[0], max[0]), between(random, min[1], max[1])];
    const [left, right] = cut(rest, at, between(random, 0, 180));
    const [one, other] = [left[0], right[0]];
    if (left.length === 1 && right.length === 1 && isStout(one!) && isStout(other!)) {
      const [piece, kept] = random() < 0.5 ? [one!, other!] : [other!, one!];
      taken.push(piece);
      rest = kept;
    }
  }
  return [rest, ...taken.reverse()];
}

export interface Knotted {
  readonly patches: readonly Polygon[];
  /** Indices of those among which no order can be found. */
  readonly knot: readonly number[];
  /** Whether each of them is needed for that; in a windmill the middle or an arm may be spared. */
  readonly all: boolean;
}

/** A unit cut as `cutUnit` cuts, but for its first patch, which is parted so that its parts hold each other. */
export function knottedUnit(random: Random, cuts: number): Knotted {
  for (;;) {
    const [first, ...others] = cutUnit(random, cuts + 1, false);
    const { pieces, all } = KNOTS[whole(random, 0, KNOTS.length - 1)]!(random);
    const middle = polygonCentroid(first!);
    const knot = pieces.map((piece) => common(first!, movePolygon(piece, middle)));
    // A windmill whose middle reaches the outside is none.
    const closed = all || Math.abs(polygonArea(knot.at(-1)![0] ?? []) - polygonArea(pieces.at(-1)!)) < 1e-6;
    if (closed && knot.every((parts) => parts.length === 1 && isStout(parts[0]!))) {
      const drawn = [...knot.flat(), ...others];
      const order = shuffled(
        random,
        drawn.map((_, index) => index),
      );
      return {
        patches: order.map((index) => drawn[index]!),
        knot: order.flatMap((index, place) => (index < pieces.length ? [place] : [])),
        all,
      };
    }
  }
}

/** The plane in parts about the origin. */
interface Knot {
  readonly pieces: readonly Polygon[];
  readonly all: boolean;
}

const FAR = 60;
const KNOTS: readonly ((random: Random) => Knot)[] = [windmill, crossing, fork];

/** Arms round a patch in the middle, each running past the side of the next. */
function windmill(random: Random): Knot {
  const arms = whole(random, 3, 6);
  const turned = between(random, 0, 360);
  const middle = Array.from({ length: arms }, (_, k) =>
    scale(fromUp(turned + (360 * (k + between(random, 0, 0.3))) / arms), between(random, 0.5, 0.6)),
  );
  const ends = middle.map((corner, k) => add(corner, scale(subtract(corner, middle.at(k - 1)!), FAR)));
  const pieces = middle.map((from, k) => {
    const next = (k + 1) % arms;
    return anticlockwise([from, ends[k]!, ends[next]!, middle[next]!]);
  });
  return { pieces: [...pieces, middle], all: false };
}

/** Four patches about a point where two straight seams cross. */
function crossing(random: Random): Knot {
  const [first, second] = [between(random, 0, 40), between(random, 70, 140)];
  return about([first, second, first + 180, second + 180]);
}

/** Three patches about a point, no two of their seams in one line. */
function fork(random: Random): Knot {
  return about([0, 1, 2].map((k) => 120 * k + between(random, 0, 40)));
}

function about(degrees: readonly number[]): Knot {
  const pieces = degrees.map((from, k): Polygon => {
    const to = (degrees[k + 1] ?? degrees[0]! + 360) - from;
    return [[0, 0], ...[0, to / 2, to].map((more) => scale(fromUp(from + more), FAR))];
  });
  return { pieces, all: true };
}

/** By a clipping library that the code under test does not use. */
function common(a: Polygon, b: Polygon): readonly Polygon[] {
  const ring = (polygon: Polygon): [number, number][] => polygon.map(([x, y]) => [x, y]);
  return clipping.intersection([ring(a)], [ring(b)]).map(([outer]) => anticlockwise(outer!.slice(1)));
}

/** Coordinates as a file has them. */
export const rounded = (outline: Outline): Outline =>
  outline.map((entry) =>
    'arc' in entry ? entry : [Math.round(entry[0] * 1e5) / 1e5, Math.round(entry[1] * 1e5) / 1e5],
  );

/** A grid in patches of whole cells, up to `most` of them, with or without cells left out; any of them may hold each other. */
export function cellUnit(
  random: Random,
  most: number,
): { readonly cells: Cells; readonly outlines: readonly Polygon[] } {
  for (;;) {
    const [wide, tall] = [whole(random, 2, 5), whole(random, 2, 5)];
    const rows = Array.from({ length: tall }, () => Array.from({ length: wide }, () => 0));
    const cells = random() < 0.6 ? guillotined(random, rows) : grown(random, rows);
    const gaps = random() < 0.5 ? whole(random, 1, 3) : 0;
    for (let k = 0; k < gaps; k++) {
      cells[whole(random, 0, tall - 1)]![whole(random, 0, wide - 1)] = -1;
    }
    const used = [...new Set(cells.flat())].filter((which) => which >= 0);
    const named = cells.map((row) => row.map((which) => used.indexOf(which)));
    const outlines = used.map((_, index) => outlineOf(named, index));
    if (used.length > 1 && used.length <= most && outlines.every((outline) => outline !== null)) {
      return { cells: named, outlines: outlines.map((outline) => outline!) };
    }
  }
}

/** Cut right across again and again, now one side, now both; then perhaps two patches made one. */
function guillotined(random: Random, rows: number[][]): number[][] {
  let last = 0;
  const part = (left: number, bottom: number, right: number, top: number, more: number): void => {
    const across = random() < 0.5;
    const [low, high] = across ? [left, right] : [bottom, top];
    if (more === 0 || high - low < 2) {
      last++;
      for (let y = bottom; y < top; y++) rows[y]!.fill(last, left, right);
      return;
    }
    const at = whole(random, low + 1, high - 1);
    const both = random() < 0.4;
    const first = random() < 0.5;
    const halves = across
      ? ([
          [left, bottom, at, top],
          [at, bottom, right, top],
        ] as const)
      : ([
          [left, bottom, right, at],
          [left, at, right, top],
        ] as const);
    halves.forEach((half, k) => {
      part(...half, both || (k === 0) === first ? more - 1 : 0);
    });
  };
  part(0, 0, rows[0]!.length, rows.length, whole(random, 2, 7));
  const [one, other] = [whole(random, 1, last), whole(random, 1, last)];
  return random() < 0.3 ? rows.map((row) => row.map((which) => (which === one ? other : which))) : rows;
}

/** Seeds that grow cell by cell. */
function grown(random: Random, rows: number[][]): number[][] {
  const places = shuffled(
    random,
    rows.flatMap((row, y) => row.map((_, x) => [x, y] as const)),
  );
  const seeds = whole(random, 2, 7);
  places.forEach(([x, y], k) => {
    rows[y]![x] = k < seeds ? k + 1 : 0;
  });
  for (let guard = 0; guard < 500 && rows.flat().includes(0); guard++) {
    const [x, y] = places[whole(random, 0, places.length - 1)]!;
    const [dx, dy] = (
      [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const
    )[whole(random, 0, 3)]!;
    if (rows[y]![x] === 0) rows[y]![x] = rows[y + dy]?.[x + dx] ?? 0;
  }
  return rows.map((row) => row.map((which) => (which === 0 ? -1 : which)));
}
