/** Grids of squares halved or quartered into triangles. */
import type { Point } from '../../shape/point.ts';
import type { RoleSeed } from '../drawn-block.ts';
import { lengthIn } from '../measure.ts';
import type { Length } from '../quilt.ts';
import { oblong, type Piece } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormField, FormSpec } from './form-spec.ts';
import { squareRows } from './square-rows.ts';

export interface HalfSquaresForm {
  readonly kind: 'half-squares';
  readonly side: Length;
  readonly across: number;
  readonly lie?: 'alike' | 'zigzag' | 'windmill' | 'diamond';
}

export interface QuarterSquaresForm {
  readonly kind: 'quarter-squares';
  readonly side: Length;
  readonly across: number;
  readonly lie?: 'alike' | 'turned';
}

const FIELDS: readonly FormField[] = [
  { type: 'length', field: 'side', label: 'Side', hint: 'of the block, finished' },
  { type: 'count', field: 'across', label: 'Squares across', min: 1, max: 12 },
];

const ROLES: readonly RoleSeed[] = [
  { id: 'triangle-light', name: 'Triangles, light', facing: { to: 'upright' } },
  { id: 'triangle-dark', name: 'Triangles, dark', facing: { to: 'upright' } },
];

const TONES = { 'triangle-light': 'light', 'triangle-dark': 'dark' } as const;

export const halfSquares: FormSpec<HalfSquaresForm> = {
  kind: 'half-squares',
  title: 'Half-square triangles',
  about: 'a grid of squares, each halved into light and dark',
  fields: [
    ...FIELDS,
    {
      type: 'choice',
      field: 'lie',
      label: 'The squares lie',
      choices: [
        { value: 'alike', words: 'all alike' },
        { value: 'zigzag', words: 'in zigzags' },
        { value: 'windmill', words: 'as windmills' },
        { value: 'diamond', words: 'as diamonds' },
      ],
      usual: 'windmill',
    },
  ],
  tones: TONES,
  start: (unit) => ({ kind: 'half-squares', side: unit === 'in' ? 12 : 30, across: 4 }),
  roles: () => ROLES,
  faults: () => [],
  notes: ({ side, across }, unit) => [`Each square is ${reckoned(lengthIn(unit, side) / across, unit)}, finished.`],
  draw: ({ side, across, lie }, unit) =>
    squareRows(across, lengthIn(unit, side), (column, row, lowerLeft, size) =>
      halves(DARK_CORNERS[lie][row % 2]![column % 2]!, lowerLeft, size),
    ),
};

/** Where the dark triangle's right angle is, for even and odd rows and columns: 0 lower left, then anticlockwise. */
const DARK_CORNERS = {
  alike: [
    [1, 1],
    [1, 1],
  ],
  zigzag: [
    [1, 0],
    [1, 0],
  ],
  windmill: [
    [0, 3],
    [1, 2],
  ],
  diamond: [
    [1, 0],
    [2, 3],
  ],
} as const;

/** The half with the square's left side first, so that each piece of a row is sewn to the one before it. */
function halves(dark: 0 | 1 | 2 | 3, [x, y]: Point, size: number): readonly Piece[] {
  const corners = oblong(x, y, x + size, y + size);
  const half = (at: number): readonly Point[] => [corners[(at + 3) % 4]!, corners[at]!, corners[(at + 1) % 4]!];
  const pieces: readonly Piece[] = [
    ['triangle-dark', half(dark)],
    ['triangle-light', half((dark + 2) % 4)],
  ];
  return dark === 0 || dark === 3 ? pieces : [pieces[1]!, pieces[0]!];
}

export const quarterSquares: FormSpec<QuarterSquaresForm> = {
  kind: 'quarter-squares',
  title: 'Quarter-square triangles',
  about: 'a grid of squares, each quartered along both diagonals',
  fields: [
    ...FIELDS,
    {
      type: 'choice',
      field: 'lie',
      label: 'The squares lie',
      choices: [
        { value: 'alike', words: 'all alike' },
        { value: 'turned', words: 'turned in turn' },
      ],
      usual: 'turned',
    },
  ],
  tones: TONES,
  start: (unit) => ({ kind: 'quarter-squares', side: unit === 'in' ? 12 : 30, across: 3 }),
  roles: () => ROLES,
  faults: () => [],
  notes: ({ side, across }, unit) => [`Each square is ${reckoned(lengthIn(unit, side) / across, unit)}, finished.`],
  draw: ({ side, across, lie }, unit) =>
    squareRows(across, lengthIn(unit, side), (column, row, lowerLeft, size) =>
      quarters(lie === 'turned' && (column + row) % 2 === 1, lowerLeft, size),
    ),
};

/** Two pairs of neighbours: each is sewn along a short side, then the pairs along the diagonal. */
function quarters(turned: boolean, [x, y]: Point, size: number): readonly Piece[] {
  const corners = oblong(x, y, x + size, y + size);
  const middle: Point = [x + size / 2, y + size / 2];
  return [3, 0, 1, 2].map((k) => [
    (k % 2 === 0) !== turned ? 'triangle-dark' : 'triangle-light',
    [corners[k]!, corners[(k + 1) % 4]!, middle],
  ]);
}
