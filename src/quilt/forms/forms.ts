/** The one list of forms, and what the rest of the house asks of a form whichever it is. */
import type { DrawnBlock, RoleSeed } from '../drawn-block.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { type BorderForm, border } from './border.ts';
import { type CompassStarForm, compassStar } from './compass-star.ts';
import { type DiamondStarForm, diamondStar } from './diamond-star.ts';
import type { FormFault, FormSpec, FormValue } from './form-spec.ts';
import { type GeeseArcForm, geeseArc } from './geese-arc.ts';
import { type GeeseRingForm, geeseRing } from './geese-ring.ts';
import { type HexagonRosetteForm, hexagonRosette } from './hexagon-rosette.ts';
import { type LogCabinForm, logCabin } from './log-cabin.ts';
import { type NinePatchForm, ninePatch } from './nine-patch.ts';
import { type PineappleForm, pineapple } from './pineapple.ts';
import { type SashingForm, sashing } from './sashing.ts';
import { type SawtoothStarForm, sawtoothStar } from './sawtooth-star.ts';
import { faultsOfLengths, faultsOfPatches } from './sensible-sizes.ts';
import { type SettingTrianglesForm, settingTriangles } from './setting-triangles.ts';
import { type SpikedArcForm, spikedArc } from './spiked-arc.ts';
import { type HalfSquaresForm, halfSquares, type QuarterSquaresForm, quarterSquares } from './triangle-grids.ts';
import { type WedgeRingForm, wedgeRing } from './wedge-ring.ts';

export type Form =
  | CompassStarForm
  | WedgeRingForm
  | GeeseRingForm
  | GeeseArcForm
  | SpikedArcForm
  | DiamondStarForm
  | HexagonRosetteForm
  | SawtoothStarForm
  | NinePatchForm
  | LogCabinForm
  | PineappleForm
  | HalfSquaresForm
  | QuarterSquaresForm
  | SettingTrianglesForm
  | SashingForm
  | BorderForm;
export type FormKind = Form['kind'];

/** In the order in which they are offered. */
export const FORMS: readonly FormSpec[] = [
  compassStar,
  wedgeRing,
  geeseRing,
  geeseArc,
  spikedArc,
  diamondStar,
  hexagonRosette,
  sawtoothStar,
  ninePatch,
  logCabin,
  pineapple,
  halfSquares,
  quarterSquares,
  settingTriangles,
  sashing,
  border,
];

const byKind: ReadonlyMap<string, FormSpec> = new Map(FORMS.map((spec) => [spec.kind, spec]));

/** The spec of a form's kind, which the quilt file's schema has seen to. @throws RangeError for an unknown kind */
export function formSpec(kind: string): FormSpec {
  const spec = byKind.get(kind);
  if (spec === undefined) {
    throw new RangeError(
      `there is no form "${kind}"; the forms are ${FORMS.map((each) => `"${each.kind}"`).join(', ')}`,
    );
  }
  return spec;
}

/** The form's units, in `unit`, about the block's centre. @param form without faults */
export function drawForm(form: Form, unit: LengthUnit): readonly Unit[] {
  const spec = formSpec(form.kind);
  return spec.draw(filledForm(form), unit);
}

/** Every role that the form's patches name. */
export const rolesOfForm = (form: Form): readonly RoleSeed[] => formSpec(form.kind).roles(filledForm(form));

/** Why the form's numbers draw no block; empty where they do. @param form its fields each within their limits */
export function faultsOfForm(form: Form, unit: LengthUnit): readonly FormFault[] {
  const spec = formSpec(form.kind);
  const filled = filledForm(form);
  const faults = [...faultsOfLengths(spec, filled, unit), ...spec.faults(filled, unit)];
  return faults.length > 0 ? faults : faultsOfPatches(spec, spec.draw(filled, unit), unit);
}

/** The form with other values for some fields, and what follows from them in others. */
export function changedForm(form: Form, fields: Readonly<Record<string, FormValue>>): Form {
  const { follow } = formSpec(form.kind);
  const changed = { ...form, ...fields } as Form;
  const followed = Object.keys(fields).map((field) => follow?.(filledForm(changed), field) ?? {});
  return Object.assign({ ...changed }, ...followed, fields);
}

/** What follows from the form's numbers and is worth knowing. @param form without faults */
export const notesOnForm = (form: Form, unit: LengthUnit): readonly string[] =>
  formSpec(form.kind).notes?.(filledForm(form), unit) ?? [];

/** How large a quilt is with a form that goes round its blocks; null for a form that is a block. @param form without faults */
export const frameSize = (form: Form, unit: LengthUnit): { readonly width: number; readonly length: number } | null =>
  formSpec(form.kind).frame?.(filledForm(form), unit) ?? null;

/** The block that a form draws, for whoever wants units rather than numbers. */
export function drawnForm(form: Form, unit: LengthUnit): DrawnBlock {
  return { name: formSpec(form.kind).title, units: drawForm(form, unit), roles: rolesOfForm(form) };
}

/** The form's value for each field, with the usual one where it is left out. */
export function formValueOf(form: Form, field: string): FormValue {
  return (filledForm(form) as unknown as Readonly<Record<string, FormValue>>)[field]!;
}

/** The form with each of its lengths changed. */
export function mapFormLengths(form: Form, change: (length: Length) => Length): Form {
  const lengths = formSpec(form.kind).fields.filter(({ type, field }) => type === 'length' && field in form);
  const values = form as unknown as Readonly<Record<string, Length>>;
  return { ...form, ...Object.fromEntries(lengths.map(({ field }) => [field, change(values[field]!)])) };
}

function filledForm(form: Form): Form {
  const usual = formSpec(form.kind).fields.filter((field) => field.usual !== undefined);
  return { ...Object.fromEntries(usual.map((field) => [field.field, field.usual])), ...form };
}
