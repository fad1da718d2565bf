/** Lengths as the page writes them: in the unit that is shown, whatever the quilt's own unit is. */
import { stepShop } from '../plan/say-steps.ts';
import { formatClothLength, formatLength, formatMark } from '../quilt/format-length.ts';
import { convert, lengthIn, parseLength } from '../quilt/measure.ts';
import type { Length, LengthUnit } from '../quilt/quilt.ts';

export interface Units {
  /** The quilt's own. */
  readonly quilt: LengthUnit;
  /** What is shown. */
  readonly shown: LengthUnit;
}

/** How an element declares its units: others of the same names are no change, so that nothing is made anew for them. */
export const UNITS = {
  attribute: false,
  hasChanged: (fresh: Units, old: Units | undefined) => fresh.quilt !== old?.quilt || fresh.shown !== old?.shown,
} as const;

/** A computed length, in the quilt's unit, for reading: "6 1/2 in", "16.5 cm". */
export function written(value: number, units: Units): string {
  return formatLength(convert(value, units.quilt, units.shown), units.shown, { denominator: 16 });
}

/** A mark along a strip, as it is read on the ruler. */
export function writtenMark(value: number, units: Units): string {
  return formatMark(convert(value, units.quilt, units.shown), units.shown);
}

/** A length of cloth as it is bought: "3/4 yd (27 in)", "0.7 m". */
export function writtenPurchase(value: number, step: Length | undefined, units: Units): string {
  return `${formatClothLength(value, units.quilt, stepShop(step, units.quilt))} (${written(value, units)})`;
}

/**
 * A length of the quilt for a field: as written if its unit is the one shown or a shop's, else converted. What is typed
 * back without a unit is meant in the unit shown (`typedLength`).
 */
export function fieldText(length: Length, units: Units): string {
  const unit = typeof length === 'number' ? null : parseLength(length).unit;
  if (typeof length === 'string' && unit !== null && (unit === units.shown || unit === 'yd' || unit === 'm')) {
    return length;
  }
  const value = convert(lengthIn(units.quilt, length), units.quilt, units.shown);
  return formatLength(value, units.shown, { denominator: 64, decimals: 3 });
}

/**
 * What was typed, as the quilt keeps it: with the unit it was typed in.
 * @throws RangeError with words for a person when it is no length
 */
export function typedLength(text: string, units: Units): Length {
  return parseLength(text).unit === null ? `${text.trim()} ${units.shown}` : text.trim();
}
