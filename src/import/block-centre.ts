/** Where a drawing has its centre, and how often it comes round about it. */
import { type Point, scale, subtract, turn } from '../shape/point.ts';
import { PlaceGrid } from './place-grid.ts';

/** A patch as far as symmetry goes. */
export interface PatchMass {
  readonly middle: Point;
  readonly area: number;
}

const MOST_TURNS = 72;
const MOST_PATCHES = 700;

/**
 * The middle of the area where the drawing comes round about it, as most blocks do, however odd their points; else the middle
 * of the box.
 */
export function blockCentre(patches: readonly PatchMass[], boxMiddle: Point, tolerance: number): Point {
  const total = patches.reduce((sum, { area }) => sum + area, 0);
  const weighed = patches.reduce<Point>(
    ([x, y], { middle, area }) => [x + middle[0] * area, y + middle[1] * area],
    [0, 0],
  );
  const middle = scale(weighed, 1 / total);
  if (Math.hypot(...subtract(middle, boxMiddle)) <= tolerance || patches.length > MOST_PATCHES) return boxMiddle;
  return comesRound(patches, middle, tolerance) > comesRound(patches, boxMiddle, tolerance) ? middle : boxMiddle;
}

/** The greatest number of equal turns about a place that each bring every patch onto one of the same area; 1 for none. */
export function comesRound(patches: readonly PatchMass[], about: Point, tolerance: number): number {
  const grid = new PlaceGrid(Math.max(tolerance * 3, 1e-6));
  const moved = patches.map(({ middle, area }) => ({ middle: subtract(middle, about), area }));
  for (const [index, { middle }] of moved.entries()) grid.add(middle, index);
  for (let turns = MOST_TURNS; turns > 1; turns--) {
    const onto = moved.every(({ middle, area }) => {
      const found = grid.near(turn(middle, 360 / turns), tolerance * 2);
      return found !== null && Math.abs(moved[found]!.area - area) <= 0.01 * area;
    });
    if (onto) return turns;
  }
  return 1;
}
