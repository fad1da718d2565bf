/** Whether a plan for the cloth in hand fits, in words. */
import type { Try } from './try-with-hand.ts';

/**
 * @param least what leastTaken says of it
 * @param write a length in the quilt's unit, for reading
 */
export function sayVerdict(
  { verdict, takes, there, answers }: Try,
  least: number,
  write: (length: number) => string,
): string {
  if (verdict === 'fits') {
    return takes === 0
      ? 'fits: nothing of it is needed then'
      : `fits: takes ${write(takes)} of the ${write(there)} there are`;
  }
  const missing = answers.flatMap(({ unplaced }) => unplaced).reduce((sum, each) => sum + each.count, 0);
  const short =
    missing > 0
      ? `${missing} blank${missing === 1 ? '' : 's'} find${missing === 1 ? 's' : ''} no place`
      : `the shortest found takes ${write(least)}, there are ${write(there)}`;
  return `${verdict === 'short' ? 'short, proved: no plan with strips cut like these fits' : 'none found that fits'}; ${short}`;
}
