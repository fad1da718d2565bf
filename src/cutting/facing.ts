/** Which way a patch's print must point, in the unit's own frame. */

import type { Facing } from '../quilt/quilt.ts';
import type { Edge } from '../shape/outline.ts';
import { degreesFromUp, dot, length, modulo, type Point, subtract } from '../shape/point.ts';

/** A patch as its unit holds it at a place: already reflected where the place is mirrored, not yet turned. */
export interface PlacedPatch {
  /** The middle of its area. */
  readonly middle: Point;
  /** Its unit's axis, degrees anticlockwise from up, reflected too; null where the unit has none. */
  readonly axis: number | null;
  readonly edges: readonly Edge[];
  /** The unit's turn about the block's centre and the block's in the quilt, together. */
  readonly turn: number;
  /** Whether the place is mirrored. Default false. */
  readonly mirrored?: boolean;
}

/** Degrees anticlockwise from up in the unit's own frame; free; or why there is no answer, in words for a person. */
export type PrintDirection = number | 'free' | { readonly fault: string };

/** A middle nearer the block's centre than this part of the patch's size is at the centre. */
const AT_THE_CENTRE = 1e-6;

/**
 * The direction wanted in the finished quilt, with the block's turn and the unit's turn undone and nothing else. Outward,
 * inward and round turn with the patch, so undoing changes nothing in them; upright does not, so it takes all of it.
 * Clockwise is as seen in the finished quilt, on a mirrored patch too; "along" goes with its edge into the mirror.
 */
export function printDirection(facing: Facing, patch: PlacedPatch): PrintDirection {
  const direction = namedDirection(facing, patch);
  const { turned = 0 } = facing;
  return typeof direction === 'number' && turned !== 0
    ? modulo(direction + (patch.mirrored === true ? -turned : turned), 360)
    : direction;
}

function namedDirection(facing: Facing, patch: PlacedPatch): PrintDirection {
  switch (facing.to) {
    case 'free':
      return 'free';
    case 'upright':
      return modulo(-patch.turn, 360);
    case 'along':
      return alongEdge(facing, patch.edges);
    case 'outward':
      return fromOutward(facing, patch, 0);
    case 'inward':
      return fromOutward(facing, patch, 180);
    case 'clockwise':
      return fromOutward(facing, patch, -90);
    case 'anticlockwise':
      return fromOutward(facing, patch, 90);
  }
}

function alongEdge(facing: Facing, edges: readonly Edge[]): PrintDirection {
  const edge = edges[facing.edge ?? 0];
  if (edge === undefined) {
    return { fault: `its print is to run along edge ${facing.edge}, and it has edges 0 to ${edges.length - 1} only` };
  }
  const [from, to] = facing.sense === 'backward' ? [edge.to, edge.from] : [edge.from, edge.to];
  return degreesFromUp(subtract(to, from));
}

function fromOutward(facing: Facing, patch: PlacedPatch, more: number): PrintDirection {
  const outward = facing.from === 'axis' ? patch.axis : outwardOfMiddle(patch);
  if (outward === null) {
    const why =
      facing.from === 'axis'
        ? 'its unit goes all the way round the block’s centre and has no axis; give the unit an axis, or choose another facing'
        : 'its middle is the block’s centre, so it has no outward; choose another facing';
    return { fault: why };
  }
  return modulo(outward + more, 360);
}

function outwardOfMiddle({ middle, edges }: PlacedPatch): number | null {
  const size = Math.sqrt(
    Math.max(...edges.map((edge) => dot(subtract(edge.from, middle), subtract(edge.from, middle)))),
  );
  return length(middle) <= AT_THE_CENTRE * size ? null : degreesFromUp(middle);
}
