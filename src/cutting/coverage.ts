/** Whether a blank covers its patch once it is sewn: checked, not assumed. */
import { covers } from '../shape/combine.ts';
import { type HalfPlane, halfPlanesOf } from '../shape/half-plane.ts';
import { cross, dot, type Point, type Polygon } from '../shape/point.ts';
import { isConvex, reach, turnPolygon } from '../shape/polygon.ts';
import type { RoughPatch, Seam } from './rough-patch.ts';

/** A side within this many degrees of the seam is the one that she lays level with the trimmed allowance. */
const LEVEL_DEGREES = 5;
/** Sizes are rounded up with this much forgiven, so coverage forgives it too. */
const FORGIVEN = 1e-6;

/**
 * A blank cut as a template or at a slant is laid right side down over the patches sewn before, its sewn side level with
 * their trimmed allowance, `allowance` past the seam line; it is sewn along the line and flipped about it. Being turned over
 * twice, it comes to lie as it was drawn, with that side `allowance` past the line on the other hand. Laid so it must cover
 * the sewn patch, also when askew; along the seam she may set it where it serves best.
 * A blank none of whose sides is near the seam's direction is laid by its drawn place, and checked there.
 */
export function coversWhenFlipped(blank: Polygon, rough: RoughPatch): boolean {
  const { seam, needed, allowance } = rough;
  if (!isConvex(blank)) {
    return needed.every((each) => covers(blank, each));
  }
  const side = seam === null ? null : levelSide(blank, seam);
  if (seam === null || side === null) {
    return coversSomewhere(halfPlanesOf(blank), needed, null);
  }
  // The raw edge itself is not asked: past the seam the allowance is all there is, by the way the blank is laid.
  const level = layLevel(blank, side, seam, allowance).filter((_, i) => i !== side);
  return coversSomewhere(level, needed, [-seam.normal[1], seam.normal[0]]);
}

/** A box on the print has no sewn side of its own: it must cover the sewn patch where it finally lies. */
export function coversInPlace(blank: Polygon, rough: RoughPatch): boolean {
  return coversSomewhere(halfPlanesOf(blank), [rough.sewn], null);
}

/** The side that she lays level: its index, or null where none runs near the seam's direction. */
export function levelSide(blank: Polygon, seam: Seam): number | null {
  const straightness = halfPlanesOf(blank).map(({ normal }) => dot(normal, seam.normal));
  const best = straightness.indexOf(Math.max(...straightness));
  return straightness[best]! >= Math.cos((LEVEL_DEGREES * Math.PI) / 180) ? best : null;
}

/** The blank's sides once the given one runs along the line `allowance` past the seam. */
function layLevel(blank: Polygon, side: number, seam: Seam, allowance: number): readonly HalfPlane[] {
  const normal = halfPlanesOf(blank)[side]!.normal;
  const degrees = (Math.atan2(cross(normal, seam.normal), dot(normal, seam.normal)) * 180) / Math.PI;
  const turned = halfPlanesOf(turnPolygon(blank, degrees, blank[side]!));
  const step = dot(seam.from, seam.normal) + allowance - turned[side]!.reach;
  return turned.map((each) => ({ normal: each.normal, reach: each.reach + step * dot(each.normal, seam.normal) }));
}

/** Whether some one slide along the line (none where null) brings all the polygons inside all the sides. */
function coversSomewhere(sides: readonly HalfPlane[], polygons: readonly Polygon[], line: Point | null): boolean {
  let least = line === null ? 0 : Number.NEGATIVE_INFINITY;
  let most = line === null ? 0 : Number.POSITIVE_INFINITY;
  for (const { normal, reach: limit } of sides) {
    const over = Math.max(...polygons.map((each) => reach(each, normal))) - limit;
    const gain = line === null ? 0 : dot(normal, line);
    if (Math.abs(gain) < 1e-9) {
      if (over > FORGIVEN) {
        return false;
      }
    } else if (gain > 0) {
      least = Math.max(least, (over - FORGIVEN) / gain);
    } else {
      most = Math.min(most, (over - FORGIVEN) / gain);
    }
  }
  return least <= most;
}
