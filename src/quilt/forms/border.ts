/** A border of four whole strips: its corners butted, mitred or with posts. Long ones that must be joined are a joined length instead. */
import type { Point } from '../../shape/point.ts';
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { lettered, numbered, oblong } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';

export interface BorderForm {
  readonly kind: 'border';
  /** What it goes round. */
  readonly across: Length;
  readonly down: Length;
  readonly width: Length;
  readonly corners?: 'butted' | 'mitred' | 'posts';
}
type Filled = Required<BorderForm>;

export const border: FormSpec<BorderForm> = {
  kind: 'border',
  title: 'Border',
  about: 'four whole strips round the quilt, with butted or mitred corners or posts',
  fields: [
    { type: 'length', field: 'across', label: 'Inside, across', hint: 'what it goes round, finished' },
    { type: 'length', field: 'down', label: 'Inside, down', hint: 'what it goes round, finished' },
    { type: 'length', field: 'width', label: 'Width of the border', hint: 'finished' },
    {
      type: 'choice',
      field: 'corners',
      label: 'Corners',
      choices: [
        { value: 'butted', words: 'butted' },
        { value: 'mitred', words: 'mitred' },
        { value: 'posts', words: 'with posts' },
      ],
      usual: 'butted',
    },
  ],
  tones: { border: 'dark', 'border-post': 'bright' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'border', across: 30, down: 30, width: 3 }
      : { kind: 'border', across: 76, down: 76, width: 8 },
  roles: ({ corners }) => [
    { id: 'border', name: 'Border', facing: { to: 'free' } },
    ...(corners === 'posts'
      ? [{ id: 'border-post', name: 'Posts of the border', facing: { to: 'upright' } } as const]
      : []),
  ],
  faults: () => [],
  frame,
  notes: (form, unit) => {
    const { width, length } = frame(form, unit);
    const across = lengthIn(unit, form.across);
    const down = lengthIn(unit, form.down);
    const longest = {
      butted: Math.max(width, down),
      mitred: Math.max(width, length),
      posts: Math.max(across, down),
    }[form.corners];
    return [
      `With it the quilt is ${reckoned(width, unit)} by ${reckoned(length, unit)}, finished.`,
      `Its longest strip is ${reckoned(longest, unit)}; where the cloth has no room for that in one piece, add a border as a joined length instead.`,
    ];
  },
  draw,
};

function frame(form: Filled, unit: LengthUnit): { readonly width: number; readonly length: number } {
  const more = 2 * lengthIn(unit, form.width);
  return { width: lengthIn(unit, form.across) + more, length: lengthIn(unit, form.down) + more };
}

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const [x, y] = [lengthIn(unit, form.across) / 2, lengthIn(unit, form.down) / 2];
  const width = lengthIn(unit, form.width);
  const [right, top] = [x + width, y + width];
  const pair = (
    name: string,
    axis: number,
    role: string,
    ...outlines: readonly (readonly Point[])[]
  ): Omit<Unit, 'id'> => ({
    name,
    paper: false,
    repeat: { count: 2 },
    axis,
    patches: numbered(outlines.map((outline) => [role, outline] as const)),
  });
  const sides = (outline: readonly Point[]) => pair('Sides', -90, 'border', outline);
  const ends = (outline: readonly Point[]) => pair('Top and bottom', 0, 'border', outline);
  switch (form.corners) {
    case 'butted':
      return lettered([sides(oblong(x, -y, right, y)), ends(oblong(-right, y, right, top))]);
    case 'mitred':
      return lettered([
        sides([
          [x, -y],
          [right, -top],
          [right, top],
          [x, y],
        ]),
        ends([
          [-x, y],
          [x, y],
          [right, top],
          [-right, top],
        ]),
      ]);
    case 'posts':
      return lettered([
        sides(oblong(x, -y, right, y)),
        ends(oblong(-x, y, x, top)),
        pair('Posts', 0, 'border-post', oblong(x, y, right, top), oblong(-right, y, -x, top)),
      ]);
  }
}
