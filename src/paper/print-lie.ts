/** How a patch's print or grain lies in its unit, at one place of one copy of its block. */
import { printDirection } from '../cutting/facing.ts';
import { mainDirection } from '../cutting/frame.ts';
import type { Side } from '../cutting/rough-patch.ts';
import { isDirectional } from '../cutting/turn-sets.ts';
import { facingOf } from '../quilt/facing-of.ts';
import type { Place } from '../quilt/places.ts';
import type { Block, Cloth, Patch, Role } from '../quilt/quilt.ts';
import { edgesOf, mirrorOutline } from '../shape/outline.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { modulo, subtract } from '../shape/point.ts';

/** Degrees anticlockwise from up, in the unit's own frame (mirrored where the place is); null where there is nothing to say. */
export interface PrintLie {
  readonly arrow: { readonly degrees: number; readonly heads: 1 | 2 } | null;
  readonly grain: number | null;
}

/**
 * @param turn the unit's and the block's together
 * @param axis of the unit as drawn
 * @param outside the patch's edges that lie on the block's straight outside
 */
export function printLie(
  block: Block,
  patch: Patch,
  role: Role | undefined,
  cloths: readonly Cloth[],
  place: Place,
  turn: number,
  axis: number | null,
  outside: readonly number[],
): PrintLie {
  const facing = facingOf(block, patch, role ?? { facing: { to: 'free' } }, place.index);
  const outline = place.mirrored ? mirrorOutline(patch.outline) : patch.outline;
  const edges = edgesOf(outline);
  const directional = cloths.find(isDirectional);
  if (directional !== undefined && facing.to !== 'free') {
    const middle = outlineCentroid(outline);
    const own = axis === null || !place.mirrored ? axis : -axis;
    const direction = printDirection(facing, { middle, axis: own, edges, turn, mirrored: place.mirrored });
    if (typeof direction === 'number') {
      return { arrow: { degrees: direction, heads: directional.print === 'one-way' ? 1 : 2 }, grain: null };
    }
  }
  if (role?.biasAllowed === true || outside.length === 0) {
    return { arrow: null, grain: null };
  }
  const sides = outside.map((index): Side => {
    const edge = edges[index]!;
    return { along: subtract(edge.to, edge.from), straight: edge.arc === undefined };
  });
  return { arrow: null, grain: modulo(mainDirection(sides) - 90, 180) };
}
