/** The straight cuts across a strip that part a blank from all that come after it. */
import { clip } from '../shape/half-plane.ts';
import type { Point, Polygon } from '../shape/point.ts';

/** A cut by where it meets the strip's near edge (y = 0) and its far edge (y = height). */
export interface Cut {
  readonly near: number;
  readonly far: number;
}

export interface CutRules {
  readonly height: number;
  /** Of the strip. */
  readonly length: number;
  /** Marks on whole multiples of it are preferred, then of a half and a quarter of it. null: none. */
  readonly ruler: number | null;
  /** What counts as touching. */
  readonly tolerance: number;
}

/** The finest marks offered, in parts of the ruler. */
export const RULER_PARTS: readonly number[] = [1, 2, 4];

/** Cuts offered for each fineness of marks: enough for a row to choose from so that no two of its cuts cross. */
const OFFERED = 6;
/** Marks looked at along the near edge for each fineness; far more than lie in any gap between neighbours. */
const MARKS = 200;

/**
 * Cuts that have a blank before them and all others after them: on the ruler's marks where any are, and those that touch on
 * both sides. None where no straight cut does.
 * @param own the blank's convex hull in the strip's frame: x along it, y from its near edge
 * @param others the convex hull of all that come after it
 * @param within whether the cut must meet both edges within the strip's length
 */
export function partingCuts(own: Polygon, others: Polygon, rules: CutRules, within: boolean): readonly Cut[] {
  const allowed = cutsBetween(own, others, rules, within, rules.tolerance);
  if (allowed.length === 0) {
    return [];
  }
  const touching = cutsBetween(own, others, rules, within, 1e-3 * rules.tolerance);
  // A row laid tight leaves nothing between neighbours but what counts as touching.
  const corners = touching.length > 0 ? touching : allowed;
  const onMarks = rules.ruler === null ? [] : RULER_PARTS.flatMap((part) => marked(allowed, rules.ruler! / part));
  const snapped = corners.map(([near, far]): Point => [snap(near, rules), snap(far, rules)]);
  // A mark at −0 is at 0.
  return [...onMarks, ...snapped].map(([near, far]) => ({ near: near + 0, far: far + 0 }));
}

/** A rounding beside a mark is the mark, and one beyond the strip's end is its end. */
function snap(value: number, { ruler, length }: CutRules): number {
  const step = ruler === null ? length : ruler / RULER_PARTS.at(-1)!;
  return [Math.round(value / step) * step, 0, length].find((mark) => Math.abs(value - mark) < 1e-6) ?? value;
}

/**
 * All cuts that part the two, as a polygon over (near, far): each corner of an outline bounds it by a straight line, since
 * a cut passes the height y at near + (far − near) y / height.
 */
function cutsBetween(
  own: Polygon,
  others: Polygon,
  { height, length }: CutRules,
  within: boolean,
  depth: number,
): Polygon {
  const [low, high] = within ? [0, length] : [-length, 2 * length];
  const bound = (cuts: Polygon, [x, y]: Point, side: 1 | -1): Polygon => {
    const share = Math.min(1, Math.max(0, y / height));
    const size = Math.hypot(1 - share, share);
    const normal: Point = [(side * (1 - share)) / size, (side * share) / size];
    return clip(cuts, { normal, reach: (side * x + depth) / size });
  };
  const all: Polygon = [
    [low, low],
    [high, low],
    [high, high],
    [low, high],
  ];
  const after = own.reduce((cuts, point) => bound(cuts, point, -1), all);
  return others.reduce((cuts, point) => bound(cuts, point, 1), after);
}

/** The cuts of the polygon whose marks are both multiples of `step`: those nearest the blank, and the nearest square one. */
function marked(cuts: Polygon, step: number): Polygon {
  const nears = cuts.map(([near]) => near);
  const firstMark = Math.ceil(Math.min(...nears) / step - 1e-6);
  const lastMark = Math.min(Math.floor(Math.max(...nears) / step + 1e-6), firstMark + MARKS);
  const found: Point[] = [];
  for (let mark = firstMark; mark <= lastMark; mark++) {
    const [low, high] = farRange(cuts, mark * step);
    const far = Math.ceil(low / step - 1e-6);
    if (far * step <= high + 1e-6 * step) {
      found.push([mark * step, far * step]);
      if (far < mark && mark * step <= high + 1e-6 * step) {
        found.push([mark * step, mark * step]);
      }
    }
  }
  found.sort((a, b) => a[0] + a[1] - b[0] - b[1]);
  const square = found.find(([near, far]) => near === far);
  return square === undefined ? found.slice(0, OFFERED) : [square, ...found.slice(0, OFFERED)];
}

/** How far the polygon reaches over one value of near. */
function farRange(cuts: Polygon, near: number): readonly [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  cuts.forEach((a, i) => {
    const b = cuts[(i + 1) % cuts.length]!;
    const [left, right] = a[0] <= b[0] ? [a, b] : [b, a];
    // The marks at the ends of its reach may miss it by a rounding.
    const at = Math.min(Math.max(near, left[0]), right[0]);
    if (Math.abs(at - near) > 1e-7) {
      return;
    }
    const ends =
      right[0] - left[0] < 1e-12
        ? [left[1], right[1]]
        : [left[1] + ((right[1] - left[1]) * (at - left[0])) / (right[0] - left[0])];
    low = Math.min(low, ...ends);
    high = Math.max(high, ...ends);
  });
  return [low, high];
}
