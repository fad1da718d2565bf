/** Flying geese along a quarter of a ring in a square block, or along an arc by itself. */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { lettered, numbered } from './drawing.ts';
import { growing } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';
import { geese, gooseFault, gooseRole, SKY, WAYS, type Way } from './geese.ts';
import { sharedFault, sharingPapers, togetherFault } from './in-row.ts';
import { arcEnds, CORNER, QUARTER_GROUND, quarterUnits, settingFields, spanOf } from './quarter.ts';

export interface GeeseArcForm {
  readonly kind: 'geese-arc';
  readonly geese: number;
  /** How many are pieced on one foundation. */
  readonly together: number;
  readonly way?: Way;
  /** Radii of the arc's edges about the block's lower left corner. */
  readonly inner: Length;
  readonly outer: Length;
  readonly square?: boolean;
  /** Degrees, of an arc by itself. */
  readonly span?: number;
  readonly side: Length;
}
type Filled = Required<GeeseArcForm>;

export const geeseArc: FormSpec<GeeseArcForm> = {
  kind: 'geese-arc',
  title: 'Arc of geese',
  about: 'flying geese along a quarter ring; four blocks make the ring',
  fields: [
    { type: 'count', field: 'geese', label: 'Geese', min: 1, max: 60 },
    { type: 'count', field: 'together', label: 'Geese on one paper', min: 1, max: 60 },
    { type: 'choice', field: 'way', label: 'They fly', choices: WAYS, usual: 'clockwise' },
    { type: 'length', field: 'inner', label: 'Inner edge', hint: 'of the arc, from its centre' },
    { type: 'length', field: 'outer', label: 'Outer edge', hint: 'of the arc, from its centre' },
    ...settingFields,
  ],
  tones: { geese: 'dark', 'geese-sky': 'light', corner: 'bright', 'arc-ground': 'ground' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'geese-arc', geese: 5, together: 5, inner: 5, outer: 8, side: 10 }
      : { kind: 'geese-arc', geese: 5, together: 5, inner: 12, outer: 20, side: 25 },
  roles: ({ way, square }) => [gooseRole(way), SKY, ...(square ? [CORNER, QUARTER_GROUND] : [])],
  follow: (form, changed) =>
    changed === 'geese' ? { together: sharingPapers(form.together, form.geese, spanOf(form) / form.geese) } : {},
  faults(form, unit): readonly FormFault[] {
    const [inner, outer] = [lengthIn(unit, form.inner), lengthIn(unit, form.outer)];
    const [from, to] = arcEnds(form);
    const step = (to - from) / form.geese;
    const order = growing(form, unit, ['inner', 'outer', ...(form.square ? ['side'] : [])]);
    const tooLong = order.length > 0 ? [] : gooseFault('geese', step, inner, outer, unit);
    const shared = sharedFault('together', form.together, form.geese, 'geese');
    if ([...order, ...tooLong, ...shared].length > 0) {
      return [...order, ...tooLong, ...shared];
    }
    return togetherFault(form.together, step);
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
  const [from, to] = arcEnds(form);
  const step = (to - from) / count;
  // The first foundation stands at the arc's right end, whichever way its geese fly.
  const first = way === 'clockwise' ? from + together * step : from;
  return lettered([
    {
      name: 'Geese',
      paper: true,
      repeat: { count: count / together, ...(together === count ? {} : { over: to - from }) },
      axis: from + (together * step) / 2,
      patches: numbered(geese(together, first, step, inner, outer, way)),
    },
    ...(form.square ? quarterUnits(inner, outer, side) : []),
  ]);
}
