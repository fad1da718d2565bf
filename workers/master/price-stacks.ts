/**
 * Pricing where blanks may be stacked. A quick look scans every height for rows of boxes and stacks, which costs next to nothing, and
 * looks closer where it pays; the search that proves asks every height that a plan of use can have.
 *
 * Which heights those are: multiples of the ruler up to what the family's rule says, which whoever made the family has taken from
 * the best plan known, since no strip of a cheaper one is taller than all of it. Where these are too many to be asked one by one,
 * the taller ones are bounded all at once: a stack is worth at most its height times the best value per height among boxes no wider.
 */
import { type Family, graphAt, passingGraphAt } from '../strips/family.ts';
import { priceRow } from '../strips/price-row.ts';
import { boundByRatio } from '../strips/ratio.ts';
import type { RowGraph } from '../strips/row-graph.ts';
import { type PricedStack, stacksFor, withStacks } from '../strips/stack-graph.ts';
import { stackHeights } from '../strips/stack-heights.ts';
import { segmentRow } from '../strips/stack-row.ts';
import { boxesForStacks, type Grid, gridFor, type StackTable, stackTable } from '../strips/stack-table.ts';
import type { Breath } from './generate.ts';
import { addSegments, addStackedRow } from './stack-columns.ts';
import type { MasterPrices, StripMaster } from './strip-master.ts';

/** What a round of pricing finds out for one family. */
export interface StackRound {
  readonly exact: boolean;
  readonly slack: number;
  added: number;
  readonly worths: { height: number; worth: number }[];
}

/** New strips of boxes and of slants that a quick look is content with. */
const BOX_ROWS = 12;
const SLANTED_ROWS = 6;
/** Stacks offered to a slanted row: in a quick look, and where something is to be proved. */
const FEW_STACKS = 8;
const MANY_STACKS = 24;

interface Asked {
  readonly master: StripMaster;
  readonly f: number;
  readonly family: Family;
  readonly prices: MasterPrices;
  readonly worth: number;
  readonly round: StackRound;
  readonly breath: Breath;
  readonly heights: readonly number[];
  readonly top: number;
  readonly grid: Grid;
  readonly along: Grid;
  readonly fits: StackTable;
}

/** Prices one family; false when time ran out first. @param turn where a quick look begins among the heights */
export async function priceStacks(
  master: StripMaster,
  f: number,
  prices: MasterPrices,
  worth: number,
  round: StackRound,
  breath: Breath,
  turn: number,
): Promise<boolean> {
  const family = master.families[f]!;
  const heights = stackHeights(family, master.job);
  const top = heights.at(-1) ?? 0;
  if (top === 0) return true;
  const boxes = boxesForStacks(family);
  const grid = gridFor(
    boxes.map((v) => v.height),
    top,
    family.ruler,
  );
  const along = gridFor(
    boxes.map((v) => v.width),
    family.span,
    family.ruler,
  );
  const fits = stackTable(boxes, prices.blank, master.demand, top, grid, 'up');
  const asked: Asked = { master, f, family, prices, worth, round, breath, heights, top, grid, along, fits };
  return round.exact ? prove(asked) : lookQuickly(asked, turn);
}

async function lookQuickly(asked: Asked, turn: number): Promise<boolean> {
  const { master, f, family, prices, worth, round, breath, heights, grid, along, fits } = asked;
  const gains = heights.flatMap((height) => {
    const row = segmentRow(fits, height, family.span, along, 'up');
    const cost = prices.strip(f, height);
    return row.value > cost + worth ? [{ height, cost, row, share: row.value / Math.max(cost, 1e-9) }] : [];
  });
  if (!(await breath())) return false;
  const byShare = [...gains].sort((a, b) => b.share - a.share);
  const byGain = [...gains].sort((a, b) => b.row.value - b.cost - (a.row.value - a.cost));
  const tried = new Set<number>();
  for (let i = 0; i < gains.length && tried.size < 3 * BOX_ROWS && round.added < BOX_ROWS; i++) {
    for (const { height, cost, row } of [byShare[i]!, byGain[i]!]) {
      if (tried.has(height)) continue;
      tried.add(height);
      if (addSegments(master, f, height, fits, row.segments, prices.blank, grid, cost + worth)) round.added++;
    }
    if (!(await breath())) return false;
  }
  if (family.slopes.length === 1) return true;
  const before = round.added;
  const close = [...new Set([...byShare.slice(0, 3).map((g) => g.height), ...rotated(family.heights, turn * 7)])];
  for (const height of close) {
    if (round.added - before >= SLANTED_ROWS) break;
    const stacks = stacksFor(fits, height, master.demand.length, FEW_STACKS, false);
    const graph = graphFor(family, height);
    const priced = priceRow(
      withStacks(graph, stacks),
      valuesWith(prices.blank, stacks),
      demandWith(master.demand, stacks, null),
      prices.strip(f, height) + worth,
      'quick',
    );
    if (priced.best && addStackedRow(master, f, height, priced.best)) round.added++;
    if (!(await breath())) return false;
  }
  return true;
}

