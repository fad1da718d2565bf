/** Which patches keep a unit from being sewn, as few as can be. */
import { type StepFault, stepOnto } from './sewing-step.ts';
import type { SewingUnit } from './sewing-unit.ts';
import { hangsTogether, indicesOf, piecesOf, type TakenOff, without } from './take-off.ts';

export interface Blocked {
  /** By index. Left out any one of them, the others could be sewn to each other. */
  readonly patches: readonly number[];
  /** Why each of them cannot be sewn after the others among them, as in `patches`. */
  readonly faults: readonly StepFault[];
  /** Those that could be sewn after all others, in order, by index; the rest hold each other. */
  readonly after: readonly number[];
  /** False where there were too many ways to try them all, as can happen in units with a hole. */
  readonly proved: boolean;
}

export function blockedBy(unit: SewingUnit, { left, taken }: TakenOff, proved: boolean): Blocked {
  const patches = fewest(unit, left);
  const there = unit.patches.map((_, index) => patches.includes(index));
  const faults = patches.map((index): StepFault => {
    const rest = without(there, index);
    const step = stepOnto(unit, index, rest);
    return 'fault' in step
      ? step.fault
      : { kind: 'parts', edge: step.seam.edge, pieces: piecesOf(unit, rest).map((piece) => piece[0]!) };
  });
  return { patches, faults, after: [...taken].reverse(), proved };
}

/**
 * A patch that only hangs by itself is let go here, because others might still come between; so what stays could not be sewn
 * whatever else there is. Left out one by one, until none can be spared.
 */
function fewest(unit: SewingUnit, left: readonly number[]): readonly number[] {
  let core = stuck(
    unit,
    unit.patches.map((_, index) => left.includes(index)),
  );
  if (core.every((is) => !is)) {
    return hangsTogether(
      unit,
      unit.patches.map(() => true),
    )
      ? left
      : smallerPieces(unit);
  }
  for (const index of indicesOf(core)) {
    if (core[index]) {
      const smaller = stuck(unit, without(core, index));
      core = smaller.some((is) => is) ? smaller : core;
    }
  }
  return indicesOf(core);
}

/** What holds each other among some patches. */
function stuck(unit: SewingUnit, among: readonly boolean[]): readonly boolean[] {
  let there = among;
  for (;;) {
    const free = indicesOf(there).find((index) => {
      const step = stepOnto(unit, index, without(there, index));
      return 'seam' in step || step.fault.kind === 'apart';
    });
    if (free === undefined) {
      return there;
    }
    there = without(there, free);
  }
}

/** All but the largest of the pieces that do not meet. */
function smallerPieces(unit: SewingUnit): readonly number[] {
  const pieces = [
    ...piecesOf(
      unit,
      unit.patches.map(() => true),
    ),
  ].sort((a, b) => b.length - a.length);
  return pieces
    .slice(1)
    .flat()
    .sort((a, b) => a - b);
}
