/**
 * What an arc of a ring has round it where it makes a square block: the quarter disc inside, the ground outside. The arc's
 * centre, the block's lower left corner, is the centre of the drawing, so that outward is away from it.
 */
import type { OutlineEntry } from '../../shape/outline.ts';
import type { RoleSeed } from '../drawn-block.ts';
import type { Unit } from '../quilt.ts';
import { at, bow, CENTRE, hollow, numbered } from './drawing.ts';
import type { FormField } from './form-spec.ts';

/** Of a form with an arc. */
export interface ArcSetting {
  readonly square: boolean;
  readonly span: number;
}

/** Whether it is a square block, and if not, how far round the arc goes. */
export const settingFields: readonly FormField[] = [
  {
    type: 'switch',
    field: 'square',
    label: 'In a square block',
    hint: 'a quarter of the ring, with the ground inside and outside it',
    usual: true,
  },
  {
    type: 'angle',
    field: 'span',
    label: 'The arc goes round',
    hint: 'degrees',
    min: 10,
    max: 170,
    usual: 90,
    shown: (form) => !(form as unknown as ArcSetting).square,
  },
  {
    type: 'length',
    field: 'side',
    label: 'Side',
    hint: 'of the square block, finished',
    shown: (form) => (form as unknown as ArcSetting).square,
  },
];

export const CORNER: RoleSeed = { id: 'corner', name: 'Quarter disc', facing: { to: 'outward', from: 'middle' } };
export const QUARTER_GROUND: RoleSeed = {
  id: 'arc-ground',
  name: 'Ground outside the arc',
  facing: { to: 'outward', from: 'middle' },
};

/** From where to where the arc goes, degrees anticlockwise from up: a square's from right to up, another about up. */
export const arcEnds = ({ square, span }: ArcSetting): readonly [from: number, to: number] =>
  square ? [-90, 0] : [-span / 2, span / 2];

/** How far round it goes. */
export const spanOf = ({ square, span }: ArcSetting): number => (square ? 90 : span);

export function quarterUnits(inner: number, outer: number, side: number): readonly Omit<Unit, 'id'>[] {
  const pie: readonly OutlineEntry[] = [CENTRE, at(inner, -90), bow(inner), at(inner, 0)];
  const ground: readonly OutlineEntry[] = [
    at(outer, -90),
    [side, 0],
    [side, side],
    [0, side],
    at(outer, 0),
    hollow(outer),
  ];
  const unit = (name: string, role: string, outline: readonly OutlineEntry[]): Omit<Unit, 'id'> => ({
    name,
    paper: false,
    repeat: { count: 1 },
    patches: numbered([[role, outline]]),
  });
  return [unit('Quarter disc', 'corner', pie), unit('Ground', 'arc-ground', ground)];
}
