/** Blocks of one cloth each where one block is cut before the rest: what is asked of either plan, and of both together. */
import { blockOf } from '../cutting/one-cloth.ts';
import type { LayoutAnswer, OneCloth } from './layout-job.ts';

type Told = NonNullable<LayoutAnswer['oneCloth']>;

/** What is asked of the test block alone. */
export function oneClothOfTest(asked: readonly OneCloth[], block: string, turn: number): readonly OneCloth[] {
  return asked
    .filter(({ id }) => blockOf(id).block === block && blockOf(id).turn === turn)
    .map((one) => ({ ...one, blocks: 1 }));
}

/**
 * What is asked of the rest.
 * @param after of each cloth of the job, the ids of what is left of it
 */
export function oneClothOfRest(
  asked: readonly OneCloth[],
  test: Told,
  after: (cloth: string) => readonly string[],
): readonly OneCloth[] {
  return asked.flatMap((one) => {
    const blocks = one.blocks - doneOf(test, one.id).reduce((sum, n) => sum + n, 0);
    return blocks === 0 ? [] : [{ ...one, blocks, cloths: one.cloths.map((list) => list.flatMap(after)) }];
  });
}

/** Both together; the block cut first is told too, so that it gets its own cloth. */
export function oneClothOfBoth(asked: readonly OneCloth[], test: Told, rest: Told): Told {
  return asked.map(({ id, cloths }) => {
    const [done, later] = [doneOf(test, id), doneOf(rest, id)];
    const first = done.findIndex((n) => n > 0);
    const blocks = cloths.map((_, k) => (done[k] ?? 0) + (later[k] ?? 0));
    return first < 0 ? { id, blocks } : { id, blocks, first };
  });
}

const doneOf = (told: Told, id: string): readonly number[] => told.find((each) => each.id === id)?.blocks ?? [];
