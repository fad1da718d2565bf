/** A strip that is cut at two sittings, told one sitting at a time. */
import type { StripSteps } from './cut-steps.ts';

/**
 * What of a strip is cut at one sitting.
 * @param held how many of its blanks, from its start, are cut for the test block; 0 where it is none of its strips
 * @param isFirst whether the first sitting is asked for, that for the test block, or the one after it
 * @returns null where nothing of it is
 */
export function partOf(steps: StripSteps, held: number, isFirst: boolean): StripSteps | null {
  const { pieces, across } = steps;
  if (held === 0 || held >= pieces.length) {
    return isFirst === held > 0 ? steps : null;
  }
  if (!isFirst) {
    return { ...steps, pieces: pieces.slice(held), part: 'rest' };
  }
  const own = pieces.slice(0, held);
  const last = own.at(-1)!;
  return { ...steps, pieces: own, left: Math.max(0, across - Math.max(last.near, last.far)), part: 'begun' };
}
