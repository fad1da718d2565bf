/**
 * A compass star in a ring of wedges on a square ground. The star is cut into as many sectors as it has points, each a
 * foundation of its own: A holds a long point and the ground either side of it, B a short one. The ring (C) and the ground
 * of the square (D) are sewn without paper, because curved seams are not for foundations.
 */
import type { OutlineEntry } from '../../shape/outline.ts';
import type { Point } from '../../shape/point.ts';
import type { RoleSeed } from '../drawn-block.ts';
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { at, bow, CENTRE, hollow, lettered, numbered, type Piece, whereLineLeavesCircle } from './drawing.ts';
import { growing } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';
import { discUnit, groundQuarter, MIDDLE, ringWedge } from './rounds.ts';

/** Radii from the centre. */
export interface CompassStarForm {
  readonly kind: 'compass-star';
  /** 8, 16 or 32 in the trade; any number from 4 to 64, even where long and short points take turns. */
  readonly points: number;
  /** 2: long and short points take turns; 1: all are long. */
  readonly ranks?: number;
  /** Of short points: how far from the valleys to the long tips they reach, in percent. */
  readonly reach?: number;
  /** Whether each point is split into a light and a dark half. */
  readonly split?: boolean;
  /** A disc in the middle, on which the points stand; 0: they meet in the centre. */
  readonly disc?: Length;
  /** Where neighbouring points meet. */
  readonly inner: Length;
  /** The long points' tips: half the star's width. */
  readonly outer: Length;
  /** Whether a ring of wedges goes round the star. */
  readonly ringed?: boolean;
  /** The outer edge of the ring. */
  readonly ring: Length;
  readonly wedges: number;
  /** The side of the square block. */
  readonly side: Length;
}
type Filled = Required<CompassStarForm>;

const isRinged = ({ ringed }: Filled): boolean => ringed;

export const compassStar: FormSpec<CompassStarForm> = {
  kind: 'compass-star',
  title: 'Compass star',
  about: 'long and short points round a centre, in a ring of wedges',
  fields: [
    { type: 'count', field: 'points', label: 'Points of the star', hint: 'such as 8, 16 or 32', min: 4, max: 64 },
    {
      type: 'count',
      field: 'ranks',
      label: 'Ranks of points',
      hint: '2: long and short ones take turns',
      min: 1,
      max: 2,
      usual: 2,
    },
    {
      type: 'count',
      field: 'reach',
      label: 'Short points reach',
      hint: 'percent of the way from the valleys to the long tips',
      min: 10,
      max: 95,
      usual: 62,
      shown: ({ ranks }: Filled) => ranks === 2,
    },
    { type: 'switch', field: 'split', label: 'Points split into light and dark', usual: true },
    {
      type: 'length',
      field: 'disc',
      label: 'Disc in the middle',
      hint: 'from the centre to its edge; 0: the points meet there',
      zero: true,
      usual: 0,
    },
    { type: 'length', field: 'inner', label: 'Valleys', hint: 'from the centre to where points meet' },
    { type: 'length', field: 'outer', label: 'Tips', hint: 'from the centre to the long points’ tips' },
    { type: 'switch', field: 'ringed', label: 'A ring of wedges round the star', usual: true },
    { type: 'count', field: 'wedges', label: 'Wedges in the ring', min: 3, max: 360, shown: isRinged },
    { type: 'length', field: 'ring', label: 'Ring', hint: 'from the centre to its outer edge', shown: isRinged },
    { type: 'length', field: 'side', label: 'Side', hint: 'of the square block, finished' },
  ],
  tones: {
    'long-light': 'bright',
    'long-dark': 'dark',
    long: 'dark',
    'short-light': 'light',
    'short-dark': 'middling',
    short: 'bright',
    haze: 'ground',
    middle: 'bright',
    hours: 'middling',
    sky: 'dark',
  },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'compass-star', points: 16, inner: 2, outer: 7, ring: 8.5, wedges: 32, side: 18 }
      : { kind: 'compass-star', points: 16, inner: 5, outer: 18, ring: 22, wedges: 32, side: 46 },
  roles: ({ ranks, split, ringed, disc }) => [
    ...pointRoles('long', split),
    ...(ranks === 2 ? pointRoles('short', split) : []),
    { id: 'haze', name: 'Ground between the points', facing: { to: 'free' } },
    ...(ringed ? [HOURS] : []),
    ...(hasDisc(disc) ? [MIDDLE] : []),
    { id: 'sky', name: 'Ground round the ring', facing: { to: 'outward', from: 'axis' } },
  ],
  faults: (form, unit): readonly FormFault[] => [
    ...(form.ranks === 1 || form.points % 2 === 0
      ? []
      : [{ field: 'points', message: `expected an even number from 4 to 64; found ${form.points}` }]),
    ...growing(form, unit, [
      ...(hasDisc(form.disc) ? ['disc'] : []),
      'inner',
      'outer',
      ...(form.ringed ? ['ring'] : []),
      'half side',
    ]),
  ],
  notes: ({ points }) => [`Each point takes ${Math.round(36000 / points) / 100}°.`],
  draw,
};

