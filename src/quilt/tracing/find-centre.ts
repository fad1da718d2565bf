/** The block's centre, found from what is traced. */
import { distance, type Point, scale, subtract, turn } from '../../shape/point.ts';
import { edgeOfLine, middleOf } from './line-shape.ts';
import { cornersOfPatch, type TracedUnit, type Tracing } from './tracing.ts';

export interface FoundCentre {
  readonly centre: Point;
  /** About how far off it may be, if every click may be off by `slip`. */
  readonly within: number;
}

/**
 * The common centre of all arcs, by least squares: on each arc 2 c·(P − P̄) = |P|² − mean |P|² for its ends and middle.
 * After I. Kåsa, "A circle fitting procedure and its error analysis", IEEE Trans. Instrum. Meas. 25 (1976), one centre for
 * several radii. null where there are no arcs, or where they tell nothing.
 * @param slip how far a click may be off
 */
export function centreOfArcs(tracing: Tracing, slip: number): FoundCentre | null {
  let [xx, xy, yy, xs, ys] = [0, 0, 0, 0, 0];
  let radii = 0;
  let arcs = 0;
  for (const line of tracing.lines) {
    const edge = edgeOfLine(tracing, line);
    if (edge.arc === undefined) continue;
    const places = [edge.from, middleOf(edge), edge.to];
    const mean = scale(
      places.reduce<Point>((sum, each) => [sum[0] + each[0], sum[1] + each[1]], [0, 0]),
      1 / 3,
    );
    // About their own mean the squares stay small, so that no digits are lost far from the origin.
    const squares = places.map((each) => distance(each, mean) ** 2);
    const square = squares.reduce((sum, each) => sum + each, 0) / 3;
    places.forEach((each, i) => {
      const [x, y] = subtract(each, mean);
      const right = (squares[i]! - square) / 2 + x * mean[0] + y * mean[1];
      xx += x * x;
      xy += x * y;
      yy += y * y;
      xs += x * right;
      ys += y * right;
    });
    radii += edge.arc.radius ** 2;
    arcs++;
  }
  const det = xx * yy - xy * xy;
  if (arcs === 0 || !(det > 1e-12 * (xx + yy) ** 2)) return null;
  const centre: Point = [(yy * xs - xy * ys) / det, (xx * ys - xy * xs) / det];
  const least = (xx + yy - Math.sqrt((xx - yy) ** 2 + 4 * xy * xy)) / 2;
  return { centre, within: (slip * Math.sqrt(radii / arcs)) / Math.sqrt(least) };
}

/**
 * The centre about which a unit's copies join on to it: each corner on its one side, turned by one step, is a corner on its other.
 * Pairs of corners each tell a centre; the one that most pairs tell is meant. null where no two pairs agree.
 * @param within how far centres told by two pairs may differ
 */
export function centreOfCopies(tracing: Tracing, unit: TracedUnit, within: number): Point | null {
  if (unit.count < 2 || unit.mirrored !== 'no') return null;
  const patches = tracing.patches.filter((patch) => patch.unit === unit.id);
  const corners = [...new Set(patches.flatMap((patch) => cornersOfPatch(tracing, patch)))];
  const told: { centre: Point; weight: number }[] = [];
  for (const a of corners) {
    for (const b of corners) {
      if (a !== b) told.push({ centre: turnedAbout(a.at, b.at, 360 / unit.count), weight: distance(a.at, b.at) });
    }
  }
  // A short pair tells its centre less surely than a long one.
  let best: { centre: Point; sum: number; pairs: number } | null = null;
  for (const one of told) {
    const near = told.filter((other) => distance(other.centre, one.centre) <= within);
    const sum = near.reduce((total, each) => total + each.weight ** 2, 0);
    if (
      near.length >= 2 &&
      (best === null || near.length > best.pairs || (near.length === best.pairs && sum > best.sum))
    ) {
      const mean = near.reduce<Point>(
        (total, each) => [
          total[0] + (each.centre[0] * each.weight ** 2) / sum,
          total[1] + (each.centre[1] * each.weight ** 2) / sum,
        ],
        [0, 0],
      );
      best = { centre: mean, sum, pairs: near.length };
    }
  }
  return best?.centre ?? null;
}

/** The place about which a is turned to b: halfway between, and off to the left by half their distance over tan(half the turn). */
function turnedAbout(a: Point, b: Point, degrees: number): Point {
  const half = scale(subtract(b, a), 0.5);
  const aside = turn(half, 90);
  const by = 1 / Math.tan((degrees * Math.PI) / 360);
  return [a[0] + half[0] + aside[0] * by, a[1] + half[1] + aside[1] * by];
}
