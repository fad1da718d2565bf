/** Whether an outline from a file can be cut at all: real corners, arcs that exist, edges that do not cross. */
import type { Arc, Outline } from '../shape/outline.ts';
import { add, cross, distance, dot, length, type Point, scale, subtract } from '../shape/point.ts';

export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly arc: Arc['arc'] | null;
}

/** The edges of an outline in order; edge i starts at corner i. Taken to be in order (no two arcs in a row). */
export function sidesOf(outline: Outline): readonly Side[] {
  const sides: Side[] = [];
  outline.forEach((entry, i) => {
    if (isArc(entry)) {
      return;
    }
    const next = outline[(i + 1) % outline.length]!;
    const to = isArc(next) ? outline[(i + 2) % outline.length]! : next;
    if (!isArc(to)) {
      sides.push({ from: entry, to, arc: isArc(next) ? next.arc : null });
    }
  });
  return sides;
}

/** What keeps an outline from being one, in words that follow the name of the field; null when it is sound. */
export function faultOfOutline(outline: Outline): string | null {
  const misplaced = outline.findIndex((entry, i) => isArc(entry) && (i === 0 || isArc(outline[i - 1]!)));
  if (misplaced >= 0) {
    return `expected a corner before the arc at ${misplaced}; an arc stands between two corners, or last`;
  }
  const sides = sidesOf(outline);
  if (sides.length < 2 || (sides.length === 2 && sides.every((side) => side.arc === null))) {
    return `expected three corners or more, or two with an arc; found ${sides.length}`;
  }
  for (const [i, side] of sides.entries()) {
    const fault = faultOfSide(side, i);
    if (fault !== null) {
      return fault;
    }
  }
  return crossing(sides);
}

function faultOfSide({ from, to, arc }: Side, i: number): string | null {
  const chord = distance(from, to);
  if (chord === 0) {
    return `expected two different corners; edge ${i} starts and ends at ${said(from)}`;
  }
  if (arc !== null && arc.radius <= 0) {
    return `expected an arc of radius above zero; the arc from ${said(from)} to ${said(to)} has ${arc.radius}`;
  }
  if (arc !== null && chord > 2 * arc.radius * (1 + 1e-9)) {
    return `the arc from ${said(from)} to ${said(to)} cannot exist: its ends are ${short(chord)} apart, and a circle of radius ${short(arc.radius)} is only ${short(2 * arc.radius)} across`;
  }
  return null;
}

/** Compares every piece of every edge with every other; pieces that follow each other may only not double back. */
function crossing(sides: readonly Side[]): string | null {
  const pieces = sides.flatMap((side, edge) => {
    const points = alongSide(side);
    return points.slice(1).map((to, k) => ({ edge, from: points[k]!, to }));
  });
  for (let i = 0; i < pieces.length; i++) {
    for (let j = i + 1; j < pieces.length; j++) {
      const [a, b] = [pieces[i]!, pieces[j]!];
      const follows = j === i + 1;
      const closes = i === 0 && j === pieces.length - 1;
      const meet =
        follows || closes
          ? (follows ? doublesBack(a, b) : doublesBack(b, a)) && (follows ? b.from : a.from)
          : meeting(a.from, a.to, b.from, b.to);
      if (meet) {
        return `crosses itself: edges ${a.edge} and ${b.edge} meet at ${said(meet)}`;
      }
    }
  }
  return null;
}

interface Piece {
  readonly from: Point;
  readonly to: Point;
}

function doublesBack(before: Piece, after: Piece): boolean {
  const a = subtract(before.to, before.from);
  const b = subtract(after.to, after.from);
  return dot(a, b) < 0 && Math.abs(cross(a, b)) <= 1e-9 * length(a) * length(b);
}

/** Where two segments cross or touch; null when they keep apart. */
function meeting(a: Point, b: Point, c: Point, d: Point): Point | null {
  const ab = subtract(b, a);
  const cd = subtract(d, c);
  const ac = subtract(c, a);
  const turned = cross(ab, cd);
  const near = 1e-9 * Math.max(length(ab), length(cd));
  if (Math.abs(turned) <= 1e-12 * length(ab) * length(cd)) {
    // Parallel: they meet only on one line, where an end of one lies within the other.
    return [c, d].find((p) => liesOn(p, a, b, near)) ?? [a, b].find((p) => liesOn(p, c, d, near)) ?? null;
  }
  const s = cross(ac, cd) / turned;
  const t = cross(ac, ab) / turned;
  const [slackS, slackT] = [near / length(ab), near / length(cd)];
  const within = s >= -slackS && s <= 1 + slackS && t >= -slackT && t <= 1 + slackT;
  return within ? add(a, scale(ab, s)) : null;
}

function liesOn(p: Point, a: Point, b: Point, near: number): boolean {
  return distance(a, p) + distance(p, b) - distance(a, b) <= near;
}

/** The points of an edge from its start to its end; an arc in chords of 2° or less. */
function alongSide({ from, to, arc }: Side): readonly Point[] {
  if (arc === null) {
    return [from, to];
  }
  const chord = subtract(to, from);
  const half = Math.min(length(chord) / 2, arc.radius);
  const sign = arc.turn === 'anticlockwise' ? 1 : -1;
  const rise = Math.sqrt(arc.radius ** 2 - half ** 2) * (arc.large ? -1 : 1) * sign;
  const normal = scale([-chord[1], chord[0]], 1 / length(chord));
  const centre = add(add(from, scale(chord, 0.5)), scale(normal, rise));
  const small = 2 * Math.asin(half / arc.radius);
  const span = (arc.large ? 2 * Math.PI - small : small) * sign;
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const steps = Math.max(2, Math.ceil((Math.abs(span) * 90) / Math.PI));
  return Array.from({ length: steps + 1 }, (_, k): Point => {
    if (k === 0 || k === steps) {
      return k === 0 ? from : to;
    }
    const at = start + (span * k) / steps;
    return [centre[0] + arc.radius * Math.cos(at), centre[1] + arc.radius * Math.sin(at)];
  });
}

function isArc(entry: Outline[number]): entry is Arc {
  return 'arc' in entry;
}

const short = (value: number): string => String(Number(value.toPrecision(6)));
const said = (p: Point): string => `[${short(p[0])}, ${short(p[1])}]`;
