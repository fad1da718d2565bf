/**
 * Lengths as she writes and reads them. A written length keeps its own unit and is turned into a number only where one is
 * needed, so that switching between inches and centimetres never drifts.
 */
import type { Length, LengthUnit } from './quilt.ts';

export type MeasureUnit = 'in' | 'cm' | 'mm' | 'yd' | 'm';

export interface Measure {
  readonly value: number;
  /** null where none is written: the quilt's own unit is meant. */
  readonly unit: MeasureUnit | null;
}

/** Units in tenths of a millimetre. All are whole numbers, so a conversion rounds once at most per factor. */
const TENTHS: Readonly<Record<MeasureUnit, number>> = { in: 254, cm: 100, mm: 10, yd: 9144, m: 10000 };

const UNIT_NAMES: ReadonlyMap<string, MeasureUnit> = new Map([
  ...names('in', ['in', 'in.', 'inch', 'inches', '"', '″', '”', "''"]),
  ...names('cm', ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters']),
  ...names('mm', ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters']),
  ...names('yd', ['yd', 'yd.', 'yds', 'yard', 'yards']),
  ...names('m', ['m', 'metre', 'metres', 'meter', 'meters']),
]);

const ONE_SIGN_FRACTIONS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
]);

const NUMBER =
  /^(?<sign>[-−]?)\s*(?:(?<whole>\d+)[\s-]+)?(?:(?<top>\d+)\s*\/\s*(?<bottom>\d+)|(?<decimal>\d*\.?\d+|\d+\.))$/;

/**
 * Reads a length as written: "1 1/4", "1-1/4 in", "1¼", "1.25 in", "15 cm", "1/4 yd", "0,5 m".
 * @throws RangeError that quotes the text and says what would be understood
 */
export function parseLength(text: string): Measure {
  const plain = text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚]/g, (sign) => ` ${ONE_SIGN_FRACTIONS.get(sign)}`)
    .replaceAll('⁄', '/')
    .trim();
  const cut = plain.search(/[\p{L}"″”']/u);
  const numberText = (cut < 0 ? plain : plain.slice(0, cut)).trim();
  const unitText = cut < 0 ? '' : plain.slice(cut).trim().toLowerCase();
  const unit = unitText === '' ? null : UNIT_NAMES.get(unitText);
  if (unit === undefined) {
    throw new RangeError(`"${text}" has the unit "${unitText}"; expected in, cm, mm, yd or m`);
  }
  return { value: parseNumber(numberText, text), unit };
}

function parseNumber(numberText: string, text: string): number {
  const groups = NUMBER.exec(withDecimalPoint(numberText, text))?.groups;
  if (groups === undefined || (groups.whole !== undefined && groups.decimal !== undefined)) {
    throw new RangeError(`"${text}" is not a length; expected a number such as 1 1/4, 1.25 or 3/8, and a unit`);
  }
  if (groups.bottom !== undefined && Number(groups.bottom) === 0) {
    throw new RangeError(`"${text}" divides by zero`);
  }
  const part = groups.decimal === undefined ? Number(groups.top) / Number(groups.bottom) : Number(groups.decimal);
  const size = Number(groups.whole ?? 0) + part;
  return groups.sign === '' ? size : -size;
}

/** A decimal comma is welcome, unless it might as well be a thousands comma. */
function withDecimalPoint(numberText: string, text: string): string {
  if (/,\d{3}$/.test(numberText)) {
    throw new RangeError(`"${text}" could mean thousands or thousandths; write it with a point, or without the comma`);
  }
  return numberText.replace(',', '.');
}

/** A number given in one unit, in another; the same unit gives the very same number back. */
export function convert(value: number, from: MeasureUnit, to: MeasureUnit): number {
  return from === to ? value : (value * TENTHS[from]) / TENTHS[to];
}

/**
 * A length as a number in `unit`, which must be the quilt's: bare numbers, and text without a unit, are taken to be in it.
 * @throws RangeError when the text cannot be read
 */
export function lengthIn(unit: LengthUnit, length: Length): number {
  if (typeof length === 'number') {
    return length;
  }
  const measure = parseLength(length);
  return convert(measure.value, measure.unit ?? unit, unit);
}

function names(unit: MeasureUnit, list: readonly string[]): readonly (readonly [string, MeasureUnit])[] {
  return list.map((name) => [name, unit] as const);
}
