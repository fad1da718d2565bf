/**
 * The triangles that fill the edge of a quilt whose blocks stand on their corners: side triangles, whose long sides make
 * the edge, and half as large ones in the corners. Drawn where they lie in the quilt, so that upright is upright and edges keep to the grain.
 */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { lettered, numbered, type Piece } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';

export interface SettingTrianglesForm {
  readonly kind: 'setting-triangles';
  /** The side of the blocks. */
  readonly block: Length;
  /** Blocks in the widest row and in the tallest column. */
  readonly across: number;
  readonly down: number;
}

export const settingTriangles: FormSpec<SettingTrianglesForm> = {
  kind: 'setting-triangles',
  title: 'Setting triangles',
  about: 'side and corner triangles round blocks that stand on their corners',
  fields: [
    { type: 'length', field: 'block', label: 'Side of the blocks', hint: 'finished' },
    { type: 'count', field: 'across', label: 'Blocks across', hint: 'along the upper edge', min: 1, max: 20 },
    { type: 'count', field: 'down', label: 'Blocks down', hint: 'along the left edge', min: 1, max: 20 },
  ],
  tones: { setting: 'ground' },
  start: (unit) => ({ kind: 'setting-triangles', block: unit === 'in' ? 12 : 30, across: 2, down: 2 }),
  roles: () => [{ id: 'setting', name: 'Setting triangles', facing: { to: 'upright' } }],
  faults: () => [],
  frame: ({ block, across, down }, unit) => {
    const diagonal = lengthIn(unit, block) * Math.SQRT2;
    return { width: across * diagonal, length: down * diagonal };
  },
  notes: ({ block, across, down }, unit) => {
    const side = lengthIn(unit, block);
    const sides = 2 * (across + down - 2);
    const blocks = across * down + (across - 1) * (down - 1);
    const up = (inches: number): string => reckoned(Math.ceil(inches * 8 - 0.02) / 8, 'in');
    const rule = `The usual rule, with quarter-inch seams: squares of ${up(side * Math.SQRT2 + 1.25)} cut twice, and of ${up(side / Math.SQRT2 + 0.875)} cut once.`;
    return [
      `${sides === 0 ? 'No' : sides} side triangles, long side ${reckoned(side * Math.SQRT2, unit)}; four corners, short sides ${reckoned(side / Math.SQRT2, unit)}; finished.`,
      `They go round ${blocks === 1 ? 'one block' : `${blocks} blocks`} and make ${reckoned(across * side * Math.SQRT2, unit)} by ${reckoned(down * side * Math.SQRT2, unit)}.`,
      ...(unit === 'in' ? [rule] : []),
    ];
  },
  draw,
};

function draw({ block, across, down }: SettingTrianglesForm, unit: LengthUnit): readonly Unit[] {
  const diagonal = lengthIn(unit, block) * Math.SQRT2;
  const [right, top] = [(across * diagonal) / 2, (down * diagonal) / 2];
  const half = diagonal / 2;
  const inside = (count: number): readonly number[] =>
    Array.from({ length: count - 1 }, (_, k) => (k + 1 - count / 2) * diagonal);
  const upper = inside(across).map(
    (x): Piece => [
      'setting',
      [
        [x, top - half],
        [x + half, top],
        [x - half, top],
      ],
    ],
  );
  const rightHand = inside(down).map(
    (y): Piece => [
      'setting',
      [
        [right - half, y],
        [right, y - half],
        [right, y + half],
      ],
    ],
  );
  const corners: readonly Piece[] = [
    [
      'setting',
      [
        [right - half, top],
        [right, top - half],
        [right, top],
      ],
    ],
    [
      'setting',
      [
        [-right, top - half],
        [-right + half, top],
        [-right, top],
      ],
    ],
  ];
  const pair = (name: string, axis: number, pieces: readonly Piece[]): readonly Omit<Unit, 'id'>[] =>
    pieces.length === 0 ? [] : [{ name, paper: false, repeat: { count: 2 }, axis, patches: numbered(pieces) }];
  return lettered([
    ...pair('Upper and lower edge', 0, upper),
    ...pair('Sides', -90, rightHand),
    ...pair('Corners', 0, corners),
  ]);
}
