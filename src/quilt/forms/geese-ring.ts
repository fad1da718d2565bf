/** A ring of flying geese, one behind the other, several to a foundation. */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { lettered, numbered } from './drawing.ts';
import { growing } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';
import { geese, gooseFault, gooseRole, SKY, WAYS, type Way } from './geese.ts';
import { sharedFault, sharingPapers, togetherFault } from './in-row.ts';
import { discUnit, GROUND, groundUnit, MIDDLE } from './rounds.ts';

export interface GeeseRingForm {
  readonly kind: 'geese-ring';
  readonly geese: number;
  /** How many are pieced on one foundation. */
  readonly together: number;
  readonly way?: Way;
  /** Radii of the ring's edges. */
  readonly inner: Length;
  readonly outer: Length;
  readonly middle?: boolean;
  readonly ground?: boolean;
  readonly side: Length;
}
type Filled = Required<GeeseRingForm>;

export const geeseRing: FormSpec<GeeseRingForm> = {
  kind: 'geese-ring',
  title: 'Ring of geese',
  about: 'flying geese that follow each other round a ring',
  fields: [
    { type: 'count', field: 'geese', label: 'Geese', min: 4, max: 120 },
    { type: 'count', field: 'together', label: 'Geese on one paper', min: 1, max: 60 },
    { type: 'choice', field: 'way', label: 'They fly', choices: WAYS, usual: 'clockwise' },
    { type: 'length', field: 'inner', label: 'Inner edge', hint: 'of the ring, from the centre' },
    { type: 'length', field: 'outer', label: 'Outer edge', hint: 'of the ring, from the centre' },
    { type: 'switch', field: 'middle', label: 'A disc in the middle', usual: true },
    { type: 'switch', field: 'ground', label: 'On a square ground', usual: true },
    {
      type: 'length',
      field: 'side',
      label: 'Side',
      hint: 'of the square block, finished',
      shown: ({ ground }: Filled) => ground,
    },
  ],
  tones: { geese: 'dark', 'geese-sky': 'light', middle: 'bright', ground: 'ground' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'geese-ring', geese: 16, together: 4, inner: 4, outer: 7, side: 16 }
      : { kind: 'geese-ring', geese: 16, together: 4, inner: 10, outer: 18, side: 40 },
  roles: ({ way, middle, ground }) => [gooseRole(way), SKY, ...(middle ? [MIDDLE] : []), ...(ground ? [GROUND] : [])],
  follow: (form, changed) =>
    changed === 'geese' ? { together: sharingPapers(form.together, form.geese, 360 / form.geese) } : {},
  faults(form, unit): readonly FormFault[] {
    const { geese: count, together, ground } = form;
    const order = growing(form, unit, ['inner', 'outer', ...(ground ? ['half side'] : [])]);
    const [inner, outer] = [lengthIn(unit, form.inner), lengthIn(unit, form.outer)];
    const step = 360 / count;
    const tooLong = order.length > 0 ? [] : gooseFault('geese', step, inner, outer, unit);
    const shared = sharedFault('together', together, count, 'geese');
    if ([...order, ...tooLong, ...shared].length > 0) {
      return [...order, ...tooLong, ...shared];
    }
    return togetherFault(together, step);
  },
  draw,
};

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const { geese: count, together, way } = form;
  const [inner, outer, side] = [form.inner, form.outer, form.side].map((each) => lengthIn(unit, each)) as [
    number,
    number,
    number,
  ];
  const step = 360 / count;
  const first = ((way === 'clockwise' ? 1 : -1) * together * step) / 2;
  return lettered([
    {
      name: 'Geese',
      paper: true,
      repeat: { count: count / together },
      axis: 0,
      patches: numbered(geese(together, first, step, inner, outer, way)),
    },
    ...(form.middle ? [discUnit(inner)] : []),
    ...(form.ground ? [groundUnit(outer, side)] : []),
  ]);
}
