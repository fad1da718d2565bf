/** Which copy of a block is cut from which cloth, where each is to be of one. */
import type { CutList, Group } from '../cutting/cut-list.ts';
import { blockOf, oneClothId } from '../cutting/one-cloth.ts';
import { copyTurns } from '../quilt/copy-turns.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { LayoutAnswer } from './layout-job.ts';

/** The cloths of one role, block by block, in words. */
export interface BlockCloths {
  readonly role: string;
  /** "Dial 1 and 2 of Blue; Dial 3 of Navy". */
  readonly words: string;
}

/**
 * The list of cloths (its index in the job) that a copy's blanks of a role come from: those turned alike take the first list's
 * blocks first.
 * @param nth of the copies of the block that are turned so, from 0
 * @returns null where nothing is asked of that role and block
 */
export function listOfCopy(
  answer: LayoutAnswer,
  role: string,
  block: string,
  turn: number,
  nth: number,
): number | null {
  const id = oneClothId(role, block, turn);
  const told = answer.oneCloth?.find((each) => each.id === id);
  if (told === undefined) return null;
  const { blocks, first } = told;
  if (first !== undefined && nth === 0) return first;
  let before = first === undefined ? 0 : 1;
  return blocks.findIndex((n, list) => {
    before += list === first ? n - 1 : n;
    return nth < before;
  });
}

/** The list that a cloth of the job is of, for blanks of a role; null where nothing is asked of it. */
export function listOfCloth(group: Group, role: string, cloth: string): number | null {
  const own = group.job.oneCloth?.find(({ id }) => roleOf(id) === role);
  const at = own?.cloths.findIndex((list) => list.includes(cloth)) ?? -1;
  return at < 0 ? null : at;
}

/** Every role that keeps each block to one cloth, in words. */
export function blockCloths(quilt: Quilt, cutList: CutList, answers: readonly LayoutAnswer[]): readonly BlockCloths[] {
  return cutList.groups.flatMap((group, g) => {
    const roles = [...new Set((group.job.oneCloth ?? []).map(({ id }) => roleOf(id)))];
    return roles.map((role) => ({
      role: quilt.roles.find((each) => each.id === role)?.name ?? role,
      words: wordsFor(quilt, group, answers[g]!, role),
    }));
  });
}

const roleOf = (id: string): string => blockOf(id).role;

function wordsFor(quilt: Quilt, group: Group, answer: LayoutAnswer, role: string): string {
  const copies = new Map<string, string[]>();
  for (const block of quilt.blocks) {
    const seen = new Map<number, number>();
    copyTurns(block).forEach((turn, i) => {
      const nth = seen.get(turn) ?? 0;
      seen.set(turn, nth + 1);
      const list = listOfCopy(answer, role, block.id, turn, nth);
      if (list === null || list < 0) return;
      const lists = group.job.oneCloth!.find(({ id }) => id === oneClothId(role, block.id, turn))!.cloths;
      const cloth = group.lengths.find((length) => length.id === lists[list]![0])?.cloth;
      const name = quilt.cloths.find((each) => each.id === cloth)?.name ?? cloth ?? '';
      const key = JSON.stringify([block.count === 1 ? block.name : `${block.name} `, name]);
      copies.set(key, [...(copies.get(key) ?? []), block.count === 1 ? '' : `${i + 1}`]);
    });
  }
  return [...copies]
    .map(([key, numbers]) => {
      const [block, cloth] = JSON.parse(key) as [string, string];
      return `${block}${sayNumbers(numbers)} of ${cloth}`;
    })
    .join('; ');
}

/** "1", "1 and 2", "1 to 4 and 7". */
function sayNumbers(numbers: readonly string[]): string {
  const runs: [string, string][] = [];
  for (const n of numbers) {
    const last = runs.at(-1);
    if (last && Number(last[1]) + 1 === Number(n)) last[1] = n;
    else runs.push([n, n]);
  }
  const said = runs.flatMap(([a, b]) => (a === b ? [a] : Number(a) + 1 === Number(b) ? [a, b] : [`${a} to ${b}`]));
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}
