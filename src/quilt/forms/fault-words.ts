/** Faults of a form's numbers in words. */
import { formatLength } from '../format-length.ts';
import { convert, lengthIn } from '../measure.ts';
import type { Length, LengthUnit } from '../quilt.ts';
import type { AnyForm, FormFault, FormField } from './form-spec.ts';

/** As told of a file: other fields by the name that they have there. */
export const inFile = ({ message }: FormFault): string => message.replace(/\{(\w+)\}/g, '$1');

/** As told on the page under one of its fields: fields by their labels, and the one at fault named where it is another. */
export function onPage(fault: FormFault, under: string, fields: readonly FormField[]): string {
  const label = (name: string): string => `“${fields.find(({ field }) => field === name)?.label ?? name}”`;
  const words = fault.message.replace(/\{(\w+)\}/g, (_, name: string) => label(name));
  return fault.field === under
    ? `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
    : `${label(fault.field)}: ${words}.`;
}

/** A length as it was written, with its unit. */
export const asWritten = (length: Length, unit: LengthUnit): string =>
  typeof length === 'string' ? length : `${length} ${unit}`;

/** A length that was reckoned, fine enough that no two which differ read alike. */
export const reckoned = (value: number, unit: LengthUnit): string =>
  formatLength(value, unit, { denominator: 64, decimals: 2 });

/** Inches. Nearer than this nothing can be sewn between two lines. */
const APART = 1 / 16;

/**
 * Lengths of a form that must grow from each to the next.
 * @param fields names of its length fields; "half side" stands for half the length of the field "side"
 */
export function growing<F extends AnyForm>(
  form: Required<F>,
  unit: LengthUnit,
  fields: readonly string[],
): readonly FormFault[] {
  const values = form as unknown as Readonly<Record<string, Length>>;
  const steps = fields.map((text) => {
    const half = text.startsWith('half ');
    const field = half ? text.slice(5) : text;
    return {
      field,
      half,
      written: asWritten(values[field]!, unit),
      number: lengthIn(unit, values[field]!) / (half ? 2 : 1),
    };
  });
  const least = convert(APART, 'in', unit);
  return steps.slice(1).flatMap((larger, i) => {
    const smaller = steps[i]!;
    if (smaller.number < larger.number - least) {
      return [];
    }
    const by = smaller.number < larger.number ? `, by at least ${reckoned(least, unit)}` : '';
    const than = larger.half
      ? `half the {${larger.field}}, which is half of ${larger.written}`
      : `{${larger.field}}, which is ${larger.written}`;
    return [{ field: smaller.field, message: `expected less than ${than}${by}; found ${smaller.written}` }];
  });
}
