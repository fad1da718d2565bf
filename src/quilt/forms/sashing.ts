/** Sashing: strips between the rows and columns of blocks, with or without posts where they cross. Drawn where it lies in the quilt. */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { lettered, numbered, oblong, type Piece } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';

export interface SashingForm {
  readonly kind: 'sashing';
  /** The side of the blocks. */
  readonly block: Length;
  readonly width: Length;
  readonly across: number;
  readonly down: number;
  /**
   * Where strips cross: squares of another role, or the strips between the rows run through, each in one piece; 'joined': those are
   * left out, to be a joined length of the quilt.
   */
  readonly crossing?: 'posts' | 'through' | 'joined';
  /** Whether strips go round the outside too. */
  readonly outside?: boolean;
}
type Filled = Required<SashingForm>;

export const sashing: FormSpec<SashingForm> = {
  kind: 'sashing',
  title: 'Sashing',
  about: 'strips between the blocks, with posts where they cross or without',
  fields: [
    { type: 'length', field: 'block', label: 'Side of the blocks', hint: 'finished' },
    { type: 'length', field: 'width', label: 'Width of the strips', hint: 'finished' },
    { type: 'count', field: 'across', label: 'Blocks across', min: 1, max: 20 },
    { type: 'count', field: 'down', label: 'Blocks down', min: 1, max: 20 },
    {
      type: 'choice',
      field: 'crossing',
      label: 'Where strips cross',
      choices: [
        { value: 'posts', words: 'posts' },
        { value: 'through', words: 'those between the rows run through' },
        { value: 'joined', words: 'those between the rows are joined lengths' },
      ],
      usual: 'posts',
    },
    { type: 'switch', field: 'outside', label: 'Round the outside too', usual: true },
  ],
  tones: { sash: 'ground', post: 'dark' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'sashing', block: 12, width: 2, across: 2, down: 3 }
      : { kind: 'sashing', block: 30, width: 5, across: 2, down: 3 },
  roles: (form) => [
    { id: 'sash', name: 'Sashing', facing: { to: 'upright' } },
    ...(form.crossing === 'posts' && hasCrossings(form)
      ? [{ id: 'post', name: 'Posts', facing: { to: 'upright' } } as const]
      : []),
  ],
  faults: ({ across, down, outside, crossing }): readonly FormFault[] => {
    if (!outside && across === 1 && down === 1) {
      return [
        {
          field: 'across',
          message: 'expected more than one block, or strips round the outside; found one block by itself',
        },
      ];
    }
    return crossing === 'joined' && !outside && across === 1
      ? [
          {
            field: 'crossing',
            message: 'expected posts or strips that run through: one column has no others; found joined lengths',
          },
        ]
      : [];
  },
  frame: (form, unit) => {
    const [width, length] = sizes(form, unit);
    return { width, length };
  },
  notes: (form, unit) => {
    const [width, height] = sizes(form, unit);
    const strips = form.outside ? form.down + 1 : form.down - 1;
    const size = `Blocks and sashing make ${reckoned(width, unit)} by ${reckoned(height, unit)}, finished.`;
    return form.crossing === 'joined' && strips > 0
      ? [
          size,
          `Between the rows: ${strips === 1 ? 'one strip' : `${strips} strips`} of ${reckoned(width, unit)}, finished; have them as a joined length of the quilt.`,
        ]
      : [size];
  },
  draw,
};

const hasCrossings = ({ across, down, outside }: Filled): boolean => outside || (across > 1 && down > 1);

function sizes({ across, down, outside, ...form }: Filled, unit: LengthUnit): readonly [width: number, height: number] {
  const [block, width] = [lengthIn(unit, form.block), lengthIn(unit, form.width)];
  const more = outside ? 1 : -1;
  return [across * block + (across + more) * width, down * block + (down + more) * width];
}

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const { across, down, crossing, outside } = form;
  const [block, width] = [lengthIn(unit, form.block), lengthIn(unit, form.width)];
  const [wide, tall] = sizes(form, unit);
  const margin = outside ? width : 0;
  const pitch = block + width;
  /** Where blocks and strips begin, from the left or from below. */
  const blocksAt = (count: number, size: number): readonly number[] =>
    Array.from({ length: count }, (_, k) => margin - size / 2 + k * pitch);
  const stripsAt = (count: number, size: number): readonly number[] =>
    Array.from(
      { length: outside ? count + 1 : count - 1 },
      (_, k) => margin - size / 2 + (outside ? k - 1 : k) * pitch + block,
    );
  const upright = blocksAt(down, tall).flatMap((y) =>
    stripsAt(across, wide).map((x): Piece => ['sash', oblong(x, y, x + width, y + block)]),
  );
  const level = stripsAt(down, tall).flatMap((y) =>
    crossing === 'posts'
      ? blocksAt(across, wide).map((x): Piece => ['sash', oblong(x, y, x + block, y + width)])
      : [['sash', oblong(-wide / 2, y, wide / 2, y + width)] as Piece],
  );
  const crossed = stripsAt(down, tall).flatMap((y) =>
    stripsAt(across, wide).map((x): Piece => ['post', oblong(x, y, x + width, y + width)]),
  );
  const unitOf = (name: string, pieces: readonly Piece[]): readonly Omit<Unit, 'id'>[] =>
    pieces.length === 0 ? [] : [{ name, paper: false, repeat: { count: 1 }, axis: 0, patches: numbered(pieces) }];
  return lettered([
    ...unitOf('Strips beside the blocks', upright),
    ...(crossing === 'joined' ? [] : unitOf('Strips between the rows', level)),
    ...(crossing === 'posts' ? unitOf('Posts', crossed) : []),
  ]);
}