const hasDisc = (disc: Length): boolean => lengthIn('in', disc) > 0;

const HOURS: RoleSeed = { id: 'hours', name: 'Ring of hours', facing: { to: 'outward', from: 'middle' } };

type Rank = 'long' | 'short';

function pointRoles(rank: Rank, split: boolean): readonly RoleSeed[] {
  const name = `${rank === 'long' ? 'Long' : 'Short'} points`;
  const facing: RoleSeed['facing'] = rank === 'long' ? { to: 'free' } : { to: 'outward', from: 'axis' };
  return split
    ? [
        { id: `${rank}-light`, name: `${name}, light`, facing },
        { id: `${rank}-dark`, name: `${name}, dark`, facing },
      ]
    : [{ id: rank, name, facing }];
}

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const { points, ranks, split, ringed, wedges } = form;
  const [inner, outer, side] = [form.inner, form.outer, form.side].map((each) => lengthIn(unit, each)) as [
    number,
    number,
    number,
  ];
  const disc = lengthIn(unit, form.disc);
  const ring = ringed ? lengthIn(unit, form.ring) : outer;
  const sector = 360 / points;
  const half = sector / 2;
  const short = inner + (form.reach / 100) * (outer - inner);
  return lettered([
    {
      name: 'Long point',
      paper: true,
      repeat: { count: points / ranks },
      axis: 0,
      patches: numbered([...point('long', split, disc, inner, outer, half), ...hazeOfLong(inner, outer, half)]),
    },
    ...(ranks === 1
      ? []
      : [
          {
            name: 'Short point',
            paper: true,
            repeat: { count: points / 2, from: sector, mirrored: 'alternate' } as const,
            axis: 0,
            patches: numbered([
              ...point('short', split, disc, inner, short, half),
              ...hazeOfShort(inner, short, outer, half),
            ]),
          },
        ]),
    ...(ringed
      ? [
          {
            name: 'Ring',
            paper: false,
            repeat: { count: wedges },
            axis: 0,
            patches: numbered([['hours', ringWedge(outer, ring, 180 / wedges)]]),
          },
        ]
      : []),
    ...(disc > 0 ? [discUnit(disc)] : []),
    {
      name: 'Ground',
      paper: false,
      repeat: { count: 4 },
      axis: 0,
      patches: numbered([['sky', groundQuarter(ring, side)]]),
    },
  ]);
}

/** A kite from the centre, or from a disc in the middle, to its tip; or its two halves. */
function point(
  rank: Rank,
  split: boolean,
  disc: number,
  inner: number,
  tipRadius: number,
  half: number,
): readonly Piece[] {
  const [right, tip, left] = [at(inner, -half), at(tipRadius, 0), at(inner, half)];
  /** From a foot at one angle round to one at another, where there is a disc; the outline's last edge is then its arc. */
  const onFoot = (from: number, to: number, ...rest: readonly Point[]): readonly OutlineEntry[] =>
    disc === 0 ? [CENTRE, ...rest] : [at(disc, from), ...rest, at(disc, to), hollow(disc)];
  return split
    ? [
        [`${rank}-light`, onFoot(-half, 0, right, tip)],
        [`${rank}-dark`, onFoot(0, half, tip, left)],
      ]
    : [[rank, onFoot(-half, half, right, tip, left)]];
}

/** The ground to the right and to the left of a long point, each along one of the kite's long edges. */
function hazeOfLong(inner: number, outer: number, half: number): readonly Piece[] {
  const [right, tip, left] = [at(inner, -half), at(outer, 0), at(inner, half)];
  return [
    ['haze', [right, at(outer, -half), bow(outer), tip]],
    ['haze', [left, tip, bow(outer), at(outer, half)]],
  ];
}

/**
 * As the long point's, but the tip does not reach the arc. The ground to the left comes last, so its seam runs straight on past
 * the tip to the arc and the ground to the right ends on it: the two are not each other's mirror image.
 */
function hazeOfShort(inner: number, tipRadius: number, outer: number, half: number): readonly Piece[] {
  const [right, tip, left]: readonly Point[] = [at(inner, -half), at(tipRadius, 0), at(inner, half)];
  const seamEnd = whereLineLeavesCircle(left!, tip!, outer);
  return [
    ['haze', [right!, at(outer, -half), bow(outer), seamEnd, tip!]],
    ['haze', [left!, seamEnd, bow(outer), at(outer, half)]],
  ];
}
