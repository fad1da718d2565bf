import { add, fromUp, type Point, scale } from '../shape/point.ts';
import { lineRun, type PathItem, type Run } from './display-list.ts';

/** How broad an arrow's head is, and how long, for an arrow of length 1. */
export const ARROW_BREADTH = 0.5;
const HEAD = 0.38;
/** Two heads leave some shaft between them. */
const HEAD_OF_TWO = 0.3;
/** A barb stands this far back from the way the arrow points, in degrees. */
const BARB = 145;

/**
 * An arrow about its middle. Two heads where a print reads either way.
 * @param degrees anticlockwise from up
 */
export function arrow(middle: Point, degrees: number, length: number, heads: 1 | 2): PathItem {
  const half = scale(fromUp(degrees), length / 2);
  const [tip, tail] = [add(middle, half), add(middle, scale(half, -1))];
  const size = length * (heads === 2 ? HEAD_OF_TWO : HEAD);
  const runs = [lineRun(tail, tip), head(tip, degrees, size)];
  return {
    kind: 'path',
    class: 'arrow',
    runs: heads === 2 ? [...runs, head(tail, degrees + 180, size)] : runs,
  };
}

function head(tip: Point, degrees: number, size: number): Run {
  const barb = (turned: number): Point => add(tip, scale(fromUp(degrees + turned), size));
  return lineRun(barb(BARB), tip, barb(-BARB));
}
