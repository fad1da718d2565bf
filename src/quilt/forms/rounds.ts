/** What rounds share: wedges of a ring, the disc in the middle, the ground that makes a square of them. Curved seams are sewn without paper. */
import type { OutlineEntry } from '../../shape/outline.ts';
import { degreesFromUp, distance, modulo, type Point } from '../../shape/point.ts';
import type { RoleSeed } from '../drawn-block.ts';
import type { Unit } from '../quilt.ts';
import { at, bow, hollow, numbered } from './drawing.ts';

/** One wedge of a ring, its middle up: two straight sides, the arc outside, the hollow arc inside. */
export function ringWedge(inner: number, outer: number, half: number): readonly OutlineEntry[] {
  return [at(inner, -half), at(outer, -half), bow(outer), at(outer, half), at(inner, half), hollow(inner)];
}

/** A whole disc about the centre. Two half circles, since no arc may end where it began. */
export const disc = (radius: number): readonly OutlineEntry[] => [
  at(radius, 90),
  bow(radius),
  at(radius, -90),
  bow(radius),
];

export const MIDDLE: RoleSeed = { id: 'middle', name: 'Middle', facing: { to: 'upright' } };
export const GROUND: RoleSeed = { id: 'ground', name: 'Ground', facing: { to: 'outward', from: 'axis' } };

export const discUnit = (radius: number): Omit<Unit, 'id'> => ({
  name: 'Middle',
  paper: false,
  repeat: { count: 1 },
  patches: numbered([['middle', disc(radius)]]),
});

/** The quarter of the square's ground above a round, between the diagonals. Its second edge is the block's outside. */
export function groundQuarter(radius: number, side: number): readonly OutlineEntry[] {
  const reach = side / 2;
  return [at(radius, -45), [reach, reach], [-reach, reach], at(radius, 45), hollow(radius)];
}

export const groundUnit = (radius: number, side: number): Omit<Unit, 'id'> => ({
  name: 'Ground',
  paper: false,
  repeat: { count: 4 },
  axis: 0,
  patches: numbered([['ground', groundQuarter(radius, side)]]),
});

/**
 * The square's ground round a polygon, parted at the diagonals into four pieces. Pieces that a half or quarter turn brings
 * onto each other are one unit.
 * @param corners of a polygon about the centre, anticlockwise; one after another they go round it once
 * @param fold into how many equal parts it may be turned onto itself
 */
export function groundRound(corners: readonly Point[], fold: number, side: number): readonly Omit<Unit, 'id'>[] {
  const repeats = fold % 4 === 0 ? 4 : fold % 2 === 0 ? 2 : 1;
  return Array.from({ length: 4 / repeats }, (_, quarter) => {
    const from = 90 * quarter - 45;
    const reach = side / Math.SQRT2;
    const edge = along(corners, from);
    const outline = [edge[0]!, at(reach, from), at(reach, from + 90), ...edge.slice(1).reverse()];
    return {
      name: 'Ground',
      paper: false,
      repeat: { count: repeats },
      axis: 90 * quarter,
      patches: numbered([['ground', outline]]),
    };
  });
}

/** The polygon's edge from where the direction `from` meets it to where the one a quarter turn on does, anticlockwise. */
function along(corners: readonly Point[], from: number): readonly Point[] {
  const beyond = (point: Point): number => modulo(degreesFromUp(point) - from + 1e-9, 360);
  const between = corners.filter((corner) => beyond(corner) < 90).sort((a, b) => beyond(a) - beyond(b));
  const ends = [meeting(corners, from), meeting(corners, from + 90)] as const;
  const inside = between.filter((corner) => ends.every((end) => distance(corner, end) > 1e-9 * Math.hypot(...corner)));
  return [ends[0], ...inside, ends[1]];
}

/** Where the ray from the centre in a direction meets the polygon. */
function meeting(corners: readonly Point[], degrees: number): Point {
  const [x, y] = at(1, degrees);
  for (let i = 0; i < corners.length; i++) {
    const [a, b] = [corners[i]!, corners[(i + 1) % corners.length]!];
    // The ray passes between two corners that it has on different hands and not behind it.
    const [before, after] = [x * a[1] - y * a[0], x * b[1] - y * b[0]];
    if (before <= 1e-12 && after > 1e-12) {
      const part = before / (before - after);
      const point: Point = [a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])];
      if (point[0] * x + point[1] * y > 0) {
        return point;
      }
    }
  }
  throw new RangeError(`no edge lies ${degrees}° from up; the polygon does not go round the centre`);
}
