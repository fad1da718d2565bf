/**
 * Runs of SVG segments as edges in inches: straight ones and true arcs. What is circular after all transforms stays an arc;
 * any other curve becomes straight edges that part from it by no more than a thousandth of an inch.
 */

import { cosAndSin } from '../../shape/angle.ts';
import type { Edge } from '../../shape/outline.ts';
import { add, cross, distance, dot, length, type Point, scale, subtract } from '../../shape/point.ts';
import { apply, applyStep, type Matrix } from './matrix.ts';
import type { Segment, UserRun } from './path-segments.ts';

/** Inches. */
export const CURVE_WITHIN = 1e-3;
/** Drawing programs write a quarter circle as one cubic, which strays from it by 0.027 % of its radius; that is still meant. */
const OF_RADIUS = 3e-4;
/** Inches that a curve may stray from its chord and still be meant as straight. */
const STRAIGHT_WITHIN = 1e-4;
/** Radians. Longer arcs are parted, so that rounding never makes a chord longer than its diameter. */
const LONGEST_ARC = 3;
const MOST_PARTS = 400;
/** Of one run. */
const MOST_EDGES = 1_000;

export interface TracedRun {
  /** Each begins where the one before ends. */
  readonly edges: readonly Edge[];
  readonly closed: boolean;
  /** How many curves were no arcs and are now straight edges. */
  readonly flattened: number;
}

/** Instead, why it cannot be traced, to follow "the shape". */
export function traceRun(run: UserRun, matrix: Matrix): TracedRun | string {
  const edges: Edge[] = [];
  let flattened = 0;
  let user = run.start;
  const put = (edge: Edge): void => {
    if (distance(edge.from, edge.to) > 0) edges.push(edge);
  };
  for (const segment of run.segments) {
    const from = apply(matrix, user);
    const to = apply(matrix, segment.to);
    const traced =
      segment.kind === 'line'
        ? [{ from, to }]
        : segment.kind === 'curve'
          ? traceCurve([from, apply(matrix, segment.first), apply(matrix, segment.second), to])
          : traceArc(user, segment, matrix);
    if (traced.length > 1 && traced.every((edge) => edge.arc === undefined)) flattened++;
    traced.forEach(put);
    if (edges.length > MOST_EDGES) return `has more than ${MOST_EDGES} edges once its curves are straightened`;
    user = segment.to;
  }
  if (run.closed && edges.length > 0) {
    put({ from: edges.at(-1)!.to, to: edges[0]!.from });
  }
  const finite = edges.every((edge) => [...edge.from, ...edge.to].every((value) => Math.abs(value) < 1e6));
  return finite ? { edges, closed: run.closed, flattened } : 'has numbers beyond all measure';
}

type Cubic = readonly [Point, Point, Point, Point];

function onCubic([a, b, c, d]: Cubic, t: number): Point {
  const s = 1 - t;
  const [A, B, C, D] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return [A * a[0] + B * b[0] + C * c[0] + D * d[0], A * a[1] + B * b[1] + C * c[1] + D * d[1]];
}

function traceCurve(cubic: Cubic): readonly Edge[] {
  const [a, b, c, d] = cubic;
  if (isStraight(cubic)) return [{ from: a, to: d }];
  const arc = arcThrough(cubic);
  if (arc !== null) return [arc];
  // The second difference bounds how far a part of length h strays from its chord: h² · most / 8, and most is six times it.
  const most = 6 * Math.max(length(add(subtract(a, scale(b, 2)), c)), length(add(subtract(b, scale(c, 2)), d)));
  return chain((t) => onCubic(cubic, t), partsFor(most));
}

function partsFor(secondDerivative: number): number {
  const parts = Math.ceil(Math.sqrt(secondDerivative / (8 * CURVE_WITHIN)));
  return Math.max(1, Math.min(MOST_PARTS, Number.isFinite(parts) ? parts : 1));
}

function chain(at: (t: number) => Point, parts: number): readonly Edge[] {
  return Array.from({ length: parts }, (_, k) => ({ from: at(k / parts), to: at((k + 1) / parts) }));
}

/** Handles on the chord, between its ends. */
function isStraight([a, b, c, d]: Cubic): boolean {
  const along = subtract(d, a);
  const size = length(along);
  return (
    size > 0 &&
    [b, c].every((handle) => {
      const step = subtract(handle, a);
      const gone = dot(step, along) / size;
      return (
        Math.abs(cross(along, step)) / size <= STRAIGHT_WITHIN &&
        gone >= -STRAIGHT_WITHIN &&
        gone <= size + STRAIGHT_WITHIN
      );
    })
  );
}

