/** What to buy, what it costs and where the cloth goes, reckoned from the plans. */
import { kept } from '../cutting/cloth-lengths.ts';
import type { Blank, CutList, Group } from '../cutting/cut-list.ts';
import { convert, lengthIn } from '../quilt/measure.ts';
import type { Cloth, Quilt } from '../quilt/quilt.ts';
import { blockCloths } from './block-cloths.ts';
import type { JobCloth, Layout, LayoutAnswer } from './layout-job.ts';
import { leftoversOf } from './leftovers.ts';
import { blanksById } from './placed.ts';
import { stepsFor } from './say-steps.ts';
import { sayThirdCuts } from './say-third-cuts.ts';
import type { Areas, ClothTally, Tally } from './tally.ts';
import { addAreas, areasOfLayout, type IsSpare, leastCutArea, NO_AREA, sumAreas } from './tally-areas.ts';
import { proofOf } from './tally-proof.ts';

/**
 * The tally of a planned quilt.
 * @param answers in the order of `cutList.groups`
 * @throws Error where an answer is missing or places what its group does not have
 */
export function makeTally(quilt: Quilt, cutList: CutList, answers: readonly LayoutAnswer[]): Tally {
  const cloths = cutList.groups.flatMap((group, i) => {
    const answer = answers[i];
    if (answer === undefined) {
      throw new Error(`the group "${group.id}" has no answer`);
    }
    return tallyGroup(quilt, group, answer);
  });
  const currencies = new Set(cloths.flatMap(({ price, currency }) => (price === null ? [] : [currency])));
  const priced = cloths.flatMap(({ price }) => (price === null ? [] : [price]));
  const oneCurrency = currencies.size === 1;
  return {
    cloths: cloths.map(({ currency: _, ...cloth }) => cloth),
    price: oneCurrency ? inCents(priced.reduce((sum, price) => sum + price, 0)) : null,
    currency: oneCurrency ? ([...currencies][0] ?? null) : null,
    areas: sumAreas(cloths.map((cloth) => cloth.areas)),
    blockCloths: blockCloths(quilt, cutList, answers),
    provedLeast: cloths.every((cloth) => cloth.proof.state === 'least'),
  };
}

type PricedTally = ClothTally & { readonly currency: string | null };

function tallyGroup(quilt: Quilt, group: Group, answer: LayoutAnswer): readonly PricedTally[] {
  const blanks = blanksById(group.blanks);
  const spareOrNot = spareTeller(group, answer);
  return group.cloths.map((id) => {
    const cloth = quilt.cloths.find((each) => each.id === id);
    if (cloth === undefined) {
      throw new Error(`the group "${group.id}" names the cloth "${id}", which the quilt does not have`);
    }
    return tallyCloth(quilt, group, answer, cloth, blanks, spareOrNot);
  });
}

function tallyCloth(
  quilt: Quilt,
  group: Group,
  answer: LayoutAnswer,
  cloth: Cloth,
  blanks: ReadonlyMap<string, Blank>,
  isSpare: IsSpare,
): PricedTally {
  const lengths = group.lengths
    .map((length, i) => ({ ...length, job: group.job.cloths[i]! }))
    .filter((length) => length.cloth === cloth.id);
  const layoutsOf = (id: string) => answer.layouts.filter((layout) => layout.cloth === id);
  const bolt = lengths.find((length) => length.piece === null)?.job ?? null;
  const boltLayouts = bolt === null ? [] : layoutsOf(bolt.id);
  const need = boltLayouts.reduce((sum, layout) => sum + layout.count * layout.length, 0);
  const steps = bolt?.step === undefined ? null : stepsFor(need, bolt.step);
  const bought = bolt?.step === undefined || steps === null ? need : steps * bolt.step;
  const step = cloth.step === undefined ? null : lengthIn(quilt.unit, cloth.step);
  const buy = steps === null || step === null ? need : steps * step;
  const pieces = lengths.flatMap((length) =>
    length.piece === null ? [] : [{ piece: length.piece, job: length.job, layouts: layoutsOf(length.id) }],
  );
  const leftovers = leftoversOf(quilt, group, answer).filter((each) => each.cloth === cloth.id);
  const accounts = [
    ...boltLayouts.map((layout) => accountsOf(layout, bolt!.width, blanks, isSpare)),
    bolt === null ? NO_AREA : wasteOf((bought - need) * bolt.width),
    ...pieces.flatMap(({ piece, job, layouts }) =>
      layouts.map((layout) =>
        addAreas(accountsOf(layout, job.width, blanks, isSpare), pieceAccounts(quilt, cloth, piece, job, layout)),
      ),
    ),
    keptOf(leftovers.reduce((sum, { width, length, count }) => sum + width * length * count, 0)),
  ];
  const boltArea = boltLayouts.reduce((sum, layout) => sum + layout.count * leastArea(layout, blanks), 0);
  const thirdCuts = bolt === null ? null : sayThirdCuts(group, answer, cloth, quilt.unit);
  const own = (blank: string) => canBeCutFrom(group, blank, cloth.id);
  return {
    cloth: cloth.id,
    name: cloth.name,
    need,
    steps,
    buy,
    price: cloth.price === undefined ? null : inCents(cloth.price.amount * convert(buy, quilt.unit, cloth.price.per)),
    currency: cloth.price?.currency ?? null,
    over: bought - need,
    pieces: pieces.map(({ piece, layouts }) => ({
      piece,
      used: layouts.reduce((sum, layout) => sum + layout.count, 0),
    })),
    areas: sumAreas(accounts),
    leftovers,
    blanks: [...boltLayouts, ...pieces.flatMap((each) => each.layouts)].reduce(
      (sum, layout) => sum + layout.count * layout.placements.length,
      0,
    ),
    proof: proofOf({
      group,
      answer,
      cloth,
      unit: quilt.unit,
      bolt,
      need,
      fromShelf: pieces.some((each) => each.layouts.length > 0),
      boltArea,
    }),
    ...(thirdCuts !== null && { thirdCuts }),
    unplaced: answer.unplaced.filter((each) => own(each.blank)),
  };
}

