/** A listed unit put into another sewing order, or parted into several units. */
import type { Block, Patch, Unit } from './quilt.ts';

/**
 * The patches in another order, and numbered by it.
 * @param order indices of the patches, each once
 */
export function withUnitOrder(block: Block, id: string, order: readonly number[]): Block {
  return withUnits(block, id, (unit) => [{ ...unit, patches: numbered(order.map((index) => unit.patches[index]!)) }]);
}

/**
 * The unit parted: the first part keeps its letter, the others get letters that no unit of the block has. All keep the places.
 * @param parts indices of the patches, in sewing order
 */
export function withUnitParted(block: Block, id: string, parts: readonly (readonly number[])[]): Block {
  const taken = new Set((block.units ?? []).map((unit) => unit.id));
  return withUnits(block, id, (unit) =>
    parts.map((part, i) => {
      const letter = i === 0 ? unit.id : freshLetter(taken);
      taken.add(letter);
      const name = unit.name === undefined || i === 0 ? {} : { name: `${unit.name}, part ${i + 1}` };
      return { ...unit, id: letter, ...name, patches: numbered(part.map((index) => unit.patches[index]!)) };
    }),
  );
}

function withUnits(block: Block, id: string, change: (unit: Unit) => readonly Unit[]): Block {
  return block.units === undefined
    ? block
    : { ...block, units: block.units.flatMap((unit) => (unit.id === id ? change(unit) : [unit])) };
}

const numbered = (patches: readonly Patch[]): readonly Patch[] =>
  patches.map((patch, index) => ({ ...patch, number: index + 1 }));

/** A to Z, then AA, AB and so on. */
function freshLetter(taken: ReadonlySet<string>): string {
  for (let n = 0; ; n++) {
    const last = String.fromCharCode(65 + (n % 26));
    const letter = n < 26 ? last : `${String.fromCharCode(64 + Math.floor(n / 26))}${last}`;
    if (!taken.has(letter)) {
      return letter;
    }
  }
}
