/** The facings that a patch has a name for, and the one that is meant by a direction pointed out on the picture. */
import type { Facing } from '../quilt/quilt.ts';
import { modulo } from '../shape/point.ts';
import { type BlockPatch, printInBlock } from './block-patches.ts';

export interface FacingChoice {
  readonly facing: Facing;
  /** In the block, degrees anticlockwise from up. */
  readonly degrees: number;
}

const NAMED = ['outward', 'inward', 'clockwise', 'anticlockwise', 'upright'] as const;

/** Every facing with a name, each with where it points at this place; edges last, each both ways. */
export function facingChoices(patch: BlockPatch, from: Facing['from']): readonly FacingChoice[] {
  const named = NAMED.map((to): Facing => ({ to, ...(from === 'axis' && to !== 'upright' && { from }) }));
  const along = patch.placed.edges.flatMap(({ arc }, edge): readonly Facing[] =>
    arc === undefined
      ? [
          { to: 'along', edge },
          { to: 'along', edge, sense: 'backward' },
        ]
      : [],
  );
  return [...named, ...along].flatMap((facing) => {
    const degrees = printInBlock(facing, patch);
    return degrees === null ? [] : [{ facing, degrees }];
  });
}

/** The direction from one angle to another, from −180 to 180. */
export const swing = (from: number, to: number): number => modulo(to - from + 180, 360) - 180;

/**
 * The facing that is meant by pointing somewhere: one with a name where it points nearly there, else the present one turned on
 * by whole degrees. What is named first wins where two point the same way.
 * @param degrees in the block, anticlockwise from up
 * @param near how many degrees off a name still catches
 */
export function facingToward(patch: BlockPatch, degrees: number, present: Facing, near: number): Facing {
  const choices = facingChoices(patch, present.from);
  const within = present.within === undefined ? {} : { within: present.within };
  const offs = choices.map((choice) => Math.abs(swing(choice.degrees, degrees)));
  const least = Math.min(...offs);
  if (least <= near) {
    return { ...choices[offs.findIndex((off) => off <= least + 1e-6)]!.facing, ...within };
  }
  const { turned: _, ...plain } = present;
  const base = printInBlock(plain, patch) === null ? choices[0]?.facing : plain;
  const start = base === undefined ? null : printInBlock(base, patch);
  if (base === undefined || start === null) {
    return present;
  }
  const off = Math.round(swing(start, degrees));
  return { ...base, ...within, ...(off !== 0 && { turned: patch.placed.mirrored === true ? -off : off }) };
}
