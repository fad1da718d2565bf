/** The turns that a cloth allows a blank, in degrees anticlockwise modulo 360, the frame's up lying on the cloth's +y at 0. */
import type { TurnRange, Turns } from '../plan/layout-job.ts';
import type { Cloth } from '../quilt/quilt.ts';
import { modulo } from '../shape/point.ts';

/** Whether the print has a direction that a facing can mean. */
export const isDirectional = (cloth: Cloth): boolean => cloth.print !== 'tossed' && cloth.print !== 'solid';

/** The turns after which a directional print looks the same, by print. */
const PRINT_TURNS = { 'one-way': [0], 'two-way': [0, 180], check: [0, 90, 180, 270] } as const;

/**
 * Turns of a blank whose frame has the print's up at +y. A print whose up runs across the cloth (+x) takes a quarter turn
 * clockwise from there.
 * @param within tolerance either way
 */
export function printTurns(cloth: Cloth, within: number): Turns {
  if (cloth.print === 'tossed' || cloth.print === 'solid') {
    return 'any';
  }
  const quarter = cloth.up === 'across' ? -90 : 0;
  return ranges(
    PRINT_TURNS[cloth.print].map((turn) => turn + quarter),
    within,
  );
}

/** The four turns that lay an edge, which runs at `degrees` anticlockwise from +x in the frame, along or across the grain. */
export function grainTurns(degrees: number, within: number): Turns {
  return ranges(
    [0, 90, 180, 270].map((quarter) => quarter - degrees),
    within,
  );
}

function ranges(centres: readonly number[], within: number): Turns {
  if (2 * within >= 360 / centres.length) {
    return 'any';
  }
  const tidy = centres.map((centre) => (Math.round(modulo(centre, 360) * 1e9) / 1e9) % 360).sort((a, b) => a - b);
  return tidy.map((centre): TurnRange => (within > 0 ? { centre, within } : centre));
}

/** The centres of the ranges; null for any turn. */
function centresOf(turns: Turns): readonly number[] | null {
  return turns === 'any' ? null : turns.map((range) => (typeof range === 'number' ? range : range.centre));
}

/** The least turn, 90, 180 or 360, that maps a set onto itself; 0 where any turn does. */
export function periodOf(turns: Turns): number {
  const centres = centresOf(turns);
  return centres === null ? 0 : 360 / centres.length;
}

/**
 * Whether a blank may be turned over in this set: the engine takes x to −x after the turn, which keeps a print's up only
 * where the set holds the opposite of each of its turns.
 */
export function mayTurnOver(turns: Turns): boolean {
  const centres = centresOf(turns);
  return centres === null || centres.every((a) => centres.some((b) => Math.abs(modulo(a + b + 180, 360) - 180) < 1e-6));
}

export const sameTurns = (a: Turns, b: Turns, within = 1e-6): boolean => {
  if (a === 'any' || b === 'any') {
    return a === b;
  }
  return (
    a.length === b.length &&
    a.every((range, i) => {
      const [one, other] = [range, b[i]!].map((each) =>
        typeof each === 'number' ? { centre: each, within: 0 } : each,
      );
      return (
        Math.abs(modulo(one!.centre - other!.centre + 180, 360) - 180) <= within &&
        Math.abs(one!.within - other!.within) <= within
      );
    })
  );
};