/** As a shop charges it: each line rounded to the cent, half a cent up, so that the lines add up to the total. */
const inCents = (amount: number): number => Math.round(amount * 100 + 1e-7) / 100;

/** A layout is cut `count` times, and each cutting may hold other spares, so each is reckoned for itself. */
function accountsOf(layout: Layout, width: number, blanks: ReadonlyMap<string, Blank>, isSpare: IsSpare): Areas {
  return sumAreas(Array.from({ length: layout.count }, () => areasOfLayout(layout, width, blanks, isSpare)));
}

/** Of what is left whole, only what is kept is not waste. */
const wasteOf = (rest: number): Areas => ({ ...NO_AREA, used: rest, waste: rest });
const keptOf = (area: number): Areas => ({ ...NO_AREA, kept: area, waste: -area });

/**
 * The rest of a shelf piece, over its whole length: what was squared off before the job saw it, and the end that the
 * layout leaves.
 */
function pieceAccounts(quilt: Quilt, cloth: Cloth, id: string, job: JobCloth, layout: Layout): Areas {
  const piece = cloth.pieces?.find((each) => each.id === id);
  const asItLies = piece === undefined ? 0 : lengthIn(quilt.unit, piece.length);
  const remains = piece?.washed === false ? kept(cloth).along : 1;
  const inJob = job.length ?? layout.length;
  const squaring = Math.max(0, asItLies * remains - inJob) * job.width * layout.count;
  return addAreas(
    { ...NO_AREA, used: squaring, squaring },
    wasteOf((inJob - layout.length) * job.width * layout.count),
  );
}

function leastArea(layout: Layout, blanks: ReadonlyMap<string, Blank>): number {
  return layout.placements.reduce((sum, placement) => {
    const blank = blanks.get(placement.blank);
    return sum + (blank === undefined ? 0 : leastCutArea(blank));
  }, 0);
}

function canBeCutFrom(group: Group, blank: string, cloth: string): boolean {
  const choices = group.job.blanks.find((each) => each.id === blank)?.cloths;
  const ids = choices?.map((choice) => (typeof choice === 'string' ? choice : choice.id));
  return group.lengths.some((length) => length.cloth === cloth && (ids === undefined || ids.includes(length.id)));
}

/** Of the blanks of a kind that are placed, those needed come first and the rest are spares. */
function spareTeller(group: Group, answer: LayoutAnswer): IsSpare {
  const needed = new Map(
    group.blanks.map((blank) => {
      const unplaced = answer.unplaced.find((each) => each.blank === blank.id)?.count ?? 0;
      return [blank.id, Math.min(blank.demand - blank.spares, blank.demand - unplaced)];
    }),
  );
  return (blank) => {
    const left = needed.get(blank.id) ?? 0;
    needed.set(blank.id, left - 1);
    return left <= 0;
  };
}
