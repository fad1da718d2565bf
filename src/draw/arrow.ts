import { add, fromUp, type Point, scale } from '../shape/point.ts';
import { lineRun, type PathItem, type Run } from './display-list.ts';

/**
 * An arrow about its middle. Two heads where a print reads either way.
 * @param degrees anticlockwise from up
 */
export function arrow(middle: Point, degrees: number, length: number, heads: 1 | 2): PathItem {
  const half = scale(fromUp(degrees), length / 2);
  const tip = add(middle, half);
  const tail = add(middle, scale(half, -1));
  const runs = [lineRun(tail, tip), head(tip, degrees, length * 0.38)];
  return {
    kind: 'path',
    class: 'arrow',
    runs: heads === 2 ? [...runs, head(tail, degrees + 180, length * 0.38)] : runs,
  };
}

function head(tip: Point, degrees: number, length: number): Run {
  const barb = (turn: number): Point => add(tip, scale(fromUp(degrees + turn), length));
  return lineRun(barb(145), tip, barb(-145));
}
