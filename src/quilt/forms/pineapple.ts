/** A pineapple: logs along the sides and across the corners of a square in turn, on one foundation. */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { growing, reckoned } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';
import { type Log, logPatches } from './logs.ts';

export interface PineappleForm {
  readonly kind: 'pineapple';
  /** Sides of the block and of the square in the middle. */
  readonly side: Length;
  readonly centre: Length;
  /** How many times logs go round, along the sides and across the corners. */
  readonly rounds: number;
}
type Filled = Required<PineappleForm>;

export const pineapple: FormSpec<PineappleForm> = {
  kind: 'pineapple',
  title: 'Pineapple',
  about: 'logs along the sides and across the corners in turn',
  fields: [
    { type: 'count', field: 'rounds', label: 'Rounds of logs', min: 2, max: 12 },
    { type: 'length', field: 'centre', label: 'Middle square', hint: 'its side, finished' },
    { type: 'length', field: 'side', label: 'Side', hint: 'of the block, finished' },
  ],
  tones: { 'pine-centre': 'bright', 'pine-straight': 'light', 'pine-corner': 'dark' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'pineapple', rounds: 6, centre: 3, side: 12 }
      : { kind: 'pineapple', rounds: 6, centre: 7, side: 31 },
  roles: () => [
    { id: 'pine-centre', name: 'Middle square', facing: { to: 'upright' } },
    { id: 'pine-straight', name: 'Logs along the sides', facing: { to: 'free' } },
    { id: 'pine-corner', name: 'Logs across the corners', facing: { to: 'free' } },
  ],
  faults(form, unit): readonly FormFault[] {
    const order = growing(form, unit, ['centre', 'side']);
    const [centre, width] = [lengthIn(unit, form.centre), logWidth(form, unit)];
    // A first log narrows on both sides by its own width, from the middle square's side.
    return order.length > 0 || width < centre / 2
      ? order
      : [
          {
            field: 'rounds',
            message: `expected more rounds, or a larger {centre}: logs ${reckoned(width, unit)} wide are not less than half of it`,
          },
        ];
  },
  notes: (form, unit) => [`Each log is ${reckoned(logWidth(form, unit), unit)} wide, finished.`],
  draw(form, unit): readonly Unit[] {
    const [side, centre, width] = [lengthIn(unit, form.side), lengthIn(unit, form.centre), logWidth(form, unit)];
    // The first corner logs cut off what lies outside the middle square's corners, so that points meet there.
    const logs = Array.from({ length: form.rounds }, (_, k) => k * width).flatMap((from): readonly Log[] => [
      ...[0, 90, 180, 270].map((towards) => ({ towards, role: 'pine-straight', from: centre / 2 + from })),
      ...[45, 135, 225, 315].map((towards) => ({ towards, role: 'pine-corner', from: centre / Math.SQRT2 + from })),
    ]);
    return [
      {
        id: 'A',
        name: 'Pineapple',
        paper: true,
        repeat: { count: 1 },
        axis: 0,
        patches: logPatches('pine-centre', logs, side),
      },
    ];
  },
};

const logWidth = ({ side, centre, rounds }: Filled, unit: LengthUnit): number =>
  (lengthIn(unit, side) - lengthIn(unit, centre)) / (2 * rounds);
