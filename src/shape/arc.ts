/** A circular arc worked out from its ends: where its centre is and how far round it goes. */
import type { Arc, Edge } from './outline.ts';
import { add, distance, type Point, scale, subtract } from './point.ts';

export interface CentredArc {
  readonly centre: Point;
  readonly radius: number;
  /** Radians anticlockwise from +x at which it starts. */
  readonly start: number;
  /** Radians it goes round; positive anticlockwise. */
  readonly sweep: number;
}

/** A chord may be longer than the diameter by this much of it, because coordinates are rounded when they are written. */
const SLACK = 1e-9;

/**
 * The arc between two corners, with its centre.
 * @throws RangeError when it cannot exist: its ends coincide, its radius is not positive, or its chord outruns the diameter
 */
export function centreArc(from: Point, to: Point, arc: Arc['arc']): CentredArc {
  const fault = arcFault(from, to, arc);
  if (fault !== null) {
    throw new RangeError(fault);
  }
  const chord = distance(from, to);
  const { radius } = arc;
  const half = Math.min(1, chord / (2 * radius));
  const small = 2 * Math.asin(half);
  const size = arc.large === true ? 2 * Math.PI - small : small;
  const sweep = arc.turn === 'anticlockwise' ? size : -size;
  // The centre lies to the left of the chord for a small anticlockwise arc; each of "clockwise" and "large" changes sides.
  const left = (arc.turn === 'anticlockwise') !== (arc.large === true);
  const reach = (Math.sqrt(1 - half * half) * radius) / chord;
  const along = subtract(to, from);
  const across: Point = left ? [-along[1], along[0]] : [along[1], -along[0]];
  const centre = add(add(from, scale(along, 0.5)), scale(across, reach));
  return { centre, radius, start: Math.atan2(from[1] - centre[1], from[0] - centre[0]), sweep };
}

/** Why an arc cannot exist, in words for a person, or null when it can. */
export function arcFault(from: Point, to: Point, arc: Arc['arc']): string | null {
  const chord = distance(from, to);
  if (!(arc.radius > 0)) {
    return `an arc has radius ${arc.radius}; it must be greater than 0`;
  }
  if (chord <= SLACK * arc.radius) {
    return `an arc of radius ${arc.radius} starts and ends at the same corner; put another corner on its way`;
  }
  if (chord > 2 * arc.radius * (1 + SLACK)) {
    const least = Math.ceil((chord / 2) * 1e4) / 1e4;
    return `an arc of radius ${arc.radius} cannot join corners ${tidy(chord)} apart; its radius must be at least ${least}`;
  }
  return null;
}

/** The arc of an edge, or null where the edge is straight. */
export function arcOf(edge: Edge): CentredArc | null {
  return edge.arc === undefined ? null : centreArc(edge.from, edge.to, edge.arc);
}

/** The place on the arc's circle that is `angle` radians anticlockwise from +x, at `radius` (default the arc's own). */
export function onArc(arc: CentredArc, angle: number, radius = arc.radius): Point {
  return [arc.centre[0] + radius * Math.cos(angle), arc.centre[1] + radius * Math.sin(angle)];
}

/** Whether the arc passes the direction `angle` from its centre, ends included within `slack` radians. */
export function passes(arc: CentredArc, angle: number, slack = 1e-9): boolean {
  const whole = 2 * Math.PI;
  const forward = arc.sweep > 0 ? angle - arc.start : arc.start - angle;
  const gone = ((forward % whole) + whole) % whole;
  return gone <= Math.abs(arc.sweep) + slack || gone >= whole - slack;
}

const tidy = (value: number): number => Math.round(value * 1e4) / 1e4;
