/** Lengths written for people, the way measure.ts reads them back. */
import { convert } from './measure.ts';
import type { LengthUnit } from './quilt.ts';

export interface LengthFormat {
  /** Inches are rounded to the nearest of this part of an inch. Default 8. */
  readonly denominator?: 4 | 8 | 16 | 32 | 64;
  /** Centimetres are rounded to this many places. Default 1. */
  readonly decimals?: number;
}

/** A length in `unit`, with its unit: "1 1/4 in", "3.2 cm". */
export function formatLength(value: number, unit: LengthUnit, format: LengthFormat = {}): string {
  return `${formatNumber(value, unit, format)} ${unit}`;
}

/** The same without the unit: "1 1/4", "3.2". */
export function formatNumber(value: number, unit: LengthUnit, format: LengthFormat = {}): string {
  return unit === 'in' ? formatFraction(value, format.denominator ?? 8) : formatDecimal(value, format.decimals ?? 1);
}

/** The nearest whole number of `denominator`ths, in lowest terms: 1.25 as "1 1/4", 0.5 as "1/2". */
export function formatFraction(value: number, denominator: number): string {
  const parts = Math.round(Math.abs(value) * denominator);
  const sign = value < 0 && parts > 0 ? '-' : '';
  const whole = Math.floor(parts / denominator);
  let top = parts % denominator;
  let bottom = denominator;
  while (top > 0 && top % 2 === 0 && bottom % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  return sign + [whole === 0 && fraction !== '' ? '' : `${whole}`, fraction].filter((part) => part !== '').join(' ');
}

/** At most `decimals` places and no trailing zeros: 3.20 as "3.2". */
export function formatDecimal(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/**
 * A length of cloth as shops measure it: yards in eighths where it comes to whole eighths and in hundredths otherwise, or
 * metres to the centimetre.
 * @param value in `unit`
 */
export function formatClothLength(value: number, unit: LengthUnit, shop: 'yd' | 'm'): string {
  const length = convert(value, unit, shop);
  if (shop === 'm') {
    return `${formatDecimal(length, 2)} m`;
  }
  const eighths = Math.abs(length * 8 - Math.round(length * 8)) < 1e-6;
  return `${eighths ? formatFraction(length, 8) : formatDecimal(length, 2)} yd`;
}

/**
 * A mark on the ruler, without its unit: to the sixteenth of an inch or the millimetre, with "≈" before it where the true
 * place lies between two of those.
 */
export function formatMark(value: number, unit: LengthUnit): string {
  const parts = unit === 'in' ? 16 : 10;
  const exact = Math.abs(value * parts - Math.round(value * parts)) < 1e-4;
  return `${exact ? '' : '≈'}${formatNumber(value, unit, { denominator: 16, decimals: 1 })}`;
}
