/** What each bag holds when all is cut, read from the plan strip by strip. */
import type { Blank, CutList } from '../cutting/cut-list.ts';
import { bagStrips } from '../plan/bagged-strips.ts';
import type { Bag } from '../plan/bags.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import { inCuttingOrder } from '../plan/cutting-order.ts';
import type { LayoutAnswer } from '../plan/layout-job.ts';
import { makeCutSteps } from '../plan/make-cut-steps.ts';
import type { Quilt } from '../quilt/quilt.ts';

export interface BagContents {
  readonly bag: Bag;
  readonly rows: readonly BagRow[];
}

export interface BagRow {
  readonly blank: Blank;
  /** The cloth that these are cut from. */
  readonly cloth: string;
  readonly count: number;
}

export interface BagInput {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
}

/** Blocks in the quilt's order, then what belongs to none; within a bag as blanks are named. */
export function bagContents({ quilt, cutList, answers }: BagInput): readonly BagContents[] {
  const inOrder = cutList.groups.map((group, i) => inCuttingOrder(group, answers[i]!));
  const steps = cutList.groups.map((group, i) => makeCutSteps(group.job, inOrder[i]!));
  const bagsOf = bagStrips(quilt, cutList, inOrder, steps);
  const blanks = cutList.groups.flatMap((group) => group.blanks);
  const counts = new Map<string, { bag: Bag; blank: string; cloth: string; count: number }>();
  cutList.groups.forEach((group, i) => {
    for (const strip of steps[i]!) {
      const cloth = clothOf(group.lengths, strip);
      for (const { blank, bag } of [true, false].flatMap((isFirst) =>
        bagsOf(group.id, strip.layout, strip.strip, isFirst).flat(),
      )) {
        const key = JSON.stringify([bag.name, blank, cloth]);
        const known = counts.get(key) ?? { bag, blank, cloth, count: 0 };
        known.count++;
        counts.set(key, known);
      }
    }
  });
  const found = [...counts.values()];
  const bags = [...new Map(found.map(({ bag }) => [bag.name, bag])).values()].sort(
    (a, b) => place(quilt, a) - place(quilt, b) || a.copy - b.copy,
  );
  return bags.map((bag) => ({
    bag,
    rows: blanks.flatMap((blank) =>
      found
        .filter((each) => each.bag.name === bag.name && each.blank === blank.id)
        .map(({ cloth, count }) => ({ blank, cloth, count })),
    ),
  }));
}

const clothOf = (lengths: readonly { readonly id: string; readonly cloth: string }[], strip: StripSteps): string =>
  lengths.find(({ id }) => id === strip.cloth)?.cloth ?? strip.cloth;

const place = ({ blocks }: Quilt, { block }: Bag): number =>
  block === null ? blocks.length : blocks.findIndex(({ id }) => id === block);
