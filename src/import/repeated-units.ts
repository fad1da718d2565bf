/** From patches with what is known of their groups and numbers to units in sewing order, each told once. */
import { findSewingOrder, isSewable } from '../cutting/sewing-order.ts';
import { sewnSides } from '../cutting/sewn-side.ts';
import { findRepeats, type NamedUnit, type RepeatedUnit } from './find-repeats.ts';
import type { FoundPatch } from './found-patch.ts';
import { groupUnits, type PatchGroup } from './group-units.ts';
import type { ImportNotes } from './import-notes.ts';
import { type FindOrder, splitUnits } from './split-units.ts';

/** Larger groups than this are parted before an order is looked for. */
const MOST_AT_ONCE = 60;

/** Numbers that the drawing gives are kept where they can be sewn in that order. */
const findOrder: FindOrder = (patches) => {
  if (areNumbered(patches)) {
    const drawn = patches.map(({ outline }, i) => ({ number: i + 1, role: '', outline }));
    const sides = sewnSides({ id: '', paper: true, repeat: { count: 1 }, patches: drawn });
    if (sides.every(({ fault }) => fault === null)) return patches.map((_, i) => i);
  }
  if (patches.length > MOST_AT_ONCE) return null;
  const found = findSewingOrder(patches.map(({ outline }) => outline));
  return isSewable(found) ? found.order : null;
};

/** @param within how far corners may be off, in the outlines' unit */
export function repeatedUnits(
  found: readonly FoundPatch[],
  within: number,
  notes: ImportNotes,
): readonly RepeatedUnit[] {
  const units = groupUnits(found).flatMap((group) => unitsOf(group, within, notes));
  return findRepeats(units, 2 * within);
}

function unitsOf({ name, patches, meant, told }: PatchGroup, within: number, notes: ImportNotes): readonly NamedUnit[] {
  const letter = told?.letter ?? null;
  if (told?.paper === false) {
    return [{ patches: byNumber(patches), paper: false, pieceable: true, name, letter }];
  }
  const parts = splitUnits(byNumber(patches), findOrder, within).flatMap((part) =>
    // What nobody grouped and no paper can hold is as well told patch by patch, each with its repeats.
    part.pieceable || meant ? [part] : part.patches.map((patch) => ({ ...part, patches: [patch] })),
  );
  const called = name === '' ? 'What lies side by side' : `“${name}”`;
  if (parts.some(({ pieceable }) => !pieceable)) {
    const many = parts.filter(({ pieceable }) => !pieceable).reduce((sum, part) => sum + part.patches.length, 0);
    notes.warn(`${called}: ${many} patches have no sewing order on one foundation, so they are listed without paper.`);
  } else if (meant && parts.length > 1) {
    notes.warn(`${called} cannot be sewn on one foundation; it is parted into ${parts.length} units.`);
  }
  return parts.map((part) => ({ ...part, name, letter: parts.length === 1 ? letter : null }));
}

function areNumbered(patches: readonly FoundPatch[]): boolean {
  const numbers = patches.map(({ code }) => code.number);
  return numbers.every((number) => number !== null) && new Set(numbers).size === numbers.length;
}

/** Patches that carry numbers come in their order. */
function byNumber(patches: readonly FoundPatch[]): readonly FoundPatch[] {
  return areNumbered(patches) ? patches.toSorted((a, b) => a.code.number! - b.code.number!) : patches;
}
