/** What it costs to cut one block first, in words: the plan beside the plan without that wish. */
import type { CutList } from '../cutting/cut-list.ts';
import { formatLength } from '../quilt/format-length.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { LayoutAnswer } from './layout-job.ts';
import { makeTally } from './make-tally.ts';
import { sayMoney } from './say-money.ts';
import { saySteps } from './say-steps.ts';
import type { ClothTally, Tally } from './tally.ts';

/** The test block's name; null where none is cut first. */
export function testBlockName(quilt: Quilt): string | null {
  return quilt.blocks.find(({ id }) => id === quilt.testBlock)?.name ?? null;
}

/** What she does, to stand before the cutting; null where no block is cut first. */
export function sayTestFirst(quilt: Quilt, answers: readonly LayoutAnswer[]): string | null {
  const name = testBlockName(quilt);
  return name === null || !answers.some(beginsWithTest)
    ? null
    : `Test block first: on every cloth cut the strips for ${name} that come first, sew it and measure it; then cut the rest.`;
}

/** What a proof over plans that begin with a test block speaks of. */
export const BEGINNING =
  'Plans that begin with this test block have the same first strips, and cut from the ends of these only blanks of which every shape is more than half as high as the strip.';

export const beginsWithTest = ({ testFirst }: LayoutAnswer): boolean =>
  testFirst?.strips.some((strips) => strips > 0) === true;

/**
 * What it costs, cloth by cloth, and where it cannot be done.
 * @param answers in the order of the groups
 * @param tally of these answers
 */
export function priceOfTestFirst(
  quilt: Quilt,
  cutList: CutList,
  answers: readonly LayoutAnswer[],
  tally: Tally,
): readonly string[] {
  const name = testBlockName(quilt);
  if (name === null || answers.every(({ testFirst }) => testFirst === undefined)) {
    return [];
  }
  const without = makeTally(
    quilt,
    cutList,
    answers.map((answer) => answer.testFirst?.without ?? answer),
  );
  const other = new Map(without.cloths.map((cloth) => [cloth.cloth, cloth]));
  const changed = tally.cloths.flatMap((cloth) => {
    const before = other.get(cloth.cloth);
    return before === undefined || Math.abs(before.buy - cloth.buy) < 1e-6
      ? []
      : [`${cloth.name} ${amount(quilt, cloth)} instead of ${amount(quilt, before)}`];
  });
  const failed = cutList.groups.flatMap(({ cloths }, i) => {
    const { testFirst } = answers[i]!;
    return testFirst !== undefined && testFirst.bound === null ? cloths : [];
  });
  const names = failed.map((id) => quilt.cloths.find((cloth) => cloth.id === id)?.name ?? id);
  return [
    changed.length === 0
      ? `Cutting ${name} first buys no more than a plan without that wish.`
      : `Cutting ${name} first${dearer(tally, without)} buys ${changed.join(', ')}.`,
    ...(names.length === 0
      ? []
      : [`On ${names.join(' and ')} ${name} is not cut first: what it leaves would be too little for the rest.`]),
  ];
}

function dearer(tally: Tally, without: Tally): string {
  if (tally.price === null || without.price === null || Math.abs(tally.price - without.price) < 0.005) {
    return '';
  }
  const more = tally.price - without.price;
  // The plan without the wish may have been found less good in the time it had.
  return more > 0
    ? ` costs ${sayMoney(more, tally.currency)} more: it`
    : ` costs ${sayMoney(-more, tally.currency)} less, for the plan without that wish is not proved least: it`;
}

function amount(quilt: Quilt, { cloth, steps, buy }: ClothTally): string {
  const step = quilt.cloths.find(({ id }) => id === cloth)?.step;
  return steps === null || step === undefined
    ? formatLength(buy, quilt.unit, { denominator: 16 })
    : saySteps(steps, step, quilt.unit);
}
