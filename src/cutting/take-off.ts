/**
 * Taking patches off a unit, last sewn first.
 *
 * What could have been sewn last stays so when others are taken off before it: it meets fewer patches, and fewer lie across its
 * line. All that can be lost is that the rest hangs together. So where nothing more can be taken off, and every patch left is held
 * by its seams alone, no other choice on the way would have helped, and that is a proof. Only where a patch is held because
 * the rest would fall apart without it are other choices tried as well.
 */
import { stepOnto } from './sewing-step.ts';
import type { SewingUnit } from './sewing-unit.ts';

export interface TakenOff {
  /** In the order taken off, the last sewn first. */
  readonly taken: readonly number[];
  /** What could not be taken off; one patch where all is well. */
  readonly left: readonly number[];
  /** Whether every patch left is held by its seams, not only because the rest would fall apart without it. */
  readonly held: boolean;
}

export interface WayFound {
  /** Sewing order, or null. */
  readonly order: readonly number[] | null;
  /** Whether null is a proof that there is none. */
  readonly proved: boolean;
  /** As far as the first try came. */
  readonly first: TakenOff;
}

/** So many sets of patches are looked at where the order of taking off matters. */
const MOST_SETS = 3000;

/** A sewing order, the drawn one where that can be sewn. */
export function wayToSew(unit: SewingUnit): WayFound {
  const first = takeOff(unit);
  if (first.left.length <= 1) {
    return { order: [...first.left, ...[...first.taken].reverse()], proved: true, first };
  }
  return first.held ? { order: null, proved: true, first } : { ...tryEveryWay(unit), first };
}

export const canSew = (unit: SewingUnit): boolean => wayToSew(unit).order !== null;

/** @param keep a patch that is to be sewn first, so that it is never taken off */
export function takeOff(unit: SewingUnit, keep?: number): TakenOff {
  const pile = new Pile(unit);
  const taken: number[] = [];
  for (;;) {
    const next = pile.removable().findLast((index) => index !== keep);
    if (next === undefined || pile.size === 1) {
      return { taken, left: pile.left(), held: pile.heldBySeams() };
    }
    pile.take(next);
    taken.push(next);
  }
}

/** What is left of a unit. What was found removable is not asked again, what was not only when a neighbour of it has gone. */
class Pile {
  private readonly unit: SewingUnit;
  private readonly there: boolean[];
  private readonly free: (boolean | null)[];
  size: number;

  constructor(unit: SewingUnit) {
    this.unit = unit;
    this.there = unit.patches.map(() => true);
    this.free = unit.patches.map(() => null);
    this.size = unit.patches.length;
  }

  left(): readonly number[] {
    return indicesOf(this.there);
  }

  removable(): readonly number[] {
    return this.left().filter((index) => this.isFree(index) && hangsTogether(this.unit, without(this.there, index)));
  }

  heldBySeams(): boolean {
    return this.left().every((index) => !this.isFree(index));
  }

  take(index: number): void {
    this.there[index] = false;
    this.size--;
    this.free.forEach((free, other) => {
      if (free === false) this.free[other] = null;
    });
  }

  private isFree(index: number): boolean {
    this.free[index] ??= 'seam' in stepOnto(this.unit, index, without(this.there, index));
    return this.free[index];
  }
}

/** Which patches of some can have been sewn last among them. */
export function removableFrom(unit: SewingUnit, there: readonly boolean[]): readonly number[] {
  return indicesOf(there).filter((index) => {
    const rest = without(there, index);
    return 'seam' in stepOnto(unit, index, rest) && hangsTogether(unit, rest);
  });
}

function tryEveryWay(unit: SewingUnit): { readonly order: readonly number[] | null; readonly proved: boolean } {
  const hopeless = new Set<string>();
  let proved = true;
  const search = (there: readonly boolean[]): readonly number[] | null => {
    const left = indicesOf(there);
    if (left.length === 1) {
      return left;
    }
    const key = keyOf(there);
    if (hopeless.has(key)) {
      return null;
    }
    if (hopeless.size >= MOST_SETS) {
      proved = false;
      return null;
    }
    for (const last of [...removableFrom(unit, there)].reverse()) {
      const before = search(without(there, last));
      if (before !== null) {
        return [...before, last];
      }
    }
    hopeless.add(key);
    return null;
  };
  const order = search(unit.patches.map(() => true));
  return { order, proved: order !== null || proved };
}

/** Whether some patches are one piece, seam by seam. */
export function hangsTogether(unit: SewingUnit, there: readonly boolean[]): boolean {
  return piecesOf(unit, there).length <= 1;
}

/**
 * Some patches by the pieces in which they hang together.
 * @param joins which runs hold; default all
 */
export function piecesOf(
  unit: SewingUnit,
  there: readonly boolean[],
  joins: (run: SewingUnit['patches'][number]['shared'][number]) => boolean = () => true,
): readonly (readonly number[])[] {
  const seen = there.map((is) => !is);
  const pieces: number[][] = [];
  there.forEach((_, start) => {
    if (seen[start]) {
      return;
    }
    seen[start] = true;
    const piece = [start];
    for (const index of piece) {
      for (const run of unit.patches[index]!.shared) {
        if (!seen[run.with] && joins(run)) {
          seen[run.with] = true;
          piece.push(run.with);
        }
      }
    }
    pieces.push(piece.sort((a, b) => a - b));
  });
  return pieces;
}

export const keyOf = (there: readonly boolean[]): string => there.map((is) => (is ? '1' : '0')).join('');
export const without = (there: readonly boolean[], index: number): readonly boolean[] =>
  there.map((is, i) => is && i !== index);
export const indicesOf = (there: readonly boolean[]): readonly number[] => there.flatMap((is, i) => (is ? [i] : []));
