/**
 * A bound from prices that need not be quite right. What every strip could be worth at them is known; where that is more than a
 * strip costs, all prices are scaled down until bolts can pay for it (Farley 1990), and pieces charge the rest as rent, as often
 * as there are such pieces (a Lagrangian bound). Any solution of the dual programme bounds every plan; this makes one.
 */

import { bestSlots } from './piece-slots.ts';
import { leastWorth, type SplitBox } from './shares.ts';
import { type HeightCut, type MasterPrices, pieceCost, type StripMaster } from './strip-master.ts';

/** By family: heights with the most that a strip so tall can be worth, what cuts add to it included. */
export type StripWorths = readonly (readonly { readonly height: number; readonly worth: number }[])[];

export interface DualBound {
  readonly value: number;
  /** What the prices were multiplied by to make it one. */
  readonly scale: number;
}

export function dualBound(
  master: StripMaster,
  cuts: readonly HeightCut[],
  prices: MasterPrices,
  worths: StripWorths,
): DualBound {
  const income = incomeOf(master, cuts, prices);
  let scale = 1;
  const tenants = new Map<number, number>();
  worths.forEach((heights, f) => {
    const family = master.families[f]!;
    if (family.stack === null) {
      const rate = family.cloth.cost ?? 1;
      for (const { height, worth } of heights) if (worth > 0) scale = Math.min(scale, (rate * height) / worth);
      return;
    }
    const worth = bestSlots(slotWorths(heights), family.stack, 0)?.value ?? 0;
    if (family.segment !== null) {
      if (worth > 0) scale = Math.min(scale, ((family.cloth.cost ?? 1) * family.segment) / worth);
      return;
    }
    tenants.set(family.clothIndex, Math.max(tenants.get(family.clothIndex) ?? 0, worth));
  });
  const cost = (cloth: number) => pieceCost(master.families.find((f) => f.clothIndex === cloth)!);
  for (const [cloth, worth] of tenants)
    if (master.stock[cloth] === Infinity && worth > 0) scale = Math.min(scale, cost(cloth) / worth);
  const at = (s: number): number => {
    let value = master.fixedCost() + s * income;
    for (const [cloth, worth] of tenants) {
      const rent = Math.max(0, s * worth - cost(cloth));
      // Without end of pieces the scale itself has seen to it that none charges rent.
      if (rent > 0 && master.stock[cloth] !== Infinity) value -= rent * master.stock[cloth]!;
    }
    return value;
  };
  // Concave in the scale, so its best lies where some piece begins to charge rent, or at an end.
  const turning = [...tenants].flatMap(([cloth, worth]) => (worth > 0 ? [cost(cloth) / worth] : []));
  const tried = [scale, ...turning.filter((s) => s < scale)].map((s) => ({ value: at(s), scale: s }));
  return tried.reduce((a, b) => (b.value > a.value ? b : a), { value: 0, scale: 0 });
}

/** What all that is asked for is worth at these prices: a plan's strips must be worth as much together. */
export function incomeOf(
  master: StripMaster,
  cuts: readonly HeightCut[],
  prices: MasterPrices,
  splits?: SplitBox,
): number {
  let income = leastWorth(master.shares, prices.blank, splits);
  master.certain.forEach((d, b) => {
    income += d * prices.blank[b]!;
  });
  cuts.forEach((cut, i) => {
    const dual = prices.cut[i]!;
    if (dual !== 0) income += dual * (dual > 0 ? cut.least : cut.most);
  });
  return income;
}

/** Heights of slots, ascending, with their worth: a slot may hold any lower strip, so it is worth the most of those. */
export function slotWorths(heights: StripWorths[number]): readonly (readonly [height: number, worth: number])[] {
  let most = 0;
  return [...heights]
    .sort((a, b) => a.height - b.height)
    .map(({ height, worth }) => {
      most = Math.max(most, worth);
      return [height, most] as const;
    });
}
