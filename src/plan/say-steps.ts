/** Selling steps in a shop's words: "3 quarter yards", "2 × 10 cm". */
import { formatLength } from '../quilt/format-length.ts';
import { parseLength } from '../quilt/measure.ts';
import type { Length, LengthUnit } from '../quilt/quilt.ts';

const FRACTIONS: ReadonlyMap<number, string> = new Map([
  [1 / 8, 'eighth'],
  [1 / 4, 'quarter'],
  [1 / 2, 'half'],
]);

/**
 * A number of selling steps in words.
 * @param step as the cloth has it; written in yards or metres it is told in those
 * @param unit the quilt's
 */
export function saySteps(steps: number, step: Length, unit: LengthUnit): string {
  const name = nameOfStep(step);
  if (name === null) {
    const written = typeof step === 'string' ? step : formatLength(step, unit, { denominator: 64, decimals: 2 });
    return steps === 1 ? written : `${steps} × ${written}`;
  }
  return `${steps} ${steps === 1 ? name.one : name.many}`;
}

/** How long those steps are, in yards or metres where the step is written so: "3/4 yd", "0.3 m". */
export function stepShop(step: Length | undefined, unit: LengthUnit): 'yd' | 'm' {
  const written = typeof step === 'string' ? parseLength(step).unit : null;
  if (written === 'yd' || written === 'in') {
    return 'yd';
  }
  return written === null && unit === 'in' ? 'yd' : 'm';
}

function nameOfStep(step: Length): { readonly one: string; readonly many: string } | null {
  const measure = typeof step === 'string' ? parseLength(step) : null;
  if (measure === null || (measure.unit !== 'yd' && measure.unit !== 'm')) {
    return null;
  }
  const whole = measure.unit === 'yd' ? 'yard' : 'metre';
  if (measure.value === 1) {
    return { one: whole, many: `${whole}s` };
  }
  const fraction = FRACTIONS.get(measure.value);
  if (fraction === undefined) {
    return null;
  }
  // "An eighth yard" is nobody's word.
  return fraction === 'eighth'
    ? { one: `eighth of a ${whole}`, many: `eighths of a ${whole}` }
    : { one: `${fraction} ${whole}`, many: `${fraction} ${whole}s` };
}

/** Steps that a length needs; a length that is a whole number of steps but for rounding needs no more. */
export const stepsFor = (length: number, step: number): number => Math.max(0, Math.ceil(length / step - 1e-6));
