/** A ring of wedges about a disc or a hole, its outer edge curved, flat or pointed, on a square ground or alone. */
import { moveOutline, type Outline } from '../../shape/outline.ts';
import { turn } from '../../shape/point.ts';
import type { RoleSeed } from '../drawn-block.ts';
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { at, bow, CENTRE, hollow, lettered, numbered, type Piece } from './drawing.ts';
import { growing, reckoned } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';
import { sharedFault, sharing, sharingPapers, togetherFault } from './in-row.ts';
import { discUnit, GROUND, groundRound, groundUnit, MIDDLE } from './rounds.ts';

export interface WedgeRingForm {
  readonly kind: 'wedge-ring';
  readonly wedges: number;
  /** Radius of the inner edge, an arc; 0 where the wedges meet in the centre. */
  readonly inner: Length;
  /** Radius of what lies farthest out: the arc, the corners of flat edges, the tips of points. */
  readonly outer: Length;
  readonly edge?: 'curved' | 'flat' | 'pointed';
  /** How far points stand out beyond where neighbours part. */
  readonly tip?: Length;
  /** So many roles take turns round the ring. */
  readonly inTurn?: number;
  /** How many are pieced on one foundation; 1: each is sewn by itself, without paper. */
  readonly together?: number;
  /** Whether a disc fills the middle. */
  readonly middle?: boolean;
  /** Whether the ring lies on a square ground. */
  readonly ground?: boolean;
  readonly side: Length;
}
type Filled = Required<WedgeRingForm>;

export const wedgeRing: FormSpec<WedgeRingForm> = {
  kind: 'wedge-ring',
  title: 'Ring of wedges',
  about: 'wedges side by side all the way round, as in a plate or a dial',
  fields: [
    { type: 'count', field: 'wedges', label: 'Wedges', min: 3, max: 120 },
    {
      type: 'count',
      field: 'inTurn',
      label: 'Roles in turn',
      hint: 'how many cloths follow each other round',
      min: 1,
      max: 12,
      usual: 1,
    },
    {
      type: 'count',
      field: 'together',
      label: 'Wedges on one paper',
      hint: '1: sewn without paper',
      min: 1,
      max: 60,
      usual: 1,
    },
    {
      type: 'length',
      field: 'inner',
      label: 'Inner edge',
      hint: 'from the centre; 0: the wedges meet there',
      zero: true,
    },
    { type: 'length', field: 'outer', label: 'Outer edge', hint: 'from the centre to what lies farthest out' },
    {
      type: 'choice',
      field: 'edge',
      label: 'Shape of the outer edge',
      choices: [
        { value: 'curved', words: 'curved' },
        { value: 'flat', words: 'flat' },
        { value: 'pointed', words: 'pointed' },
      ],
      usual: 'curved',
    },
    {
      type: 'length',
      field: 'tip',
      label: 'Points stand out',
      hint: 'beyond where neighbours part',
      usual: '1 in',
      shown: (form: Filled) => form.edge === 'pointed',
    },
    { type: 'switch', field: 'middle', label: 'A disc in the middle', usual: true, shown: hasMiddle },
    { type: 'switch', field: 'ground', label: 'On a square ground', usual: true },
    {
      type: 'length',
      field: 'side',
      label: 'Side',
      hint: 'of the square block, finished',
      shown: ({ ground }: Filled) => ground,
    },
  ],
  tones: {
    wedge: 'bright',
    'wedge-1': 'bright',
    'wedge-2': 'light',
    'wedge-3': 'dark',
    middle: 'dark',
    ground: 'ground',
  },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'wedge-ring', wedges: 20, inner: 2, outer: 8, side: 18 }
      : { kind: 'wedge-ring', wedges: 20, inner: 5, outer: 20, side: 46 },
  roles: (form) => [
    ...wedgeRoles(form),
    ...(form.middle && hasMiddle(form) ? [MIDDLE] : []),
    ...(form.ground ? [GROUND] : []),
  ],
  follow: ({ wedges, inTurn, together }, changed) => {
    if (changed !== 'wedges' && changed !== 'inTurn') {
      return {};
    }
    const roles = sharing(inTurn, wedges);
    // A paper holds whole turns of the roles, so that all papers are alike.
    const turns = sharingPapers(Math.max(1, Math.floor(together / roles)), wedges / roles, (360 * roles) / wedges);
    return { inTurn: roles, together: together === 1 ? 1 : roles * turns };
  },
  faults,
  notes: ({ wedges, outer, edge }, unit) => {
    const radius = lengthIn(unit, outer);
    const chord = 2 * radius * Math.sin(Math.PI / wedges);
    const arc = (2 * Math.PI * radius) / wedges;
    const degrees = `Each wedge takes ${Math.round((360 / wedges) * 100) / 100}°.`;
    return edge === 'curved'
      ? [degrees, `Along its outer edge it is ${reckoned(arc, unit)}, straight across ${reckoned(chord, unit)}.`]
      : edge === 'flat'
        ? [degrees, `Its outer edge is ${reckoned(chord, unit)} long.`]
        : [degrees];
  },
  draw,
};

