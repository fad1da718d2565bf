/** Patches that a ruler cuts as well as a template does: oblongs, and triangles that are half of a square. */
import { cornersOf, edgesOf } from '../shape/outline.ts';
import { distance, dot, subtract } from '../shape/point.ts';
import type { PaperPatch } from './pieces.ts';

export interface RulerShape {
  readonly kind: 'oblong' | 'half-square';
  /** As cut, with the allowance all round: sides of the oblong; of the square that is cut once corner to corner. In inches. */
  readonly sides: readonly [number, number];
}

const RIGHT = 1e-4;

/** @returns null where it takes a template */
export function rulerShape({ outline }: PaperPatch, allowance: number): RulerShape | null {
  const edges = edgesOf(outline);
  if (edges.some(({ arc }) => arc !== undefined)) return null;
  const corners = cornersOf(outline);
  const steps = corners.map((corner, i) => subtract(corners[(i + 1) % corners.length]!, corner));
  const squareAt = (i: number): boolean => {
    const [before, after] = [steps.at(i - 1)!, steps[i]!];
    return Math.abs(dot(before, after)) < RIGHT * Math.hypot(...before) * Math.hypot(...after);
  };
  const size = (i: number): number => distance(corners[i]!, corners[(i + 1) % corners.length]!);
  if (corners.length === 4 && corners.every((_, i) => squareAt(i))) {
    return { kind: 'oblong', sides: [size(0) + 2 * allowance, size(1) + 2 * allowance] };
  }
  const right = corners.length === 3 ? corners.findIndex((_, i) => squareAt(i)) : -1;
  if (right >= 0 && Math.abs(size(right) - size((right + 2) % 3)) < RIGHT * size(right)) {
    // Finished leg and (2 + √2) times the allowance: 7/8 in at 1/4.
    const side = size(right) + (2 + Math.SQRT2) * allowance;
    return { kind: 'half-square', sides: [side, side] };
  }
  return null;
}
