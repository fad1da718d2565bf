/** Finds a unit's patches among the lines of a page: the same lengths and corners, turned and moved but never reflected. */

import { convert } from '../../src/quilt/measure.ts';
import { placesOf } from '../../src/quilt/places.ts';
import type { LengthUnit, Unit } from '../../src/quilt/quilt.ts';
import { cornersOf } from '../../src/shape/outline.ts';
import type { PageRead, Point } from './read-pdf.ts';

/** A hundredth of an inch, in points. */
export const CLOSE = 0.72;

export interface ModelPatch {
  readonly name: string;
  /** In points. */
  readonly corners: readonly Point[];
}

/** A unit's patches in points as its front shows them at a place, or reflected, as paper does. */
export function modelOf(
  unit: Unit,
  lengths: LengthUnit,
  isMirroredPlace: boolean,
  isPaper: boolean,
): readonly ModelPatch[] {
  const points = convert(1, lengths, 'in') * 72;
  const x = (isMirroredPlace ? -1 : 1) * (isPaper ? -1 : 1) * points;
  return unit.patches.map((patch) => ({
    name: `${unit.id}${patch.number}${isMirroredPlace ? 'm' : ''}`,
    corners: cornersOf(patch.outline).map((corner): Point => [corner[0] * x, corner[1] * points]),
  }));
}

export const handsOf = (unit: Unit): readonly boolean[] => [...new Set(placesOf(unit).map(({ mirrored }) => mirrored))];

/** A turn and a step. */
export type Motion = (point: Point) => Point;

/** Each place on the page where all patches of the model are drawn, every corner within a hundredth of an inch. */
export function findPieces(page: PageRead, model: readonly ModelPatch[]): readonly Motion[] {
  const shapes = page.runs.filter(({ closed }) => closed).map(({ corners }) => corners);
  const [first] = model;
  const found: Motion[] = [];
  for (const shape of shapes) {
    for (const start of shape.keys()) {
      for (const end of shape.keys()) {
        const motion =
          start === end ? null : motionFrom(first!.corners[0]!, first!.corners[1]!, shape[start]!, shape[end]!);
        if (
          motion !== null &&
          model.every((patch) => isDrawn(patch, motion, shapes)) &&
          !found.some((other) => same(other, motion, first!))
        ) {
          found.push(motion);
        }
      }
    }
  }
  return found;
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function motionFrom(a: Point, b: Point, toA: Point, toB: Point): Motion | null {
  if (Math.abs(apart(a, b) - apart(toA, toB)) > CLOSE) return null;
  const turned = Math.atan2(toB[1] - toA[1], toB[0] - toA[0]) - Math.atan2(b[1] - a[1], b[0] - a[0]);
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  return ([x, y]) => [toA[0] + (x - a[0]) * c - (y - a[1]) * s, toA[1] + (x - a[0]) * s + (y - a[1]) * c];
}

/** Some shape has a corner wherever the patch has one. Arcs of a shape may bring corners of their own. */
function isDrawn({ corners }: ModelPatch, motion: Motion, shapes: readonly (readonly Point[])[]): boolean {
  const wanted = corners.map(motion);
  return shapes.some(
    (shape) =>
      wanted.every((corner) => shape.some((other) => apart(other, corner) <= CLOSE)) && isNoLarger(shape, wanted),
  );
}

/** The dashed line round all is not taken for a patch: a patch's shape lies within its corners' box, but for the bulge of an arc. */
function isNoLarger(shape: readonly Point[], corners: readonly Point[]): boolean {
  const size = (points: readonly Point[]) => Math.max(...points.flatMap((a) => points.map((b) => apart(a, b))));
  return size(shape) <= size(corners) * 1.1 + 2 * CLOSE;
}

const same = (a: Motion, b: Motion, { corners }: ModelPatch): boolean =>
  corners.every((corner) => apart(a(corner), b(corner)) < 4 * CLOSE);
