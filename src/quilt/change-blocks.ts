/** Blocks of a quilt taken out, copied, renamed; and the roles that go with them. */
import { freshIdFor, freshName } from './fresh-id.ts';
import type { Block, Quilt } from './quilt.ts';
import { roleIdsOf } from './units-of.ts';

/** The ids of all roles that a patch or a joined length has. */
export function usedRoles(quilt: Quilt): ReadonlySet<string> {
  return new Set([...quilt.blocks.flatMap(roleIdsOf), ...quilt.joined.map((joined) => joined.role)]);
}

/** Whether any patch or joined length has the role. */
export function isUsed(quilt: Quilt, role: string): boolean {
  return usedRoles(quilt).has(role);
}

/** Without the block, and without the roles that nothing else has. Cloths stay. */
export function removeBlock(quilt: Quilt, id: string): Quilt {
  const block = quilt.blocks.find((one) => one.id === id);
  if (block === undefined) {
    return quilt;
  }
  const { testBlock, ...rest } = { ...quilt, blocks: quilt.blocks.filter((one) => one !== block) };
  const without: Quilt = testBlock === undefined || testBlock === id ? rest : { ...rest, testBlock };
  return roleIdsOf(block)
    .filter((role) => !isUsed(without, role))
    .reduce(removeRole, without);
}

/** Without the role, in every scheme. A quilt of which a patch has it would be no quilt any more. */
export function removeRole(quilt: Quilt, id: string): Quilt {
  return {
    ...quilt,
    roles: quilt.roles.filter((role) => role.id !== id),
    schemes: quilt.schemes.map((scheme) => ({
      ...scheme,
      cloths: Object.fromEntries(Object.entries(scheme.cloths).filter(([role]) => role !== id)),
    })),
  };
}

/** One more of the same right after it, in the same roles, under a name of its own. */
export function copyBlock(quilt: Quilt, id: string): Quilt {
  const at = quilt.blocks.findIndex((one) => one.id === id);
  const block = quilt.blocks[at];
  if (block === undefined) {
    return quilt;
  }
  const name = freshName(
    block.name,
    quilt.blocks.map((one) => one.name),
  );
  const copy: Block = { ...block, id: freshIdFor(name, quilt.blocks, 'block'), name };
  return { ...quilt, blocks: quilt.blocks.toSpliced(at + 1, 0, copy) };
}
