/** Lengths as they stand in the booklet: in the unit of her ruler, without its name. */
import { formatNumber } from '../quilt/format-length.ts';
import { convert } from '../quilt/measure.ts';
import type { LengthUnit } from '../quilt/quilt.ts';

/** What a ruler shows, or can be told between its lines, in parts of the unit. */
const PARTS: Readonly<Record<LengthUnit, number>> = { in: 32, cm: 20 };

/** A mark that was put on the ruler already (plan/outward-marks.ts), as it is; any other to 1/64 in or 0.05 cm. */
export function writeMark(value: number, unit: LengthUnit, shown: LengthUnit): string {
  return formatNumber(convert(value, unit, shown), shown, { denominator: 64, decimals: 2 });
}

/** What she is to have at least (up), or has at most (down). */
export function writeRounded(value: number, unit: LengthUnit, shown: LengthUnit, way: 'up' | 'down'): string {
  const parts = convert(value, unit, shown) * PARTS[shown];
  const whole = way === 'up' ? Math.ceil(parts - 1e-4) : Math.floor(parts + 1e-4);
  return formatNumber(whole / PARTS[shown], shown, { denominator: 32, decimals: 2 });
}
