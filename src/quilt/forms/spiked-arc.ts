/** Points on a curved base along a quarter of a ring in a square block, or along an arc by itself. */
import { lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { at, bow, hollow, lettered, numbered, type Piece } from './drawing.ts';
import { growing, reckoned } from './fault-words.ts';
import type { FormFault, FormSpec } from './form-spec.ts';
import { leastReach, sharedFault, sharingPapers, togetherFault } from './in-row.ts';
import { arcEnds, CORNER, QUARTER_GROUND, quarterUnits, settingFields, spanOf } from './quarter.ts';

export interface SpikedArcForm {
  readonly kind: 'spiked-arc';
  readonly spikes: number;
  /** How many are pieced on one foundation. */
  readonly together: number;
  /** Radii about the block's lower left corner: of the curve that the points stand on, and of the one that they reach. */
  readonly inner: Length;
  readonly outer: Length;
  readonly square?: boolean;
  /** Degrees, of an arc by itself. */
  readonly span?: number;
  readonly side: Length;
}
type Filled = Required<SpikedArcForm>;

export const spikedArc: FormSpec<SpikedArcForm> = {
  kind: 'spiked-arc',
  title: 'Spiked arc',
  about: 'sharp points on a curved base, a quarter ring to the block',
  fields: [
    { type: 'count', field: 'spikes', label: 'Points', min: 1, max: 60 },
    { type: 'count', field: 'together', label: 'Points on one paper', min: 1, max: 60 },
    { type: 'length', field: 'inner', label: 'Base of the points', hint: 'from the arc’s centre' },
    { type: 'length', field: 'outer', label: 'Tips', hint: 'from the arc’s centre' },
    ...settingFields,
  ],
  tones: { spikes: 'dark', between: 'light', corner: 'bright', 'arc-ground': 'ground' },
  start: (unit) =>
    unit === 'in'
      ? { kind: 'spiked-arc', spikes: 8, together: 8, inner: 5, outer: 8, side: 10 }
      : { kind: 'spiked-arc', spikes: 8, together: 8, inner: 12, outer: 20, side: 25 },
  roles: ({ square }) => [
    { id: 'spikes', name: 'Points', facing: { to: 'outward', from: 'middle' } },
    { id: 'between', name: 'Ground between the points', facing: { to: 'free' } },
    ...(square ? [CORNER, QUARTER_GROUND] : []),
  ],
  follow: (form, changed) =>
    changed === 'spikes' ? { together: sharingPapers(form.together, form.spikes, spanOf(form) / form.spikes) } : {},
  faults(form, unit): readonly FormFault[] {
    const [from, to] = arcEnds(form);
    const half = (to - from) / form.spikes / 2;
    const least = leastReach(lengthIn(unit, form.inner), half);
    const order = growing(form, unit, ['inner', 'outer', ...(form.square ? ['side'] : [])]);
    const isTooWide = order.length === 0 && lengthIn(unit, form.outer) <= least;
    const tooWide = `expected more points${Number.isFinite(least) ? `, or {outer} beyond ${reckoned(least, unit)}` : ''}; so wide a point lies along its own base or across it`;
    const shared = sharedFault('together', form.together, form.spikes, 'spikes');
    const faults = [...order, ...(isTooWide ? [{ field: 'spikes', message: tooWide }] : []), ...shared];
    if (faults.length > 0) {
      return faults;
    }
    return togetherFault(form.together, 2 * half);
  },
  notes: (form, unit) => {
    const [from, to] = arcEnds(form);
    const base = (((to - from) / form.spikes) * Math.PI * lengthIn(unit, form.inner)) / 180;
    return [`Each point is ${reckoned(base, unit)} wide along its base.`];
  },
  draw,
};

function draw(form: Filled, unit: LengthUnit): readonly Unit[] {
  const [inner, outer, side] = [form.inner, form.outer, form.side].map((each) => lengthIn(unit, each)) as [
    number,
    number,
    number,
  ];
  const [from, to] = arcEnds(form);
  const { together } = form;
  const end = from + ((to - from) * together) / form.spikes;
  return lettered([
    {
      name: 'Points',
      paper: true,
      repeat: { count: form.spikes / together, ...(together === form.spikes ? {} : { over: to - from }) },
      axis: (from + end) / 2,
      patches: numbered(spikes(together, from, end, inner, outer)),
    },
    ...(form.square ? quarterUnits(inner, outer, side) : []),
  ]);
}

/** Ground and points in turn along the arc: each is sewn to the one before it, along a point's side. */
function spikes(count: number, from: number, to: number, inner: number, outer: number): readonly Piece[] {
  const step = (to - from) / count;
  const base = (k: number): number => (k === count ? to : from + k * step);
  const tip = (k: number): number => from + (k + 0.5) * step;
  const ground = (k: number): Piece => {
    const [right, left] = [k === 0 ? from : tip(k - 1), k === count ? to : tip(k)];
    return ['between', [at(inner, base(k)), at(outer, right), bow(outer), at(outer, left)]];
  };
  const spike = (k: number): Piece => [
    'spikes',
    [at(inner, base(k)), at(outer, tip(k)), at(inner, base(k + 1)), hollow(inner)],
  ];
  return [ground(0), ...Array.from({ length: count }, (_, k) => [spike(k), ground(k + 1)]).flat()];
}
