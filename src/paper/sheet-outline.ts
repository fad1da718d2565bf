/** What the packer is told of a piece of paper: few straight edges round it, and the turns worth trying. */

import { growEvenly } from '../shape/grow.ts';
import { convexHull } from '../shape/hull.ts';
import { add, cross, distance, modulo, type Point, type Polygon, scale, subtract } from '../shape/point.ts';

/** Between two pieces there is room for scissors, in inches. */
const CLEARANCE = 0.04;
/** Corners are dropped, edges on both sides made longer, while that reaches no farther out than this. */
const COARSE = 0.08;
const FEW_EDGES = 5;
/** Edges shorter than this part of the longest are not laid along the sheet. */
const SHORT = 0.35;

/** Finely drawn arcs would each let their corners drift outward a little; only corners so far off a chord count. */
const FINE = 0.004;

/** Walks on along a chord as long as every corner passed stays within it. */
function everySoFar(hull: Polygon): Polygon {
  const kept: Point[] = [hull[0]!];
  for (let i = 0; i < hull.length - 1; ) {
    let next = i + 1;
    while (
      next + 1 < hull.length &&
      hull.slice(i + 1, next + 1).every((point) => off(hull[i]!, hull[next + 1]!, point) < FINE)
    )
      next++;
    kept.push(hull[next]!);
    i = next;
  }
  return kept;
}

const off = (from: Point, to: Point, point: Point): number =>
  Math.abs(cross(subtract(to, from), subtract(point, from))) / distance(from, to);

/** The piece's hull with clearance. */
export function sheetOutline(trim: Polygon): Polygon {
  let hull = growEvenly(everySoFar(convexHull(trim)), CLEARANCE);
  while (hull.length > FEW_EDGES) {
    const ways = hull.flatMap((_, i) => {
      const way = withoutEdge(hull, i);
      return way === null ? [] : [way];
    });
    const best = ways.reduce<(typeof ways)[number] | null>(
      (least, way) => (least === null || way.reach < least.reach ? way : least),
      null,
    );
    if (best === null || best.reach > COARSE) break;
    hull = best.hull;
  }
  return hull;
}

/** Edge i gone and its neighbours drawn out until they meet; null where they never do. */
function withoutEdge(hull: Polygon, i: number): { readonly hull: Polygon; readonly reach: number } | null {
  const at = (k: number): Point => hull[(i + k + hull.length) % hull.length]!;
  const [before, start, end, after] = [at(-1), at(0), at(1), at(2)];
  const [a, b] = [subtract(start, before), subtract(end, after)];
  const turned = cross(a, b);
  if (turned <= 1e-9) return null;
  const meeting = add(start, scale(a, cross(subtract(end, start), b) / turned));
  const along = subtract(end, start);
  const reach = Math.abs(cross(along, subtract(meeting, start))) / distance(start, end);
  const rest = hull.filter((_, k) => k !== i && k !== (i + 1) % hull.length);
  const where = i + 1 === hull.length ? i - 1 : i;
  return { hull: [...rest.slice(0, where), meeting, ...rest.slice(where)], reach };
}

/** Turns that lay a long edge along or square to the sheet, and those that keep the piece as drawn or turn it by quarters. */
export function sheetTurns(outline: Polygon): readonly number[] {
  const edges = outline.map((from, i) => subtract(outline[(i + 1) % outline.length]!, from));
  const longest = Math.max(...edges.map((edge) => Math.hypot(...edge)));
  const along = edges
    .filter((edge) => Math.hypot(...edge) >= SHORT * longest)
    .map(([x, y]) => (Math.atan2(y, x) * 180) / Math.PI);
  const turns = [0, ...along.map((degrees) => -degrees)].flatMap((turn) =>
    [0, 90, 180, 270].map((more) => modulo(turn + more, 360)),
  );
  return turns.filter(
    (turn, i) => turns.findIndex((other) => Math.abs(modulo(other - turn + 180, 360) - 180) < 1e-6) === i,
  );
}
