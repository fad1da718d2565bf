/** A star of eight 45° diamonds that meet in the centre, in a square: whole, or each of rows of small diamonds. */
import { add, type Point, scale } from '../../shape/point.ts';
import type { RoleSeed } from '../drawn-block.ts';
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { at, CENTRE, lettered, numbered, type Piece } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';

export interface DiamondStarForm {
  readonly kind: 'diamond-star';
  readonly side: Length;
  /** Rows of small diamonds in each of the eight; 1: each is whole. */
  readonly rows?: number;
  /** Of whole diamonds: whether two cloths take turns. */
  readonly inTurn?: boolean;
  /** Of whole diamonds: corner squares and side triangles set in whole, or halved so that all seams are straight. */
  readonly ground?: 'whole' | 'halved';
}
type Filled = Required<DiamondStarForm>;

const isWhole = ({ rows }: Filled): boolean => rows === 1;

export const diamondStar: FormSpec<DiamondStarForm> = {
  kind: 'diamond-star',
  title: 'Diamond star',
  about: 'eight points of 45° diamonds, whole or in rows of small ones',
  fields: [
    { type: 'length', field: 'side', label: 'Side', hint: 'of the square block, finished' },
    {
      type: 'count',
      field: 'rows',
      label: 'Rows in each diamond',
      hint: '1: the eight diamonds are whole',
      min: 1,
      max: 9,
      usual: 1,
    },
    { type: 'switch', field: 'inTurn', label: 'Two cloths take turns', usual: true, shown: isWhole },
    {
      type: 'choice',
      field: 'ground',
      label: 'Corners and sides',
      hint: 'halved, the star is eight foundations and no seam is set in',
      choices: [
        { value: 'whole', words: 'set in whole' },
        { value: 'halved', words: 'halved, on foundations' },
      ],
      usual: 'halved',
      shown: isWhole,
    },
  ],
  tones: {
    star: 'bright',
    'star-1': 'bright',
    'star-2': 'dark',
    'star-3': 'light',
    'star-5': 'dark',
    'star-6': 'light',
    'star-ground': 'ground',
  },
  start: (unit) => ({ kind: 'diamond-star', side: unit === 'in' ? 12 : 30 }),
  roles: (form) => [...starRoles(form), { id: 'star-ground', name: 'Ground of the star', facing: { to: 'upright' } }],
  faults: () => [],
  notes: ({ side, rows }, unit) => [
    `Each ${rows === 1 ? '' : 'small '}diamond’s edge is ${reckoned(diamondEdge(lengthIn(unit, side)) / rows, unit)}.`,
  ],
  draw,
};

/** A side is two diamond edges, along the corners' squares, and between them one across a right angle of two. */
const diamondEdge = (side: number): number => side / (2 + Math.SQRT2);

function starRoles({ rows, inTurn }: Filled): readonly RoleSeed[] {
  const facing: RoleSeed['facing'] = { to: 'outward', from: 'axis' };
  if (rows > 1) {
    return Array.from({ length: 2 * rows - 1 }, (_, k) => ({
      id: `star-${k + 1}`,
      name: `Star, round ${k + 1}`,
      facing,
    }));
  }
  return inTurn
    ? [
        { id: 'star-1', name: 'Star, first diamonds', facing },
        { id: 'star-2', name: 'Star, second diamonds', facing },
      ]
    : [{ id: 'star', name: 'Star', facing }];
}

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const { rows, inTurn, ground } = form;
  const side = lengthIn(unit, form.side);
  const edge = diamondEdge(side);
  const common = { paper: false, axis: 22.5, repeat: { count: 8 } } as const;
  if (rows > 1) {
    const units = Array.from({ length: rows }, (_, i) => ({
      ...common,
      name: `Row ${i + 1}`,
      patches: numbered(Array.from({ length: rows }, (_, j) => smallDiamond(edge / rows, i, j))),
    }));
    return lettered([...units, ...wholeGround(edge, side)]);
  }
  const [first, second = first] = starRoles(form).map(({ id }) => id) as [string, string?];
  if (ground === 'whole') {
    const repeat = { count: inTurn ? 4 : 8 };
    const diamond = (role: string, more: number): Omit<Unit, 'id'> => ({
      ...common,
      name: 'Diamond',
      repeat: { ...repeat, ...(more === 0 ? {} : { from: more }) },
      patches: numbered([[role, diamondAt(edge)]]),
    });
    return lettered([diamond(first, 0), ...(inTurn ? [diamond(second, 45)] : []), ...wholeGround(edge, side)]);
  }
  const eighth = (role: string, repeat: Unit['repeat']): Omit<Unit, 'id'> => ({
    name: 'Eighth',
    paper: true,
    axis: 22.5,
    repeat,
    patches: numbered(eighthPieces(role, edge, side)),
  });
  return lettered(
    inTurn
      ? [eighth(first, { count: 4 }), mirroredEighth(second, edge, side)]
      : [eighth(first, { count: 4, mirrored: 'also' })],
  );
}

/** The diamond to the left of up, its corners anticlockwise from the centre. */
const diamondAt = (edge: number): readonly Point[] => [
  CENTRE,
  at(edge, 0),
  add(at(edge, 0), at(edge, 45)),
  at(edge, 45),
];

/** The small diamond in row i, counted along up, and place j, counted along the diagonal; its role tells how far out it is. */
function smallDiamond(edge: number, i: number, j: number): Piece {
  const place = add(scale(at(edge, 0), i), scale(at(edge, 45), j));
  return [`star-${i + j + 1}`, diamondAt(edge).map((corner) => add(place, corner))];
}

/** The diamond, then half a side triangle and half a corner square, each along one of its outer edges. */
function eighthPieces(role: string, edge: number, side: number): readonly Piece[] {
  const [, up, tip, slant] = diamondAt(edge) as [Point, Point, Point, Point];
  const half = side / 2;
  return [
    [role, diamondAt(edge)],
    ['star-ground', [up, [0, half], tip]],
    ['star-ground', [tip, [-half, half], slant]],
  ];
}

/** The eighth to the right of up. Its own unit, since its diamond has another role. */
function mirroredEighth(role: string, edge: number, side: number): Omit<Unit, 'id'> {
  const flip = ([x, y]: Point): Point => [-x + 0, y];
  const pieces = eighthPieces(role, edge, side).map(
    ([each, outline]) => [each, (outline as readonly Point[]).map(flip).reverse()] as const,
  );
  return { name: 'Eighth, other hand', paper: true, axis: -22.5, repeat: { count: 4 }, patches: numbered(pieces) };
}

/** Side triangles and corner squares, set in between the diamonds' tips. */
function wholeGround(edge: number, side: number): readonly Omit<Unit, 'id'>[] {
  const [, up, left, slant] = diamondAt(edge) as [Point, Point, Point, Point];
  const half = side / 2;
  const right: Point = [-left[0], left[1]];
  const common = { paper: false, repeat: { count: 4 } } as const;
  return [
    { ...common, name: 'Side', axis: 0, patches: numbered([['star-ground', [up, right, left]]]) },
    {
      ...common,
      name: 'Corner',
      axis: 45,
      patches: numbered([['star-ground', [slant, left, [-half, half], [-left[1], -left[0]]]]]),
    },
  ];
}
