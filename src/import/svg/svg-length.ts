/** Lengths as SVG writes them, in inches. CSS fixes 96 px to the inch. */

export const PIXELS_AN_INCH = 96;

/** Per inch. */
const UNITS: Readonly<Record<string, number>> = {
  in: 1,
  cm: 2.54,
  mm: 25.4,
  q: 101.6,
  pt: 72,
  pc: 6,
  px: PIXELS_AN_INCH,
  '': PIXELS_AN_INCH,
};

export interface SvgLength {
  readonly inches: number;
  /** Whether it is told in a unit that a ruler has, rather than in pixels. */
  readonly physical: boolean;
}

/** null where there is none, or none that says a size: percentages, ems, words. */
export function parseSvgLength(text: string | undefined): SvgLength | null {
  const found = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([a-z%]*)\s*$/i.exec((text ?? '').slice(0, 60));
  if (found === null) return null;
  const unit = found[2]!.toLowerCase();
  const perInch = Object.hasOwn(UNITS, unit) ? UNITS[unit]! : null;
  if (perInch === null) return null;
  const inches = Number(found[1]) / perInch;
  return Number.isFinite(inches) ? { inches, physical: unit !== 'px' && unit !== '' } : null;
}

/** In user units (pixels), for attributes of shapes; null where it cannot be said, as with percentages. */
export function userLength(text: string | undefined): number | null {
  const length = parseSvgLength(text);
  return length === null ? null : length.inches * PIXELS_AN_INCH;
}
