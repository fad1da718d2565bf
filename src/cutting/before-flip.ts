/**
 * How a patch lies just before it is sewn and flipped: right sides together with what was sewn before, reflected about the line of
 * its seam. Seen through the paper it shows its right side before the flip and its wrong side after it; where its print's up points is
 * reflected with the patch.
 */
import { isArc, type Outline } from '../shape/outline.ts';
import { degreesFromUp, modulo, type Point } from '../shape/point.ts';
import { offLine, type SeamLine } from './seam-line.ts';

/** A place reflected about the line. */
export function acrossSeam(line: SeamLine, point: Point): Point {
  const off = 2 * offLine(line, point);
  return [point[0] + line.along[1] * off, point[1] - line.along[0] * off];
}

/** The patch as it lies; it runs the other way round. */
export function beforeFlip(line: SeamLine, outline: Outline): Outline {
  return outline.map((entry) =>
    isArc(entry)
      ? { arc: { ...entry.arc, turn: entry.arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise' } }
      : acrossSeam(line, entry),
  );
}

/** Where its print's up points then. @param degrees where it is to point in the end; both anticlockwise from up */
export const printBeforeFlip = (line: SeamLine, degrees: number): number =>
  modulo(2 * degreesFromUp(line.along) - degrees, 360);
