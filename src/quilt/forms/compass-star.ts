/**
 * A compass star in a ring of wedges on a square ground. The star is cut into as many sectors as it has points, each a
 * foundation of its own: A holds a long point and the ground either side of it, B a short one. The ring (C) and the ground
 * of the square (D) are sewn without paper, because curved seams are not for foundations.
 */
import type { OutlineEntry } from '../../shape/outline.ts';
import type { Point } from '../../shape/point.ts';
import type { RoleSeed } from '../drawn-block.ts';
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Patch, Unit } from '../quilt.ts';
import { at, bow, CENTRE, hollow, patch, whereLineLeavesCircle } from './drawing.ts';
import { growing } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';

/** Radii from the centre. */
export interface CompassStarForm {
  readonly kind: 'compass-star';
  /** 8, 16 or 32 in the trade; any even number from 4 to 64. Long and short points take turns. */
  readonly points: number;
  /** Where neighbouring points meet. */
  readonly inner: Length;
  /** The long points' tips: half the star's width. */
  readonly outer: Length;
  /** The outer edge of the ring. */
  readonly ring: Length;
  readonly wedges: number;
  /** The side of the square block. */
  readonly side: Length;
}

export const compassStar: FormSpec<CompassStarForm> = {
  kind: 'compass-star',
  title: 'Compass star',
  about: 'long and short split points in a ring of wedges, on a square ground',
  fields: [
    { type: 'count', field: 'points', label: 'Points of the star', hint: 'an even number', min: 4, max: 64 },
    { type: 'length', field: 'inner', label: 'Valleys', hint: 'from the centre to where points meet' },
    { type: 'length', field: 'outer', label: 'Tips', hint: 'from the centre to the long points’ tips' },
    { type: 'count', field: 'wedges', label: 'Wedges in the ring', min: 3, max: 360 },
    { type: 'length', field: 'ring', label: 'Ring', hint: 'from the centre to its outer edge' },
    { type: 'length', field: 'side', label: 'Side', hint: 'of the square block, finished' },
  ],
  start: (unit) =>
    unit === 'in'
      ? { kind: 'compass-star', points: 16, inner: 3, outer: 7, ring: 8.5, wedges: 32, side: 18 }
      : { kind: 'compass-star', points: 16, inner: 8, outer: 18, ring: 22, wedges: 32, side: 46 },
  roles: () => ROLES,
  faults: (form, unit): readonly FormFault[] => [
    ...(form.points % 2 === 0
      ? []
      : [{ field: 'points', message: `expected an even number from 4 to 64; found ${form.points}` }]),
    ...growing(form, unit, ['inner', 'outer', 'ring', 'half side']),
  ],
  draw: drawCompassStar,
};

const ROLES: readonly RoleSeed[] = [
  { id: 'long-light', name: 'Long points, light', facing: { to: 'free' } },
  { id: 'long-dark', name: 'Long points, dark', facing: { to: 'free' } },
  { id: 'short-light', name: 'Short points, light', facing: { to: 'outward', from: 'axis' } },
  { id: 'short-dark', name: 'Short points, dark', facing: { to: 'outward', from: 'axis' } },
  { id: 'haze', name: 'Ground between the points', facing: { to: 'free' } },
  { id: 'hours', name: 'Ring of hours', facing: { to: 'outward', from: 'middle' } },
  { id: 'sky', name: 'Ground round the ring', facing: { to: 'outward', from: 'axis' } },
];

/** How far from the valleys to the long tips the short tips reach. */
const SHORT_REACH = 0.62;

/** The radius of the short points' tips, given those of the valleys and of the long tips. */
export function shortTipRadius(inner: number, outer: number): number {
  return inner + SHORT_REACH * (outer - inner);
}

function drawCompassStar(form: CompassStarForm, unit: LengthUnit): readonly Unit[] {
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
  const tip: Point = [0, outer];
  const right = at(inner, -half);
  const left = at(inner, half);
  return [
    patch(1, 'long-light', [CENTRE, right, tip]),
    patch(2, 'long-dark', [CENTRE, tip, left]),
    patch(3, 'haze', [right, at(outer, -half), bow(outer), tip]),
    patch(4, 'haze', [left, tip, bow(outer), at(outer, half)]),
  ];
}

/**
 * As the long point, but the tip does not reach the arc. The ground to the left comes last, so its seam runs straight on past
 * the tip to the arc and the ground to the right ends on it: the two are not each other's mirror image.
 */
function shortPoint(inner: number, outer: number, half: number): readonly Patch[] {
  const tip: Point = [0, shortTipRadius(inner, outer)];
  const right = at(inner, -half);
  const left = at(inner, half);
  const seamEnd = whereLineLeavesCircle(left, tip, outer);
  return [
    patch(1, 'short-light', [CENTRE, right, tip]),
    patch(2, 'short-dark', [CENTRE, tip, left]),
    patch(3, 'haze', [right, at(outer, -half), bow(outer), seamEnd, tip]),
    patch(4, 'haze', [left, seamEnd, bow(outer), at(outer, half)]),
  ];
}

/** One wedge of the ring, its middle up: two straight sides, the arc outside, the hollow arc inside. */
export function ringWedge(inner: number, outer: number, half: number): readonly OutlineEntry[] {
  return [at(inner, -half), at(outer, -half), bow(outer), at(outer, half), at(inner, half), hollow(inner)];
}

/** The quarter of the square's ground above the ring, between the diagonals. Its second edge is the block's outside. */
export function groundQuarter(ring: number, side: number): readonly OutlineEntry[] {
  const reach = side / 2;
  return [at(ring, -45), [reach, reach], [-reach, reach], at(ring, 45), hollow(ring)];
}