async function prove(asked: Asked): Promise<boolean> {
  const { master, f, family, prices, worth, round, breath, heights, top, grid, along, fits } = asked;
  const bounds = grid.exact ? fits : stackTable(boxesForStacks(family), prices.blank, master.demand, top, grid, 'down');
  const slanted = family.slopes.length > 1;
  const twice = 2 * family.heights.at(-1)!;
  const filler = slanted ? 2 * rateOf(graphAt(family, family.heights.at(-1)!), prices.blank) : 0;
  for (const height of heights) {
    const threshold = prices.strip(f, height);
    const bare = prices.bare(f, height);
    const limit = threshold + worth + round.slack * Math.max(0, bare);
    const tell = (bound: number) => round.worths.push({ height, worth: bound + bare - threshold });
    const plain = !slanted || height >= twice - 1e-9;
    const quick = plain ? segmentRow(bounds, height, family.span, along, 'down', filler).value : Infinity;
    if (quick <= limit) {
      tell(quick);
    } else {
      const stacks = stacksFor(bounds, height, master.demand.length, slanted ? MANY_STACKS : Infinity, true);
      const priced = priceRow(
        withStacks(graphFor(family, height), stacks),
        valuesWith(prices.blank, stacks),
        demandWith(master.demand, stacks, family.span),
        limit,
        'exact',
      );
      if (priced.best && addStackedRow(master, f, height, priced.best)) round.added++;
      tell(Math.min(quick, priced.bound));
    }
    if (!(await breath())) return false;
  }
  boundBeyond(asked, filler);
  return true;
}

/** Bounds all strips taller than those asked one by one. */
function boundBeyond({ master, f, family, prices, round, top, along }: Asked, filler: number): void {
  if (!family.stacks!.beyond) return;
  const boxes = boxesForStacks(family).filter((v) => master.demand[v.blank]! > 0);
  let best = 0;
  const rates = boxes.map((v) => {
    best = Math.max(best, prices.blank[v.blank]! / v.height);
    return best;
  });
  const perHeight: StackTable = {
    widths: boxes.map((v) => v.width),
    value: (w) => rates[w]!,
    stack: () => [],
    several: { value: () => 0, stack: () => [] },
  };
  const most = segmentRow(perHeight, 1, family.span, along, 'down', filler / top).value;
  const extra = (height: number) => prices.bare(f, height) - prices.strip(f, height);
  if (family.stack === null) {
    // Off a bolt what matters is worth for each unit of height, and that is most where what cuts pay is spread least.
    const paid = Math.max(0, ...beyondHeights(master, top).map(extra), extra(top));
    round.worths.push({ height: top, worth: most * top + paid });
    return;
  }
  const ruler = family.ruler!;
  for (let h = top + ruler; h <= family.stack * (1 + 1e-9); h += ruler)
    round.worths.push({ height: h, worth: most * h + extra(h) });
}

/** Heights above the top at which a strip's price may change by a cut. */
const beyondHeights = (master: StripMaster, top: number): readonly number[] =>
  [...new Set(master.strips.map((s) => s.height))].filter((h) => h > top);

function graphFor(family: Family, height: number): RowGraph {
  const asked = family.heights.find((h) => Math.abs(h - height) < 1e-9);
  return asked === undefined ? passingGraphAt(family, height) : graphAt(family, asked);
}

/** The most that a unit of length can be worth in a row of this strip. */
function rateOf(graph: RowGraph, values: Float64Array): number {
  const own = Float64Array.from(graph.blanks, (b) => (values[b]! > 1e-9 ? values[b]! : 0));
  return own.some((v) => v > 0) ? boundByRatio(graph, own).rate : 0;
}

const valuesWith = (values: Float64Array, stacks: readonly PricedStack[]): Float64Array =>
  Float64Array.from([...values, ...stacks.map((s) => s.value)]);

/** @param span of the strip: stacks as often as there is room; null: no more of one than its blanks are wanted */
function demandWith(demand: Int32Array, stacks: readonly PricedStack[], span: number | null): Int32Array {
  return Int32Array.from([
    ...demand,
    ...stacks.map(({ variant }) => {
      if (span !== null) return Math.floor(span / variant.width + 1e-6);
      const counts = new Map<number, number>();
      for (const { blank } of variant.stack!) counts.set(blank, (counts.get(blank) ?? 0) + 1);
      return Math.min(...[...counts].map(([blank, n]) => Math.floor(demand[blank]! / n)));
    }),
  ]);
}

function rotated<T>(list: readonly T[], by: number): readonly T[] {
  const at = list.length === 0 ? 0 : by % list.length;
  return [...list.slice(at), ...list.slice(0, at)];
}