function hasMiddle(form: Filled): boolean {
  return lengthIn('in', form.inner) > 0;
}

function wedgeRoles({ inTurn }: Filled): readonly RoleSeed[] {
  const facing: RoleSeed['facing'] = { to: 'outward', from: 'middle' };
  return inTurn === 1
    ? [{ id: 'wedge', name: 'Wedges', facing }]
    : Array.from({ length: inTurn }, (_, k) => ({ id: `wedge-${k + 1}`, name: `Wedges ${k + 1}`, facing }));
}

function faults(form: Filled, unit: LengthUnit): readonly FormFault[] {
  const { wedges, inTurn, together, edge, ground } = form;
  const [inner, outer, tip] = [form.inner, form.outer, form.tip].map((each) => lengthIn(unit, each)) as [
    number,
    number,
    number,
  ];
  const order = growing(form, unit, ['inner', 'outer', ...(ground ? ['half side'] : [])]);
  const least = inner / Math.cos(Math.PI / wedges);
  return [
    ...order,
    ...sharedFault('inTurn', inTurn, wedges, 'wedges'),
    ...(together === 1 ? [] : papersFault(form)),
    ...(order.length === 0 && edge === 'flat' && outer <= least
      ? [
          {
            field: 'outer',
            message: `expected more than ${reckoned(least, unit)}, so that the flat edges clear the {inner}; found ${reckoned(outer, unit)}`,
          },
        ]
      : []),
    ...(order.length === 0 && edge === 'pointed' && tip >= outer - inner
      ? [
          {
            field: 'tip',
            message: `expected less than ${reckoned(outer - inner, unit)}, the length of a wedge; found ${reckoned(tip, unit)}`,
          },
        ]
      : []),
  ];
}

/** All papers are alike: each holds whole turns of the roles, and the ring whole papers. */
function papersFault({ wedges, inTurn, together }: Filled): readonly FormFault[] {
  const shared = sharedFault('together', together, wedges, 'wedges');
  if (shared.length > 0) {
    return shared;
  }
  return together % inTurn === 0
    ? togetherFault(together, 360 / wedges)
    : [
        {
          field: 'together',
          message: `expected 1, or a multiple of {inTurn}, which is ${inTurn}, so that all papers are alike; found ${together}`,
        },
      ];
}

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const { wedges, together, edge } = form;
  const [inner, outer, side] = [form.inner, form.outer, form.side].map((each) => lengthIn(unit, each)) as [
    number,
    number,
    number,
  ];
  const half = 180 / wedges;
  const shoulder = edge === 'pointed' ? outer - lengthIn(unit, form.tip) : outer;
  const outside = { curved: [bow(outer)], flat: [], pointed: [at(outer, 0)] }[edge];
  const outline: Outline = [
    ...(inner === 0 ? [CENTRE] : [at(inner, -half)]),
    at(shoulder, -half),
    ...outside,
    at(shoulder, half),
    ...(inner === 0 ? [] : [at(inner, half), hollow(inner)]),
  ];
  const corners = Array.from({ length: wedges }, (_, k) => (360 * k) / wedges).flatMap((turn) => [
    at(shoulder, turn - half),
    ...(edge === 'pointed' ? [at(outer, turn)] : []),
  ]);
  return lettered([
    ...(together > 1 ? [paperUnit(form, outline)] : looseUnits(form, outline)),
    ...(form.middle && inner > 0 ? [discUnit(inner)] : []),
    ...(form.ground ? (edge === 'curved' ? [groundUnit(outer, side)] : groundRound(corners, wedges, side)) : []),
  ]);
}

/** A wedge of each role, sewn to its neighbours by itself. */
function looseUnits(form: Filled, outline: Outline): readonly Omit<Unit, 'id'>[] {
  const { wedges, inTurn } = form;
  return wedgeRoles(form).map(({ id, name }, k) => ({
    name,
    paper: false,
    repeat: { count: wedges / inTurn, ...(k === 0 ? {} : { from: (360 * k) / wedges }) },
    axis: 0,
    patches: numbered([[id, outline]]),
  }));
}

/** Several wedges on one foundation, from right to left, each along a straight side of the one before it. */
function paperUnit(form: Filled, outline: Outline): Omit<Unit, 'id'> {
  const { wedges, together } = form;
  const roles = wedgeRoles(form);
  // Wedges stand where they would without paper: one of them up.
  const first = (-360 * Math.floor(together / 2)) / wedges;
  const pieces = Array.from({ length: together }, (_, k): Piece => {
    const degrees = first + (360 * k) / wedges;
    return [roles[k % roles.length]!.id, moveOutline(outline, (corner) => turn(corner, degrees))];
  });
  const axis = first + (180 * (together - 1)) / wedges;
  return { name: 'Wedges', paper: true, repeat: { count: wedges / together }, axis, patches: numbered(pieces) };
}
