/**
 * Every strip, and every way to part a piece into strips, that a plan within a purchase could hold. Whatever prices the blanks
 * have, what all that is bought is worth at them exceeds what the blanks are worth by no more than the room there is; so nothing
 * in the plan falls short of its worth by more.
 */
import { type Family, gainsByRaising, graphAt, passingGraphAt, stripHeight } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { listRows } from '../strips/list-rows.ts';
import { listSlantedRows } from '../strips/list-slanted-rows.ts';
import type { PieceColumn, StripColumn } from './column.ts';
import { type StripWorths, slotWorths } from './dual-bound.ts';
import { type Breath, count } from './generate.ts';
import { bestSlots, listSlots } from './piece-slots.ts';
import type { MasterPrices, StripMaster } from './strip-master.ts';

const MOST_LISTED = 3000;
const MOST_SLOTS = 400;

export interface Priced {
  readonly prices: MasterPrices;
  readonly worths: StripWorths;
}

export interface Listed {
  readonly strips: readonly StripColumn[];
  /** By family: all that matter, or null where there are too many. */
  readonly pieces: readonly (readonly PieceColumn[] | null)[];
}

/** By cloth of the job: the most that a length of 1 off a bolt, or a piece, is worth. */
export function worthByCloth(master: StripMaster, worths: StripWorths): readonly number[] {
  const most = master.job.cloths.map(() => 0);
  master.families.forEach((family, f) => {
    const heights = worths[f]!;
    const worth =
      family.stack === null
        ? heights.reduce((best, { height, worth }) => Math.max(best, worth / height), 0)
        : (bestSlots(slotWorths(heights), family.stack, 0)?.value ?? 0);
    most[family.clothIndex] = Math.max(most[family.clothIndex]!, worth);
  });
  return most;
}

/**
 * @param room what the strips and pieces of a plan of interest may all together fall short of their worth
 * @param patience labels of slanted rows to look at before giving up
 * @returns null when there are too many strips, or time is up
 */
export async function listPurchased(
  master: StripMaster,
  { prices, worths }: Priced,
  room: number,
  patience: number,
  breath: Breath,
): Promise<Listed | null> {
  const worth = worthByCloth(master, worths);
  const strips: StripColumn[] = [];
  const pieces: (readonly PieceColumn[] | null)[] = [];
  let left = patience;
  for (const [f, family] of master.families.entries()) {
    const slots = slotWorths(worths[f]!);
    const priceOf = (height: number) =>
      family.stack === null
        ? worth[family.clothIndex]! * height
        : slots.reduce((most, [h, w]) => (h <= height + 1e-9 ? Math.max(most, w) : most), 0);
    const before = strips.length;
    for (const height of heightsOf(family)) {
      const least = priceOf(height) - (prices.bare(f, height) - prices.strip(f, height)) - room;
      const graph = family.heights.includes(height) ? graphAt(family, height) : passingGraphAt(family, height);
      const slanted = graph.slopes.length > 1;
      const listed = slanted
        ? listSlantedRows(graph, prices.blank, master.demand, least, left, MOST_LISTED)
        : listRows(graph, prices.blank, master.demand, least, MOST_LISTED);
      const rows = listed && ('rows' in listed ? listed.rows : listed);
      if (listed && 'rows' in listed) left -= listed.looked;
      if (!rows || strips.length + rows.length > MOST_LISTED || !(await breath())) return null;
      for (const row of rows) {
        // A row of boxes that would fit a lower strip is listed there.
        const tallest = Math.max(...row.steps.map((s) => s.variant.height));
        if (!slanted && stripHeight(tallest, family.ruler) < height - 1e-9) continue;
        const counts = count(row.steps.map((s) => s.variant.blank));
        strips.push({ family: f, height, counts, row: layRow(row.steps, height) });
      }
    }
    const used = [...new Set(strips.slice(before).map((s) => s.height))];
    pieces.push(family.stack === null ? [] : partings(f, family, used, priceOf, worth[family.clothIndex]! - room));
  }
  return { strips, pieces };
}

function partings(
  f: number,
  family: Family,
  heights: readonly number[],
  priceOf: (height: number) => number,
  least: number,
): readonly PieceColumn[] | null {
  const items = heights.map((h) => [h, priceOf(h)] as const);
  return listSlots(items, family.stack!, least, MOST_SLOTS)?.map((slots) => ({ family: f, slots })) ?? null;
}

/** Where raising helps, multiples of the ruler up to where a strip may as well be two; those that blanks ask for as they stand. */
function heightsOf(family: Family): readonly number[] {
  if (!gainsByRaising(family)) return family.heights;
  const ruler = family.ruler!;
  const known = new Map(family.heights.map((h) => [Math.round(h / ruler), h]));
  const first = Math.round(family.heights[0]! / ruler);
  const last = 2 * Math.round(family.heights.at(-1)! / ruler) - 1;
  const all = Array.from({ length: last - first + 1 }, (_, i) => known.get(first + i) ?? (first + i) * ruler);
  return all.filter((h) => h <= (family.stack ?? Infinity) * (1 + 1e-9));
}