/** The arc through the ends and the middle, if the whole curve keeps to it and goes one way round less than a half. */
function arcThrough(cubic: Cubic): Edge | null {
  const [from, , , to] = cubic;
  const circle = circleThrough(from, onCubic(cubic, 0.5), to);
  if (circle === null) return null;
  const { centre, radius } = circle;
  const within = Math.max(CURVE_WITHIN, OF_RADIUS * radius);
  if (within > 0.05 * distance(from, to)) return null;
  const spokes = Array.from({ length: 25 }, (_, k) => subtract(onCubic(cubic, k / 24), centre));
  if (spokes.some((spoke) => Math.abs(length(spoke) - radius) > within)) return null;
  const steps = spokes.slice(1).map((spoke, k) => Math.atan2(cross(spokes[k]!, spoke), dot(spokes[k]!, spoke)));
  const sweep = steps.reduce((sum, step) => sum + step, 0);
  if (steps.some((step) => step * sweep <= 0) || Math.abs(sweep) > LONGEST_ARC) return null;
  return { from, to, arc: { radius, turn: sweep > 0 ? 'anticlockwise' : 'clockwise' } };
}

/** null where they lie on one line, as near as can be told. */
export function circleThrough(
  a: Point,
  b: Point,
  c: Point,
): { readonly centre: Point; readonly radius: number } | null {
  const u = subtract(b, a);
  const v = subtract(c, a);
  const twice = 2 * cross(u, v);
  if (Math.abs(twice) <= 1e-9 * (dot(u, u) + dot(v, v))) return null;
  const [uu, vv] = [dot(u, u), dot(v, v)];
  const step: Point = [(v[1] * uu - u[1] * vv) / twice, (u[0] * vv - v[0] * uu) / twice];
  return { centre: add(a, step), radius: length(step) };
}

/** An elliptical arc by its centre (SVG 2, appendix B.2.4), carried through the transform as a centre and two half axes. */
function traceArc(from: Point, arc: Extract<Segment, { kind: 'arc' }>, matrix: Matrix): readonly Edge[] {
  const ends = [apply(matrix, from), apply(matrix, arc.to)] as const;
  const user = centred(from, arc);
  if (user === null) return [{ from: ends[0], to: ends[1] }];
  const centre = apply(matrix, user.centre);
  const u = applyStep(matrix, user.u);
  const v = applyStep(matrix, user.v);
  const at = (angle: number): Point => add(centre, add(scale(u, Math.cos(angle)), scale(v, Math.sin(angle))));
  const squares = dot(u, u) + dot(v, v);
  const twice = 2 * cross(u, v);
  const [sum, apart] = [Math.sqrt(squares + Math.abs(twice)), Math.sqrt(Math.max(0, squares - Math.abs(twice)))];
  // Sum and difference of the greatest and the least radius.
  if (apart > CURVE_WITHIN) {
    return pinned(
      chain((t) => at(user.start + t * user.sweep), partsFor(Math.max(length(u), length(v)) * user.sweep ** 2)),
      ends,
    );
  }
  const parts = Math.ceil(Math.abs(user.sweep) / LONGEST_ARC);
  const turn = user.sweep > 0 === twice > 0 ? 'anticlockwise' : 'clockwise';
  const edges = chain((t) => at(user.start + t * user.sweep), parts);
  return pinned(edges, ends).map((edge) => ({
    ...edge,
    arc: { radius: Math.max(sum / 2, distance(edge.from, edge.to) / 2), turn },
  }));
}

/** The ends as written, whatever the way there has rounded. */
function pinned(edges: readonly Edge[], [from, to]: readonly [Point, Point]): readonly Edge[] {
  return edges.map((edge, i) => ({
    from: i === 0 ? from : edge.from,
    to: i === edges.length - 1 ? to : edge.to,
  }));
}

interface UserArc {
  readonly centre: Point;
  readonly u: Point;
  readonly v: Point;
  readonly start: number;
  readonly sweep: number;
}

function centred(from: Point, { radii, turn, large, sweep, to }: Extract<Segment, { kind: 'arc' }>): UserArc | null {
  let [rx, ry] = radii;
  if (!(rx > 0 && ry > 0) || distance(from, to) === 0) return null;
  const [c, s] = cosAndSin(turn % 360);
  const half = scale(subtract(from, to), 0.5);
  const x = c * half[0] + s * half[1];
  const y = -s * half[0] + c * half[1];
  const grow = Math.sqrt((x / rx) ** 2 + (y / ry) ** 2);
  if (grow > 1) {
    rx *= grow;
    ry *= grow;
  }
  const sum = (x / rx) ** 2 + (y / ry) ** 2;
  const root = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / sum - 1));
  const middle: Point = [(root * rx * y) / ry, (-root * ry * x) / rx];
  const centre = add([c * middle[0] - s * middle[1], s * middle[0] + c * middle[1]], scale(add(from, to), 0.5));
  const start = Math.atan2((y - middle[1]) / ry, (x - middle[0]) / rx);
  const end = Math.atan2((-y - middle[1]) / ry, (-x - middle[0]) / rx);
  let gone = end - start;
  if (sweep && gone < 0) gone += 2 * Math.PI;
  if (!sweep && gone > 0) gone -= 2 * Math.PI;
  return { centre, u: [c * rx, s * rx], v: [-s * ry, c * ry], start, sweep: gone };
}
