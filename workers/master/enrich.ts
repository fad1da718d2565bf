/**
 * Strips that the linear programme has no use for but a whole plan may: the best rows at prices shaken a little, kept when they
 * cost so little above their worth that a cheaper plan could hold them.
 */
import { graphAt } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { goodRow } from '../strips/price-row.ts';
import type { StripColumn } from './column.ts';
import { type Breath, count } from './generate.ts';
import type { MasterPrices, StripMaster } from './strip-master.ts';

const SHAKE = 0.08;
/** Some blanks are left out of a row altogether, so that it is filled with others. */
const LEFT_OUT = 0.15;

/** What a strip costs above the worth of what it holds, at these prices. */
export function lossOf(prices: MasterPrices, column: StripColumn): number {
  let worth = 0;
  for (const [blank, n] of column.counts) worth += n * prices.blank[blank]!;
  return prices.strip(column.family, column.height) - worth;
}

/** Adds such strips for every height that has one already. @param most loss of a strip that is kept */
export async function enrich(
  master: StripMaster,
  prices: MasterPrices,
  most: number,
  random: () => number,
  breath: Breath,
): Promise<void> {
  for (const [f, family] of master.families.entries()) {
    for (const height of family.heights) {
      const shaken = prices.blank.map((v) => (random() < LEFT_OUT ? 0 : v * (1 + SHAKE * (2 * random() - 1))));
      const row = goodRow(graphAt(family, height), shaken, master.demand);
      if (row) {
        const counts = count(row.steps.map((s) => s.variant.blank));
        const column = { family: f, height, counts, row: layRow(row.steps, height) };
        if (lossOf(prices, column) <= most) master.addStrip(column);
      }
      if (!(await breath())) return;
    }
  }
}
