/** What washing does to a purchase, in words. */
import { kept } from '../cutting/cloth-lengths.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Cloth, LengthUnit } from '../quilt/quilt.ts';

/**
 * Of a cloth that is bought and washed before it is cut: how wide it then is, and how much of it as sold makes the need,
 * which is the need / (1 − shrinkage along). Null where it does not shrink, or nothing is bought.
 * @param need as washed
 * @param unit the quilt's, in which lengths are
 * @param write a length with its unit
 */
export function sayWashing(
  cloth: Cloth | undefined,
  need: number,
  unit: LengthUnit,
  write: (length: number) => string,
): string | null {
  if (cloth === undefined || need === 0) {
    return null;
  }
  const { along, across } = kept(cloth);
  if (along === 1 && across === 1) {
    return null;
  }
  const width = lengthIn(unit, cloth.width);
  return `wash it first: ${write(width)} wide comes to ${write(width * across)}, and the ${write(need)} needed are ${write(need / along)} as sold`;
}
