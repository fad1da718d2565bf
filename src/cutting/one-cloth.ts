/** Roles of which each block is to be of one cloth, as the job asks for it. */
import type { OneCloth } from '../plan/layout-job.ts';
import { copyTurns } from '../quilt/copy-turns.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { Blank, ClothLength } from './cut-list.ts';
import type { PlannedBlank } from './planned-blank.ts';

/** Copies of a block that are turned alike, in one role, make one entry of the job's oneCloth: its id. */
export const oneClothId = (role: string, block: string, turn: number): string => JSON.stringify([role, block, turn]);

/** What an id of the job's oneCloth says. */
export function blockOf(id: string): { readonly role: string; readonly block: string; readonly turn: number } {
  const [role, block, turn] = JSON.parse(id) as [string, string, number];
  return { role, block, turn };
}

/** @param lengths the bolts and pieces of the group: those of one cloth make one list */
export function oneClothOf(
  quilt: Quilt,
  planned: readonly PlannedBlank[],
  lengths: readonly ClothLength[],
): readonly OneCloth[] {
  const roles = quilt.roles.filter((role) => role.oneCloth === true);
  return roles.flatMap((role) => {
    const mine = planned.filter(({ blank, cloths }) => blank.role === role.id && cloths.length > 1);
    const ids = mine[0]?.cloths.map((cloth) => cloth.id) ?? [];
    const lists = ids
      .map((cloth) => lengths.filter((length) => length.cloth === cloth).map(({ id }) => id))
      .filter((list) => list.length > 0);
    if (lists.length < 2) {
      return [];
    }
    return quilt.blocks.flatMap((block) =>
      [...new Set(copyTurns(block))].flatMap((turn) => {
        const needs = needsIn(
          mine.map(({ blank }) => blank),
          block.id,
          turn,
        );
        const blocks = copyTurns(block).filter((each) => each === turn).length;
        return needs.length === 0
          ? []
          : [{ id: oneClothId(role.id, block.id, turn), blocks, blanks: Object.fromEntries(needs), cloths: lists }];
      }),
    );
  });
}

function needsIn(blanks: readonly Blank[], block: string, turn: number): readonly (readonly [string, number])[] {
  return blanks.flatMap(({ id, uses }) => {
    const count = uses.filter((use) => use.block === block && use.turn === turn).length;
    return count === 0 ? [] : [[id, count] as const];
  });
}
