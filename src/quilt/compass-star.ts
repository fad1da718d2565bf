/**
 * Draws a compass star in a ring of wedges on a square ground from its numbers. The star is cut into as many sectors as it
 * has points, each a foundation of its own: A holds a long point and the ground either side of it, B a short one. The ring
 * (C) and the ground of the square (D) are sewn without paper, because curved seams are not for foundations.
 */
import type { OutlineEntry } from '../shape/outline.ts';
import { fromUp, type Point, scale } from '../shape/point.ts';
import { lengthIn } from './measure.ts';
import type { CompassStarForm, LengthUnit, Patch, Unit } from './quilt.ts';

/** The roles that the drawing fills, by id. A quilt with this form lists them, names them and says how each faces. */
export const COMPASS_STAR_ROLES = [
  'long-light',
  'long-dark',
  'short-light',
  'short-dark',
  'haze',
  'hours',
  'sky',
] as const;
type CompassStarRole = (typeof COMPASS_STAR_ROLES)[number];

/** How far from the valleys to the long tips the short tips reach. */
const SHORT_REACH = 0.62;

/** The radius of the short points' tips, given those of the valleys and of the long tips. */
export function shortTipRadius(inner: number, outer: number): number {
  return inner + SHORT_REACH * (outer - inner);
}

/**
 * The four units of the form. Outlines run anticlockwise, in `unit`, about the block's centre.
 * @param form its numbers are taken to be checked (read-quilt.ts): 0 < inner < outer < ring < side / 2
 */
export function drawCompassStar(form: CompassStarForm, unit: LengthUnit): readonly Unit[] {
  const inner = lengthIn(unit, form.inner);
  const outer = lengthIn(unit, form.outer);
  const ring = lengthIn(unit, form.ring);
  const side = lengthIn(unit, form.side);
  const sector = 360 / form.points;
  const half = sector / 2;
  return [
    {
      id: 'A',
      name: 'Long point',
      paper: true,
      repeat: { count: form.points / 2 },
      axis: 0,
      patches: longPoint(inner, outer, half),
    },
    {
      id: 'B',
      name: 'Short point',
      paper: true,
      repeat: { count: form.points / 2, from: sector, mirrored: 'alternate' },
      axis: 0,
      patches: shortPoint(inner, outer, half),
    },
    {
      id: 'C',
      name: 'Ring',
      paper: false,
      repeat: { count: form.wedges },
      axis: 0,
      patches: [patch(1, 'hours', ringWedge(outer, ring, 180 / form.wedges))],
    },
    {
      id: 'D',
      name: 'Ground',
      paper: false,
      repeat: { count: 4 },
      axis: 0,
      patches: [patch(1, 'sky', groundQuarter(ring, side))],
    },
  ];
}

/** Two halves of a kite, then the ground to the right and to the left of it, each along one of the kite's long edges. */
function longPoint(inner: number, outer: number, half: number): readonly Patch[] {
  const centre: Point = [0, 0];
  const tip: Point = [0, outer];
  const right = at(inner, -half);
  const left = at(inner, half);
  return [
    patch(1, 'long-light', [centre, right, tip]),
    patch(2, 'long-dark', [centre, tip, left]),
    patch(3, 'haze', [right, at(outer, -half), bow(outer), tip]),
    patch(4, 'haze', [left, tip, bow(outer), at(outer, half)]),
  ];
}

/**
 * As the long point, but the tip does not reach the arc. The ground to the left comes last, so its seam runs straight on past
 * the tip to the arc and the ground to the right ends on it: the two are not each other's mirror image.
 */
function shortPoint(inner: number, outer: number, half: number): readonly Patch[] {
  const centre: Point = [0, 0];
  const tip: Point = [0, shortTipRadius(inner, outer)];
  const right = at(inner, -half);
  const left = at(inner, half);
  const seamEnd = whereLineLeavesCircle(left, tip, outer);
  return [
    patch(1, 'short-light', [centre, right, tip]),
    patch(2, 'short-dark', [centre, tip, left]),
    patch(3, 'haze', [right, at(outer, -half), bow(outer), seamEnd, tip]),
    patch(4, 'haze', [left, seamEnd, bow(outer), at(outer, half)]),
  ];
}

/** One wedge of the ring, its middle up: two straight sides, the arc outside, the hollow arc inside. */
function ringWedge(inner: number, outer: number, half: number): readonly OutlineEntry[] {
  return [at(inner, -half), at(outer, -half), bow(outer), at(outer, half), at(inner, half), hollow(inner)];
}

/** The quarter of the square's ground above the ring, between the diagonals. Its second edge is the block's outside. */
function groundQuarter(ring: number, side: number): readonly OutlineEntry[] {
  const reach = side / 2;
  return [at(ring, -45), [reach, reach], [-reach, reach], at(ring, 45), hollow(ring)];
}

function patch(number: number, role: CompassStarRole, outline: readonly OutlineEntry[]): Patch {
  return { number, role, outline };
}

const at = (radius: number, degrees: number): Point => scale(fromUp(degrees), radius);
const bow = (radius: number): OutlineEntry => ({ arc: { radius, turn: 'anticlockwise' } });
const hollow = (radius: number): OutlineEntry => ({ arc: { radius, turn: 'clockwise' } });

/** Where the ray from `from` through `through`, both inside, leaves the circle about the centre. */
function whereLineLeavesCircle(from: Point, through: Point, radius: number): Point {
  const dx = through[0] - from[0];
  const dy = through[1] - from[1];
  const a = dx * dx + dy * dy;
  const b = from[0] * dx + from[1] * dy;
  const c = from[0] ** 2 + from[1] ** 2 - radius * radius;
  const t = (-b + Math.sqrt(b * b - a * c)) / a;
  return [from[0] + t * dx, from[1] + t * dy];
}
