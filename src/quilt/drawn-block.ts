/** A block on its way into a quilt: what a form, a table of measured pieces, an imported drawing or a tracing yields. */
import type { BlankShapeKind, Facing, Unit } from './quilt.ts';
import type { TracedFrom } from './tracing/traced-from.ts';

/** A role that the block's patches name, for a quilt that may not have it yet. */
export interface RoleSeed {
  readonly id: string;
  readonly name: string;
  readonly facing: Facing;
  /** Default: as a role's. */
  readonly shapes?: readonly BlankShapeKind[];
}

/** Outlines are about the block's centre, in the quilt's unit, anticlockwise. */
export interface DrawnBlock {
  readonly name: string;
  readonly units: readonly Unit[];
  /** As of a block. Default false. */
  readonly loose?: boolean;
  /** As of a block. */
  readonly traced?: TracedFrom;
  /** Every role that a patch names, once. */
  readonly roles: readonly RoleSeed[];
}
