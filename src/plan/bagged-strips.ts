/** The bags of a whole plan, strip by strip, in the order of cutting. */
import type { CutList } from '../cutting/cut-list.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { type Bag, fillBags } from './bags.ts';
import { listOfCloth, listOfCopy } from './block-cloths.ts';
import type { StripSteps } from './cut-steps.ts';
import type { LayoutAnswer } from './layout-job.ts';
import { partOf } from './strip-parts.ts';

export interface Bagged {
  readonly blank: string;
  readonly bag: Bag;
}

/** What comes off one strip at one sitting, in order, each time that its layout is cut. */
export type BagsOfStrip = (
  group: string,
  layout: number,
  strip: number,
  isFirst: boolean,
) => readonly (readonly Bagged[])[];

/**
 * @param answers in the order of the groups, as they are cut (inCuttingOrder)
 * @param steps of each answer (makeCutSteps)
 * @returns looks a strip up by its group's id, the index of its layout in the answer and its own index there
 */
export function bagStrips(
  quilt: Quilt,
  cutList: CutList,
  answers: readonly LayoutAnswer[],
  steps: readonly (readonly StripSteps[])[],
): BagsOfStrip {
  const inTurn = cutList.groups.flatMap((group, i) => {
    return group.lengths.flatMap(({ id }) =>
      answers[i]!.layouts.flatMap((layout, index) =>
        layout.cloth !== id
          ? []
          : Array.from({ length: layout.count }, () => steps[i]!.filter((strip) => strip.layout === index)).flatMap(
              (own) =>
                own.flatMap((strip) =>
                  [true, false].flatMap((isFirst) => {
                    const held = answers[i]!.testFirst?.held[index]?.[strip.strip] ?? 0;
                    const blanks = partOf(strip, held, isFirst)?.pieces.map(({ blank }) => blank) ?? [];
                    const key = JSON.stringify([group.id, index, strip.strip, isFirst]);
                    return blanks.length === 0 ? [] : [{ key, isFirst, blanks, cloth: id, group }];
                  }),
                ),
            ),
      ),
    );
  });
  // The test block's strips of all cloths are cut before any other.
  const strips = [...inTurn.filter(({ isFirst }) => isFirst), ...inTurn.filter(({ isFirst }) => !isFirst)];
  const blanks = cutList.groups.flatMap((group) => group.blanks);
  const roles = new Map(blanks.map((blank) => [blank.id, blank.role]));
  const bags = fillBags(
    quilt,
    blanks,
    strips.flatMap(({ blanks: own, group, cloth }) =>
      own.map((id) => keyed(id, listOfCloth(group, roles.get(id) ?? '', cloth))),
    ),
    quilt.testBlock ?? null,
    (id, block, turn, nth) => {
      const at = cutList.groups.findIndex((group) => group.blanks.some((blank) => blank.id === id));
      return keyed(id, listOfCopy(answers[at]!, roles.get(id) ?? '', block, turn, nth));
    },
  );
  const found = new Map<string, (readonly Bagged[])[]>();
  let at = 0;
  for (const strip of strips) {
    const own = strip.blanks.map((blank): Bagged => ({ blank, bag: bags[at++]! }));
    found.set(strip.key, [...(found.get(strip.key) ?? []), own]);
  }
  return (group, layout, strip, isFirst) => found.get(JSON.stringify([group, layout, strip, isFirst])) ?? [];
}

/** Blanks of blocks that keep to one cloth are told apart by the list of cloths that they come from. */
const keyed = (blank: string, list: number | null): string => (list === null ? blank : JSON.stringify([blank, list]));

/**
 * In words: "all to Dial 1", "A1: 8 each to Dial 1 to 3, 1 to Spares; B1: 24 to Dial 1". Runs of bags that follow each other
 * and take as many are told together.
 */
export function sayBags(bagged: readonly Bagged[]): string {
  const names = new Set(bagged.map(({ bag }) => bag.name));
  if (names.size === 1) {
    return `all to ${bagged[0]!.bag.name}`;
  }
  const kinds = [...new Set(bagged.map(({ blank }) => blank))];
  return kinds
    .map((kind) => {
      const counts = new Map<Bag, number>();
      for (const { blank, bag } of bagged) {
        if (blank === kind) {
          counts.set(bag, (counts.get(bag) ?? 0) + 1);
        }
      }
      const said = runsOf([...counts])
        .map(sayRun)
        .join(', ');
      return kinds.length === 1 ? said : `${kind}: ${said}`;
    })
    .join('; ');
}

interface Run {
  readonly first: Bag;
  readonly last: Bag;
  readonly count: number;
}

function runsOf(counts: readonly (readonly [Bag, number])[]): readonly Run[] {
  const runs: Run[] = [];
  for (const [bag, count] of counts) {
    const before = runs.at(-1);
    const follows =
      before !== undefined &&
      bag.block !== null &&
      before.last.block === bag.block &&
      before.last.copy + 1 === bag.copy &&
      before.count === count;
    if (follows) {
      runs[runs.length - 1] = { ...before, last: bag };
    } else {
      runs.push({ first: bag, last: bag, count });
    }
  }
  return runs;
}

function sayRun({ first, last, count }: Run): string {
  if (first === last) {
    return `${count} to ${first.name}`;
  }
  return `${count} each to ${first.name} ${last.copy === first.copy + 1 ? 'and' : 'to'} ${last.copy}`;
}
