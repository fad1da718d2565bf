/** Changes of single patches, in blocks with a form as in blocks with listed units. */
import type { Block, Facing, Patch, PatchOwn, Unit } from './quilt.ts';

/** Which patch of a block: its unit's letter and its number. */
export interface PatchName {
  readonly unit: string;
  readonly number: number;
}

/** The block with what one patch has of its own changed; a field that comes back undefined is taken out. */
export function withPatchOwn(
  block: Block,
  { unit, number }: PatchName,
  change: (own: PatchOwn) => { readonly [Field in keyof PatchOwn]: PatchOwn[Field] | undefined },
): Block {
  if (block.form !== undefined) {
    const name = `${unit}${number}`;
    const own = tidy(change(block.own?.[name] ?? {})) as PatchOwn;
    const others = Object.entries(block.own ?? {}).filter(([other]) => other !== name);
    const all = Object.keys(own).length === 0 ? others : [...others, [name, own] as const];
    const { own: _, ...rest } = block;
    return all.length === 0 ? rest : { ...rest, own: Object.fromEntries(all) };
  }
  return withPatch(block, { unit, number }, (patch) => tidy({ ...patch, ...change(patch) }) as unknown as Patch);
}

/** How a patch faces: in all its places, or at one of them; null: as its role, or as the patch otherwise does. */
export function withPatchFacing(block: Block, name: PatchName, place: number | null, facing: Facing | null): Block {
  return withPatchOwn(block, name, ({ facing: _, facingAt, ...own }) => {
    if (place === null) {
      return { ...own, facing: facing ?? undefined, facingAt: undefined };
    }
    const others = Object.entries(facingAt ?? {}).filter(([index]) => index !== `${place}`);
    const all = facing === null ? others : [...others, [`${place}`, facing] as const];
    return { ...own, facing: _, facingAt: all.length === 0 ? undefined : Object.fromEntries(all) };
  });
}

/** A listed patch changed. */
export function withPatch(block: Block, { unit, number }: PatchName, change: (patch: Patch) => Patch): Block {
  return withUnit(block, unit, (old) => ({
    ...old,
    patches: old.patches.map((patch) => (patch.number === number ? change(patch) : patch)),
  }));
}

/** A listed unit changed. */
export function withUnit(block: Block, id: string, change: (unit: Unit) => Unit): Block {
  return block.units === undefined
    ? block
    : { ...block, units: block.units.map((unit) => (unit.id === id ? change(unit) : unit)) };
}

/**
 * Without a listed patch; its unit goes with the last of them.
 * @throws RangeError where it is the block's last patch
 */
export function withoutPatch(block: Block, { unit, number }: PatchName): Block {
  const units = (block.units ?? []).flatMap((old): readonly Unit[] => {
    const patches = old.id === unit ? old.patches.filter((patch) => patch.number !== number) : old.patches;
    return patches.length === 0 ? [] : [{ ...old, patches }];
  });
  if (units.length === 0) {
    throw new RangeError('this is the block’s last patch; take the block out instead');
  }
  return { ...block, units };
}

/** A patch gets a number, and the patches of its unit stand in the order of their numbers again; who has it already gets the old one. */
export function renumbered(block: Block, { unit, number }: PatchName, fresh: number): Block {
  const swap = (old: number): number => (old === number ? fresh : old === fresh ? number : old);
  return withUnit(block, unit, (old) => ({
    ...old,
    patches: old.patches
      .map((patch) => ({ ...patch, number: swap(patch.number) }))
      .toSorted((a, b) => a.number - b.number),
  }));
}

const tidy = (fields: object): object =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
