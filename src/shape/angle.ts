/**
 * Sines and arc tangents from sums, products and square roots alone. Those are rounded alike everywhere, while `Math.sin` and the
 * like may differ in the last bit from one browser to the next, and a bit is enough to send two searches different ways.
 */

/** Degrees anticlockwise to cosine and sine, within 2e-16. Quarter turns are exact. */
export function cosAndSin(degrees: number): readonly [cosine: number, sine: number] {
  const quarters = Math.round(degrees / 90);
  const rest = ((degrees - 90 * quarters) * Math.PI) / 180;
  const [c, s] = rest === 0 ? [1, 0] : [series(COSINE, rest * rest), rest * series(SINE, rest * rest)];
  switch (((quarters % 4) + 4) % 4) {
    case 0:
      return [c, s];
    case 1:
      return [-s + 0, c];
    case 2:
      return [-c, -s + 0];
    default:
      return [s, -c];
  }
}

/** Where a direction points, degrees anticlockwise from +x, over −180 up to 180; 0 for no direction. */
export function degreesOf(x: number, y: number): number {
  const [long, short] = [Math.max(Math.abs(x), Math.abs(y)), Math.min(Math.abs(x), Math.abs(y))];
  if (short === 0 && y === 0) return x < 0 ? 180 : 0;
  if (short === 0) return y < 0 ? -90 : 90;
  // The tangent of half an angle, and of half of that: a quarter of at most 45 degrees needs few terms.
  let t = short / long;
  for (let i = 0; i < 2; i++) t /= 1 + Math.sqrt(1 + t * t);
  const small = 4 * t * series(ARC_TANGENT, t * t) * (180 / Math.PI);
  const inQuarter = Math.abs(y) > Math.abs(x) ? 90 - small : short === long ? 45 : small;
  const inHalf = x < 0 ? 180 - inQuarter : inQuarter;
  return y < 0 ? -inHalf : inHalf;
}

/** Taylor coefficients in the square of the argument, as many as the last bit asks for: to 45 degrees, and to 11.25. */
const COSINE = signed(10, (k) => 1 / factorial(2 * k));
const SINE = signed(10, (k) => 1 / factorial(2 * k + 1));
const ARC_TANGENT = signed(13, (k) => 1 / (2 * k + 1));

function signed(terms: number, term: (k: number) => number): readonly number[] {
  return Array.from({ length: terms }, (_, k) => (k % 2 === 0 ? term(k) : -term(k)));
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}

function series(coefficients: readonly number[], square: number): number {
  return coefficients.reduceRight((sum, c) => sum * square + c, 0);
}
