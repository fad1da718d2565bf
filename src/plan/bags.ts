/**
 * Which bag each blank goes into as it is cut. Every block of the quilt has a bag of its own. Bags are filled one after the
 * other, every kind of blank in the same order, so that blocks are whole as early as the cutting allows.
 */
import type { Blank } from '../cutting/cut-list.ts';
import { copyTurns } from '../quilt/copy-turns.ts';
import type { Block, Quilt } from '../quilt/quilt.ts';

export interface Bag {
  /** What stands on it: "Dial 2", "Spares", "Binding". */
  readonly name: string;
  /** Of which block, and which of its copies from 1; null for spares and joined lengths. */
  readonly block: string | null;
  readonly copy: number;
}

const SPARES: Bag = { name: 'Spares', block: null, copy: 0 };

/**
 * How the sequence names the blanks that a copy of a block takes, which is another name where it must be cut from one cloth.
 * @param nth of the copies of the block that are turned so, from 0
 */
export type KeyOf = (blank: string, block: string, turn: number, nth: number) => string;

/** Copies of one block that need the same blanks, as those that are turned alike do. */
interface Alike {
  readonly bags: readonly Bag[];
  readonly needs: readonly (readonly [blank: string, count: number])[];
}

/**
 * A bag for each blank of a sequence.
 * @param blanks all kinds of the quilt
 * @param sequence ids of blanks in the order in which they are cut, or what `keyOf` makes of them
 * @param first the block of which one copy is filled before all others, if any
 * @returns in the order of the sequence; what is cut beyond the need is a spare
 */
export function fillBags(
  quilt: Quilt,
  blanks: readonly Blank[],
  sequence: readonly string[],
  first: string | null = null,
  keyOf: KeyOf = (blank) => blank,
): readonly Bag[] {
  const places = new Map<string, number[]>(blanks.map(({ id }) => [id, []]));
  sequence.forEach((id, at) => {
    const known = places.get(id);
    if (known === undefined) {
      places.set(id, [at]);
    } else {
      known.push(at);
    }
  });
  const joined = new Map(quilt.joined.map(({ id, name }): [string, Bag] => [id, { ...SPARES, name }]));
  const kinds = new Map(blanks.map((blank) => [blank.id, blank]));
  const bags: Bag[] = sequence.map((id) => joined.get(kinds.get(id)?.joined ?? '') ?? SPARES);
  const given = new Map<string, number>();
  for (const { bag, needs } of inOrder(quilt, blanks, places, first, keyOf)) {
    for (const [blank, count] of needs) {
      const from = given.get(blank) ?? 0;
      given.set(blank, from + count);
      for (const at of (places.get(blank) ?? []).slice(from, from + count)) {
        bags[at] = bag;
      }
    }
  }
  return bags;
}

/** The bags in the order of filling: always that which is full soonest after those before it. */
function inOrder(
  quilt: Quilt,
  blanks: readonly Blank[],
  places: ReadonlyMap<string, readonly number[]>,
  first: string | null,
  keyOf: KeyOf,
): readonly { readonly bag: Bag; readonly needs: Alike['needs'] }[] {
  const waiting = quilt.blocks
    .flatMap((block) => alikeCopies(quilt, block, blanks, keyOf))
    .map((alike) => ({ alike, next: 0 }));
  const given = new Map<string, number>();
  const full = ({ needs }: Alike): number =>
    Math.max(-1, ...needs.map(([id, count]) => places.get(id)?.[(given.get(id) ?? 0) + count - 1] ?? Infinity));
  const order: { bag: Bag; needs: Alike['needs'] }[] = [];
  for (;;) {
    const left = waiting.filter(({ alike, next }) => next < alike.bags.length);
    if (left.length === 0) {
      return order;
    }
    const isFirst = ({ alike, next }: (typeof left)[number]) => alike.bags[next]!.block === first;
    const choice =
      (order.length === 0 ? left.find(isFirst) : undefined) ??
      left.reduce((best, each) => (full(each.alike) < full(best.alike) ? each : best));
    order.push({ bag: choice.alike.bags[choice.next]!, needs: choice.alike.needs });
    choice.next++;
    for (const [id, count] of choice.alike.needs) {
      given.set(id, (given.get(id) ?? 0) + count);
    }
  }
}

/** The bags of a block's copies, in order, each with how its copy is turned in the quilt. */
export function blockBags(quilt: Quilt, block: Block): readonly { readonly bag: Bag; readonly turn: number }[] {
  const shared = quilt.blocks.some((other) => other !== block && other.name === block.name);
  const name = shared ? `${block.name} (${block.id})` : block.name;
  return copyTurns(block).map((turn, i) => ({
    bag: { name: block.count === 1 ? name : `${name} ${i + 1}`, block: block.id, copy: i + 1 },
    turn,
  }));
}

function alikeCopies(quilt: Quilt, block: Block, blanks: readonly Blank[], keyOf: KeyOf): readonly Alike[] {
  const alike = new Map<string, { needs: Alike['needs']; bags: Bag[] }>();
  const needsAt = new Map([...new Set(copyTurns(block))].map((turn) => [turn, needsOf(block.id, turn, blanks)]));
  const seen = new Map<number, number>();
  blockBags(quilt, block).forEach(({ bag, turn }) => {
    const nth = seen.get(turn) ?? 0;
    seen.set(turn, nth + 1);
    const needs = needsAt.get(turn)!.map(([id, count]) => [keyOf(id, block.id, turn, nth), count] as const);
    const key = JSON.stringify(needs);
    const known = alike.get(key) ?? { needs, bags: [] };
    known.bags.push(bag);
    alike.set(key, known);
  });
  return [...alike.values()];
}

/** What one copy of a block, turned so, is made of. */
export function needsOf(
  block: string,
  turn: number,
  blanks: readonly Blank[],
): readonly (readonly [blank: string, count: number])[] {
  return blanks.flatMap(({ id, uses }) => {
    const count = uses.filter((use) => use.block === block && use.turn === turn).length;
    return count === 0 ? [] : [[id, count] as const];
  });
}
