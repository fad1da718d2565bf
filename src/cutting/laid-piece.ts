/**
 * How the cut piece of a patch lies on its foundation before it is flipped, seen from the paper's printed side, where the drawing is
 * the mirror image of the finished front. Mirror image and flip together are a plain turn, so the print is seen in its own hand
 * before the flip and mirrored after it.
 */
import { edgesOf, mirrorOutline, type Outline } from '../shape/outline.ts';
import { modulo, type Point, type Polygon } from '../shape/point.ts';
import { mirrorPolygon } from '../shape/polygon.ts';
import { acrossSeam, printBeforeFlip } from './before-flip.ts';
import { type Making, roughPatch } from './rough-patch.ts';
import { seamLine } from './seam-line.ts';

/** All as seen from the paper side, in the unit's frame with x turned round. */
export interface LaidPiece {
  /** The line on which it is sewn; null for the first patch, which is laid in its place, wrong side to the paper. */
  readonly seam: { readonly from: Point; readonly to: Point } | null;
  /** The piece with its allowance and room, before the flip (the first: where it stays). */
  readonly piece: Polygon;
  /** The same after the flip. */
  readonly flipped: Polygon;
  /** Where the print's up points before and after, degrees anticlockwise from up; null where it may lie any way. */
  readonly up: { readonly before: number; readonly after: number } | null;
}

/**
 * @param outline the patch as the unit holds it, from the front
 * @param up where its print's up points there, degrees anticlockwise from up, or null
 */
export function laidPiece(outline: Outline, making: Making, up: number | null): LaidPiece {
  const flipped = mirrorPolygon(roughPatch(outline, making).rough);
  const edge = making.sewnEdge === null ? undefined : edgesOf(mirrorOutline(outline))[making.sewnEdge];
  const after = up === null ? null : modulo(-up, 360);
  if (edge === undefined) {
    return { seam: null, piece: flipped, flipped, up: after === null ? null : { before: after, after } };
  }
  const line = seamLine(edge.from, edge.to);
  return {
    seam: { from: edge.from, to: edge.to },
    piece: flipped.map((place) => acrossSeam(line, place)).reverse(),
    flipped,
    up: after === null ? null : { before: printBeforeFlip(line, after), after },
  };
}
