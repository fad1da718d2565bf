/** Patches in a row along a curve, on foundations that each take so many of them. */
import type { FormFault } from './form-spec.ts';

/** A seam that leaves the inner edge at less than this to the curve, in degrees, can hardly be told from it. */
const LEAST_LEAN = 10;

/**
 * How far from the centre a place must lie for a seam to it from the inner edge, `degrees` farther round, to leave that
 * edge well; infinite where no place is far enough.
 */
export function leastReach(inner: number, degrees: number): number {
  const turn = (degrees * Math.PI) / 180;
  const part = Math.cos(turn) - Math.tan((LEAST_LEAN * Math.PI) / 180) * Math.sin(turn);
  return part > 0 ? inner / part : Number.POSITIVE_INFINITY;
}

/** How many patches of `step` degrees one foundation holds: it takes less than half of a ring, so that the seams across it run straight. */
const mostTogether = (step: number): number => Math.max(1, Math.ceil(180 / step - 1e-9) - 1);

/** Too many on one foundation. */
export function togetherFault(together: number, step: number): readonly FormFault[] {
  const most = mostTogether(step);
  return together <= most
    ? []
    : [
        {
          field: 'together',
          message: `expected ${most} or fewer, so that a paper is less than half of a ring; found ${together}`,
        },
      ];
}

/** How many to a foundation come nearest to those wished for, and share out the whole. @param step degrees of each */
export const sharingPapers = (wished: number, whole: number, step: number): number =>
  sharing(Math.min(wished, mostTogether(step)), whole);

/** The largest number up to `wished` that shares out a whole. */
export function sharing(wished: number, whole: number): number {
  let number = Math.max(1, Math.min(wished, whole));
  while (whole % number !== 0) {
    number--;
  }
  return number;
}

/** A number that must share out another. */
export function sharedFault(field: string, number: number, whole: number, of: string): readonly FormFault[] {
  return whole % number === 0
    ? []
    : [
        {
          field,
          message: `expected a number that goes evenly into {${of}}, which is ${whole}; found ${number}`,
        },
      ];
}
