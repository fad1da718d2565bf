/**
 * Demand that follows from a choice. A share is so many units (blocks, or single spares) that are split among its ways; each unit of
 * a way asks for so many of some blanks. So "one cloth per block" is a share of blocks with a way for each cloth.
 */
export interface Share {
  readonly total: number;
  /** By way: blank of the job to how many a unit asks for. */
  readonly ways: readonly ReadonlyMap<number, number>[];
}

/** By share, by way: how many units. */
export type Split = readonly (readonly number[])[];

/** From and to how many units of each way. */
export interface SplitBox {
  readonly least: Split;
  readonly most: Split;
}

export function wholeSplitBox(shares: readonly Share[]): SplitBox {
  return { least: shares.map((s) => s.ways.map(() => 0)), most: shares.map((s) => s.ways.map(() => s.total)) };
}

/** What a split asks for, beside what is asked for in any case. */
export function demandOf(certain: Int32Array, shares: readonly Share[], split: Split): Int32Array {
  const demand = Int32Array.from(certain);
  shares.forEach((share, s) => {
    share.ways.forEach((way, w) => {
      for (const [blank, n] of way) demand[blank]! += n * split[s]![w]!;
    });
  });
  return demand;
}

/** No split asks for more of a blank than this. */
export function mostDemand(certain: Int32Array, shares: readonly Share[]): Int32Array {
  const demand = Int32Array.from(certain);
  for (const share of shares) {
    const most = new Map<number, number>();
    for (const way of share.ways) for (const [b, n] of way) most.set(b, Math.max(most.get(b) ?? 0, n));
    for (const [b, n] of most) demand[b]! += n * share.total;
  }
  return demand;
}

/** The least that any split within the box is worth at these prices: each share fills its cheapest ways first. */
export function leastWorth(shares: readonly Share[], prices: Float64Array, splits: SplitBox | undefined): number {
  const box = splits ?? wholeSplitBox(shares);
  let sum = 0;
  shares.forEach(({ total, ways }, s) => {
    const worths = ways.map((way) => [...way].reduce((worth, [b, n]) => worth + n * prices[b]!, 0));
    let left = total;
    worths.forEach((worth, w) => {
      const least = box.least[s]![w]!;
      sum += worth * least;
      left -= least;
    });
    for (const w of [...worths.keys()].sort((a, b) => worths[a]! - worths[b]!)) {
      const more = Math.min(left, box.most[s]![w]! - box.least[s]![w]!);
      sum += worths[w]! * more;
      left -= more;
    }
  });
  return sum;
}

/** Whole units near the fractions given, each share's adding up to its total. @param random 0 to 1, decides who gets the rest */
export function roundSplit(shares: readonly Share[], near: Split, random: () => number): Split {
  return shares.map(({ total }, s) => {
    const whole = near[s]!.map((z) => Math.floor(z + 1e-6));
    const rests = near[s]!.map((z, w) => z - whole[w]! + 1e-3);
    for (let left = total - whole.reduce((a, b) => a + b, 0); left > 0; left--) {
      let at = random() * rests.reduce((a, b) => a + Math.max(0, b), 0);
      let w = rests.findIndex((r) => {
        at -= Math.max(0, r);
        return at <= 0;
      });
      if (w < 0) w = 0;
      whole[w]!++;
      rests[w]! = Math.max(1e-3, rests[w]! - 1);
    }
    return whole;
  });
}
