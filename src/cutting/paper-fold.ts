/**
 * Before a patch is sewn, the paper is folded back along the line of its seam, and what was sewn before is trimmed there. So
 * along that fold, as far as the paper goes on without a gap, nothing sewn before may reach across the line.
 */
import type { Point, Polygon } from '../shape/point.ts';
import { isInside } from '../shape/polygon.ts';
import { alongLine, offLine, type SeamLine, slackAt } from './seam-line.ts';

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches of the line, measured along it, in which paper is folded when the seam is sewn.
 * @param paper all patches of the unit
 * @param seam the parts of the line that are sewn
 */
export function foldOf(
  line: SeamLine,
  paper: readonly Polygon[],
  seam: readonly Stretch[],
  tolerance: number,
): readonly Stretch[] {
  const whole = joined(
    paper.flatMap((patch) => stretchesIn(patch, line, tolerance)),
    2 * tolerance,
  );
  return whole.filter((stretch) => seam.some((part) => part.from < stretch.to && part.to > stretch.from));
}

/** Whether a patch reaches across the line, to its left, somewhere in the fold. */
export function reachesAcross(patch: Polygon, line: SeamLine, fold: readonly Stretch[], tolerance: number): boolean {
  return patch.some((from, i) => {
    const to = patch[(i + 1) % patch.length]!;
    const [a, b] = [sideOf(line, from, tolerance), sideOf(line, to, tolerance)];
    if (a > 0 === b > 0) {
      return false;
    }
    const at = crossing(line, from, to);
    return fold.some((stretch) => at >= stretch.from - tolerance && at <= stretch.to + tolerance);
  });
}

/** 1 to the left, -1 to the right, 0 on the line. */
export function sideOf(line: SeamLine, place: Point, tolerance: number): -1 | 0 | 1 {
  const off = offLine(line, place);
  return Math.abs(off) <= slackAt(line, alongLine(line, place), tolerance) ? 0 : off > 0 ? 1 : -1;
}

/** Where the line between two places on different sides, or one of them on it, meets the line. */
function crossing(line: SeamLine, a: Point, b: Point): number {
  const [offA, offB] = [offLine(line, a), offLine(line, b)];
  const share = offA === offB ? 0 : Math.min(1, Math.max(0, offA / (offA - offB)));
  return alongLine(line, a) + share * (alongLine(line, b) - alongLine(line, a));
}

/** Where the line runs through a patch or along it, measured along the line; a corner that it touches is a stretch of no length. */
export function stretchesIn(patch: Polygon, line: SeamLine, tolerance: number): readonly Stretch[] {
  const sides = patch.map((corner) => sideOf(line, corner, tolerance));
  const marks: number[] = [];
  const alongEdges: Stretch[] = [];
  patch.forEach((from, i) => {
    const next = (i + 1) % patch.length;
    const to = patch[next]!;
    if (sides[i] === 0) {
      marks.push(alongLine(line, from));
      if (sides[next] === 0) {
        alongEdges.push(between(alongLine(line, from), alongLine(line, to)));
      }
    } else if (sides[next] === -sides[i]!) {
      marks.push(crossing(line, from, to));
    }
  });
  marks.sort((a, b) => a - b);
  const points = marks.map((at) => ({ from: at, to: at }));
  const inside = marks.slice(1).flatMap((to, i) => {
    const from = marks[i]!;
    const middle: Point = [
      line.from[0] + (line.along[0] * (from + to)) / 2,
      line.from[1] + (line.along[1] * (from + to)) / 2,
    ];
    return isInside(patch, ...middle) ? [{ from, to }] : [];
  });
  return [...points, ...inside, ...alongEdges];
}

const between = (a: number, b: number): Stretch => ({ from: Math.min(a, b), to: Math.max(a, b) });

/** Stretches that touch, or leave no more than `gap` between them, made one. */
export function joined(stretches: readonly Stretch[], gap: number): readonly Stretch[] {
  const sorted = [...stretches].sort((a, b) => a.from - b.from);
  const whole: Stretch[] = [];
  for (const stretch of sorted) {
    const last = whole.at(-1);
    if (last !== undefined && stretch.from <= last.to + gap) {
      whole[whole.length - 1] = { from: last.from, to: Math.max(last.to, stretch.to) };
    } else {
      whole.push(stretch);
    }
  }
  return whole;
}
