/**
 * Text as the paper's own faces can set it. Fractions become a raised figure, the fraction stroke and a lowered one, which the faces
 * hold for every denominator, so that sixteenths look like halves and quarters do.
 */
import { BOLD_ADVANCES, REGULAR_ADVANCES } from './fonts/advances.ts';

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';

const table = (runs: readonly (readonly number[])[]): ReadonlyMap<number, number> =>
  new Map(runs.flatMap(([first = 0, ...advances]) => advances.map((advance, i) => [first + i, advance] as const)));
const REGULAR = table(REGULAR_ADVANCES);
const BOLD = table(BOLD_ADVANCES);

/** What stands in for signs that the faces lack. */
const INSTEAD: ReadonlyMap<string, string> = new Map([
  ['≈', '~'],
  ['\u00a0', ' '],
  ['\u2009', ' '],
  ['\u202f', ' '],
  ['ﬁ', 'fi'],
  ['ﬂ', 'fl'],
]);
const UNKNOWN = '?';

/** The text as it is set: "1 3/16 in" with the fraction built up, signs that the faces lack replaced. */
export function paperText(text: string): string {
  return [...text.normalize('NFC').replace(/(?:(?<=\d) )?(?<![\d/])(\d{1,2})\/(\d{1,2})(?![\d/])/g, fraction)]
    .map((sign) => (REGULAR.has(sign.codePointAt(0)!) ? sign : (INSTEAD.get(sign) ?? plainLetter(sign))))
    .join('');
}

/** How wide a text is when set, in the unit of its size. */
export function paperTextWidth(text: string, size: number, isBold: boolean): number {
  const advances = isBold ? BOLD : REGULAR;
  return ([...paperText(text)].reduce((sum, sign) => sum + (advances.get(sign.codePointAt(0)!) ?? 0), 0) * size) / 1000;
}

const fraction = (_: string, top: string, bottom: string): string =>
  `${figures(top, RAISED)}⁄${figures(bottom, LOWERED)}`;

const figures = (digits: string, from: string): string => [...digits].map((digit) => from[Number(digit)]).join('');

/** A letter whose accent the faces lack is set without it. */
function plainLetter(sign: string): string {
  const [base] = sign.normalize('NFD');
  return base !== undefined && base !== sign && REGULAR.has(base.codePointAt(0)!) ? base : UNKNOWN;
}
