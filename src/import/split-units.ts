/** Patches that lie side by side, gathered into units that can be pieced. */
import type { FoundPatch } from './found-patch.ts';
import { splitRound } from './split-round.ts';
import { splitStraight } from './split-straight.ts';

export interface PieceableUnit {
  /** In sewing order where there is one. */
  readonly patches: readonly FoundPatch[];
  /** Whether they can be sewn in this order on one foundation. A single patch needs none. */
  readonly paper: boolean;
  /** False where several patches have no sewing order, and no clear line parts them. */
  readonly pieceable: boolean;
}

/** A sewing order by index, or null where none is found. */
export type FindOrder = (patches: readonly FoundPatch[]) => readonly number[] | null;

const DEEPEST = 12;

/** @param within how far corners may be off and still count as on a line or circle */
export function splitUnits(
  patches: readonly FoundPatch[],
  findOrder: FindOrder,
  within: number,
  depth = 0,
): readonly PieceableUnit[] {
  if (patches.length <= 1) {
    return patches.length === 0 ? [] : [{ patches, paper: false, pieceable: true }];
  }
  const order = findOrder(patches);
  if (order !== null) {
    return [{ patches: order.map((index) => patches[index]!), paper: true, pieceable: true }];
  }
  if (depth < DEEPEST) {
    const sewable = (some: readonly FoundPatch[]): boolean => findOrder(some) !== null;
    const round = splitRound(patches, within, sewable);
    if (round.length > 1) {
      return round.flatMap((part) => splitUnits(part, findOrder, within, depth + 1));
    }
    const straight = splitStraight(patches, within);
    if (straight !== null) {
      return straight.flatMap((part) => splitUnits(part, findOrder, within, depth + 1));
    }
  }
  return [{ patches, paper: false, pieceable: false }];
}
