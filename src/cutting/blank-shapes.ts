/** The shapes in which a patch's blank may be cut, all in the patch's frame: see README.md for what each is. */
import type { BlankShapeKind } from '../quilt/quilt.ts';
import { convexHull } from '../shape/hull.ts';
import type { Point, Polygon } from '../shape/point.ts';
import { polygonArea, polygonBox, tidyPolygon, turnPolygon } from '../shape/polygon.ts';
import { coversInPlace, coversWhenFlipped } from './coverage.ts';
import { type RoughPatch, turnRough } from './rough-patch.ts';
import { roundUp, smallestSlant } from './slant.ts';

/** A slant that is not level with the frame must be this much smaller than a level one to be worth it. */
const WORTH_LEANING = 0.99;

/**
 * @param angles for each cloth, the turns (degrees) after which a slant's parallel sides may run along x
 * @returns one shape; of slants one for each cloth that wants its own
 * @throws Error where a shape would not cover its patch: that is a fault in this program
 */
export function shapesOfKind(
  kind: BlankShapeKind,
  rough: RoughPatch,
  angles: readonly (readonly number[])[],
  ruler: number,
): readonly Polygon[] {
  if (kind === 'outline') {
    return [checked(rough.template, coversWhenFlipped(rough.template, rough))];
  }
  return kind === 'box' ? [boxOf(rough, ruler)] : angles.map((each) => bestSlant(rough, each, ruler));
}

function checked(outline: Polygon, covers: boolean): Polygon {
  if (!covers) {
    throw new Error(`a blank does not cover its patch once sewn: ${JSON.stringify(outline)}`);
  }
  return outline;
}

/** The rectangle along x and y, its sides rounded up; what that adds is shared out, but none goes to a sewn side. */
export function boxOf(rough: RoughPatch, ruler: number): Polygon {
  const { min, max } = polygonBox(rough.rough);
  const lean = leanOf(rough);
  const [x, width] = roundedSpan(min[0], max[0], ruler, lean[0]);
  const [y, height] = roundedSpan(min[1], max[1], ruler, lean[1]);
  const outline: Polygon = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return checked(outline, coversInPlace(outline, rough));
}

function roundedSpan(from: number, to: number, ruler: number, lean: number): readonly [from: number, size: number] {
  const size = roundUp((to - from) / ruler) * ruler;
  const slack = size - (to - from);
  return [from - (lean < 0 ? 0 : lean > 0 ? slack : slack / 2), size];
}

/** Which way the sewn side faces in the frame, where it lies near an upright or a level side. */
function leanOf({ seam }: RoughPatch): Point {
  if (seam === null) {
    return [0, 0];
  }
  const [x, y] = seam.normal;
  return Math.abs(x) > Math.abs(y) ? [Math.sign(x), 0] : [0, Math.sign(y)];
}

/** The smallest slant over the angles. */
function bestSlant(rough: RoughPatch, angles: readonly number[], ruler: number): Polygon {
  let best: Polygon | null = null;
  for (const angle of angles) {
    const outline = slantOf(rough, angle, ruler);
    if (best === null || polygonArea(outline) < polygonArea(best) * WORTH_LEANING) {
      best = outline;
    }
  }
  return best!;
}

/** The smallest slant whose parallel sides run along x once the frame is turned by the angle. */
export function slantOf(rough: RoughPatch, angle: number, ruler: number): Polygon {
  const turned = turnRough(rough, angle);
  let cover = convexHull(turned.roughAskew);
  // Rarely, rounded slopes turn a sewn side so far that nothing near the smallest serves: then more is covered.
  for (let tries = 0; tries < 8; tries++) {
    const outline = smallestSlant(cover, ruler, leanOf(turned), (each) => coversWhenFlipped(each, turned));
    if (outline !== null) {
      return turnPolygon(tidyPolygon(outline), -angle);
    }
    cover = convexHull(
      cover.flatMap(([x, y]) => [-ruler, ruler].flatMap((a) => [-ruler, ruler].map((b): Point => [x + a, y + b]))),
    );
  }
  throw new Error('no slanted blank covers the patch once sewn');
}
