/** A log cabin: logs sewn round a square, light on two sides and dark on the others, on one foundation. */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { growing, reckoned } from './fault-words.ts';
import type { FormSpec } from './form-spec.ts';
import { type Log, logPatches } from './logs.ts';

export interface LogCabinForm {
  readonly kind: 'log-cabin';
  /** Sides of the block and of the square in the middle. */
  readonly side: Length;
  readonly centre: Length;
  /** How many times the logs go round. */
  readonly rounds: number;
  /** Round and round, or on opposite sides in turn. */
  readonly order?: 'round' | 'opposite';
}
type Filled = Required<LogCabinForm>;

export const logCabin: FormSpec<LogCabinForm> = {
  kind: 'log-cabin',
  title: 'Log cabin',
  about: 'logs round a square, light on two sides and dark on two',
  fields: [
    { type: 'count', field: 'rounds', label: 'Rounds of logs', min: 1, max: 16 },
    { type: 'length', field: 'centre', label: 'Middle square', hint: 'its side, finished' },
    { type: 'length', field: 'side', label: 'Side', hint: 'of the block, finished' },
    {
      type: 'choice',
      field: 'order',
      label: 'Logs are sewn',
      choices: [
        { value: 'round', words: 'round and round' },
        { value: 'opposite', words: 'to opposite sides in turn' },
      ],
      usual: 'round',
    },
  ],
  tones: { 'log-centre': 'bright', 'log-light': 'light', 'log-dark': 'dark' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'log-cabin', rounds: 4, centre: 2, side: 12 }
      : { kind: 'log-cabin', rounds: 4, centre: 5, side: 31 },
  roles: () => [
    { id: 'log-centre', name: 'Middle square', facing: { to: 'upright' } },
    { id: 'log-light', name: 'Logs, light', facing: { to: 'free' } },
    { id: 'log-dark', name: 'Logs, dark', facing: { to: 'free' } },
  ],
  faults: (form, unit) => growing(form, unit, ['centre', 'side']),
  notes: (form, unit) => [`Each log is ${reckoned(logWidth(form, unit), unit)} wide, finished.`],
  draw(form, unit): readonly Unit[] {
    const [side, centre, width] = [lengthIn(unit, form.side), lengthIn(unit, form.centre), logWidth(form, unit)];
    const sides = ORDERS[form.order];
    const logs = Array.from({ length: form.rounds }, (_, k) => centre / 2 + k * width).flatMap((from) =>
      sides.map(([towards, role]): Log => ({ towards, role, from })),
    );
    return [
      {
        id: 'A',
        name: 'Cabin',
        paper: true,
        repeat: { count: 1 },
        axis: 0,
        patches: logPatches('log-centre', logs, side),
      },
    ];
  },
};

/** The sides in the order in which a round's logs go on: degrees from up, and what each is made of. */
const ORDERS = {
  round: [
    [0, 'log-light'],
    [-90, 'log-light'],
    [180, 'log-dark'],
    [90, 'log-dark'],
  ],
  opposite: [
    [0, 'log-light'],
    [180, 'log-light'],
    [90, 'log-dark'],
    [-90, 'log-dark'],
  ],
} as const;

const logWidth = ({ side, centre, rounds }: Filled, unit: LengthUnit): number =>
  (lengthIn(unit, side) - lengthIn(unit, centre)) / (2 * rounds);
