/** Squares of two cloths in turn: three by three, or another number. */
import { lengthIn } from '../measure.ts';
import type { Length } from '../quilt.ts';
import { oblong } from './drawing.ts';
import { reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';
import { squareRows } from './square-rows.ts';

export interface NinePatchForm {
  readonly kind: 'nine-patch';
  readonly side: Length;
  readonly across?: number;
}

export const ninePatch: FormSpec<NinePatchForm> = {
  kind: 'nine-patch',
  title: 'Nine-patch',
  about: 'squares of two cloths in turn, three by three or another number',
  fields: [
    { type: 'length', field: 'side', label: 'Side', hint: 'of the block, finished' },
    { type: 'count', field: 'across', label: 'Squares across', min: 2, max: 15, usual: 3 },
  ],
  tones: { 'nine-first': 'dark', 'nine-second': 'light' },
  start: (unit) => ({ kind: 'nine-patch', side: unit === 'in' ? 9 : 24 }),
  roles: () => [
    { id: 'nine-first', name: 'Squares of the corners', facing: { to: 'upright' } },
    { id: 'nine-second', name: 'Squares between', facing: { to: 'upright' } },
  ],
  faults: () => [],
  notes: ({ side, across }, unit) => [`Each square is ${reckoned(lengthIn(unit, side) / across, unit)}, finished.`],
  draw: ({ side, across }, unit) =>
    squareRows(across, lengthIn(unit, side), (column, row, [x, y], size) => [
      [(column + row) % 2 === 0 ? 'nine-first' : 'nine-second', oblong(x, y, x + size, y + size)],
    ]),
};
