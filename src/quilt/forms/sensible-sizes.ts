/** What is too small to sew or too large for a quilt, whatever the form. */
import { outlineFault } from '../../shape/outline-fault.ts';
import { outlineArea } from '../../shape/outline-measures.ts';
import { convert, lengthIn } from '../measure.ts';
import type { Length, LengthUnit, Unit } from '../quilt.ts';
import { asWritten, reckoned } from './fault-words.ts';
import type { AnyForm, FormFault, FormSpec } from './form-spec.ts';

/** Inches. A finished patch no wider than this is lost in its seams; it also keeps rounding away from what is drawn. */
const LEAST = 1 / 16;
/** Inches, about ten metres. */
const MOST = 400;

/** Lengths beyond what anyone would sew. */
export function faultsOfLengths(spec: FormSpec, form: AnyForm, unit: LengthUnit): readonly FormFault[] {
  const values = form as unknown as Readonly<Record<string, Length>>;
  return spec.fields.flatMap((field): readonly FormFault[] => {
    if (field.type !== 'length' || field.shown?.(form) === false) {
      return [];
    }
    const length = values[field.field]!;
    const inches = lengthIn('in', typeof length === 'number' ? `${length} ${unit}` : length);
    const found = `found ${asWritten(length, unit)}`;
    if (inches > MOST) {
      return [{ field: field.field, message: `expected at most ${said(MOST, unit)}; ${found}` }];
    }
    const isNone = field.zero === true && inches === 0;
    return inches >= LEAST || isNone
      ? []
      : [
          {
            field: field.field,
            message: `expected ${field.zero === true ? 'none, or ' : ''}at least ${said(LEAST, unit)}; ${found}`,
          },
        ];
  });
}

/** The first patch that comes to next to nothing, as numbers that nearly meet leave it. */
export function faultsOfPatches(spec: FormSpec, units: readonly Unit[], unit: LengthUnit): readonly FormFault[] {
  const least = convert(LEAST, 'in', unit) ** 2;
  for (const { id, patches } of units) {
    for (const { number, outline } of patches) {
      if (outlineFault(outline) !== null || outlineArea(outline) < least) {
        const { field } = spec.fields.find(({ type }) => type === 'length') ?? spec.fields[0]!;
        return [
          {
            field,
            message: `expected numbers that leave every patch room to be sewn; found next to nothing for ${id}${number}`,
          },
        ];
      }
    }
  }
  return [];
}

const said = (inches: number, unit: LengthUnit): string => reckoned(convert(inches, 'in', unit), unit);
