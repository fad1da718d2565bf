/** What one version of a plan costs more or less than the plan as wanted. */
import type { Version } from './side-by-side.ts';
import type { ClothTally, Tally } from './tally.ts';

export interface Difference {
  readonly cloth: string;
  readonly name: string;
  /** Of the version; and more than the plan as wanted buys, both as sold, in the quilt's unit. */
  readonly buy: number;
  readonly more: number;
  readonly moreSteps: number | null;
  readonly morePrice: number | null;
  /** Whether nothing cheaper of its kind is left to be found; if not, what is proved to be needed, null where nothing is. */
  readonly least: boolean;
  readonly atLeast: number | null;
}

export interface Price {
  /** By cloth, in the order of the plan as wanted, without those that the version does not plan. */
  readonly cloths: readonly Difference[];
  /** All of them together; null where some have no price or there are several currencies. */
  readonly morePrice: number | null;
  readonly moreSteps: number;
  /**
   * What is proved of the difference. exact: both purchases are proved least. bound: the plan as wanted is, so that the
   * version might save more than this, but not less. open: neither way.
   */
  readonly proof: 'exact' | 'bound' | 'open';
  /** What no such version is proved to cost less than; null where nothing is proved of one of its cloths, or of its price. */
  readonly leastPrice: number | null;
}

/** @param wanted the plan as wanted @param version whole, or as far as it has come */
export function priceOf(wanted: Tally, { tally, kind, whole }: Version): Price {
  const cloths = wanted.cloths.flatMap((line) => {
    // Where another of several cloths serves in its stead, nothing is cut from it; what cannot be bought is not planned.
    const unused = whole && line.steps !== null ? nothingOf(line) : undefined;
    const other = tally.cloths.find(({ cloth }) => cloth === line.cloth) ?? unused;
    return other === undefined ? [] : [difference(line, other, kind !== 'rule of thumb')];
  });
  const isPriced = wanted.price !== null && cloths.every(({ more, morePrice }) => morePrice !== null || more === 0);
  const provedWanted = wanted.cloths.every(({ proof }) => proof.state === 'least');
  return {
    cloths,
    morePrice: isPriced ? inCents(cloths.reduce((sum, each) => sum + (each.morePrice ?? 0), 0)) : null,
    moreSteps: cloths.reduce((sum, { moreSteps }) => sum + (moreSteps ?? 0), 0),
    leastPrice: kind === 'rule of thumb' ? null : leastPriceOf(tally),
    proof: !provedWanted ? 'open' : cloths.every(({ least }) => least) ? 'exact' : 'bound',
  };
}

const nothingOf = (line: ClothTally): ClothTally => ({
  ...line,
  need: 0,
  steps: 0,
  buy: 0,
  price: line.price === null ? null : 0,
});

function difference(wanted: ClothTally, other: ClothTally, canBeProved: boolean): Difference {
  const more = other.buy - wanted.buy;
  return {
    cloth: other.cloth,
    name: other.name,
    buy: other.buy,
    more: Math.abs(more) < 1e-6 ? 0 : more,
    moreSteps: other.steps === null || wanted.steps === null ? null : other.steps - wanted.steps,
    morePrice: other.price === null || wanted.price === null ? null : inCents(other.price - wanted.price),
    least: canBeProved && other.proof.state === 'least',
    atLeast: canBeProved ? lengthProved(other) : null,
  };
}

/** The part of a purchase that is proved to be needed: 1 for all of it. */
function partProved({ proof, steps, need }: ClothTally): number | null {
  if (proof.state === 'least') {
    return 1;
  }
  const bought = steps ?? need;
  return proof.atLeast === null || bought === 0 ? null : proof.atLeast / bought;
}

function lengthProved(line: ClothTally): number | null {
  const part = partProved(line);
  return part === null ? null : part * line.buy;
}

function leastPriceOf(tally: Tally): number | null {
  const prices = tally.cloths.map((line) => {
    const part = partProved(line);
    return line.buy === 0 ? 0 : part === null || line.price === null ? null : part * line.price;
  });
  const known = prices.filter((price) => price !== null);
  return tally.price === null || known.length < prices.length
    ? null
    : inCents(known.reduce((sum, price) => sum + price, 0));
}

const inCents = (amount: number): number => Math.round(amount * 100) / 100;
