/**
 * Column generation: the linear programme over all strips, by asking again and again for the strip that is worth more than
 * it costs at the prices of the moment. When none is left its value bounds every plan.
 */
import { type Family, gainsByRaising, graphAt, passingGraphAt } from '../strips/family.ts';
import { fitRow, layRow } from '../strips/lay-row.ts';
import { type PricedRow, priceRow } from '../strips/price-row.ts';
import type { RowGraph } from '../strips/row-graph.ts';
import { dualBound, type StripWorths } from './dual-bound.ts';
import { bestSlots } from './piece-slots.ts';
import { priceStacks } from './price-stacks.ts';
import type { SplitBox } from './shares.ts';
import type { Caps, HeightCut, MasterPrices, MasterSolution, StripMaster } from './strip-master.ts';

export interface Generated {
  readonly solution: MasterSolution;
  readonly prices: MasterPrices;
  /** Proved: no plan under these cuts is cheaper. 0 until something is known. */
  readonly bound: number;
  /** What the prices are to be multiplied by for the bound to be theirs. */
  readonly scale: number;
  /** False when time ran out first. */
  readonly complete: boolean;
  /** The most that strips can be worth at these prices; empty where that was not proved. */
  readonly worths: StripWorths;
}

/** Called between solves: lets messages in, and says whether to go on. */
export type Breath = () => Promise<boolean>;

/** A strip must be worth this much more than it costs, in parts of the plan's cost, to be of interest. */
const WORTH = 1e-9;

export interface Effort {
  /** Only the quick looks: good columns, no bound. */
  readonly quick?: boolean;
  /** At most so many rounds of pricing; then what there is, as if complete. */
  readonly rounds?: number;
  /**
   * How far above the true one, in parts of it, the search that proves may leave a strip's worth open: a little makes it
   * much faster, and the bound as much lower.
   */
  readonly slack?: number;
  /** Hears of each better bound on the way. */
  readonly onBound?: (bound: number) => void;
  /** No more of each cloth than this. Then the bound is not told: purchase-tree.ts makes one from the worths. */
  readonly caps?: Caps;
  /** How shares may be split. Asks for caps. */
  readonly splits?: SplitBox | undefined;
}

/** Generates columns until none improves. Null when the cuts admit no plan at all. */
export async function generate(
  master: StripMaster,
  cuts: readonly HeightCut[],
  breath: Breath,
  effort: Effort = {},
): Promise<Generated | null> {
  const { quick = false, slack = 0, rounds = Infinity, onBound = () => {}, caps, splits } = effort;
  let bound = 0;
  let scale = 1;
  let worths: StripWorths = [];
  for (let turn = 0; ; turn++) {
    const solved = master.linear(cuts, caps, splits);
    if (!solved) return null;
    const { solution, prices } = solved;
    const worth = WORTH * (1 + solution.value);
    // A quick look over all heights first; only when it finds nothing more, the search that proves there is nothing.
    let round = await price(master, prices, worth, { exact: false, slack: 0 }, breath, turn);
    const proving = round.added === 0 && !quick && !round.cut;
    if (proving) round = await price(master, prices, worth, { exact: true, slack }, breath);
    if (proving && !round.cut && round.added === 0) worths = round.worths;
    if (proving && !round.cut && round.added === 0 && !caps) {
      const dual = dualBound(master, cuts, prices, round.worths);
      bound = dual.value;
      scale = dual.scale;
      onBound(bound);
    }
    if (round.cut) return { solution, prices, bound, scale, complete: false, worths };
    if (round.added === 0 || turn >= rounds) {
      return { solution, prices, bound, scale, complete: true, worths };
    }
    if (!(await breath())) return { solution, prices, bound, scale, complete: false, worths };
  }
}

interface Round {
  added: number;
  /** By family and height, the most that a strip can be worth. */
  readonly worths: { height: number; worth: number }[][];
  readonly exact: boolean;
  readonly slack: number;
  /** Time ran out before everything was priced. */
  cut: boolean;
}

/** A quick look at slanted blanks is content with so many new strips: prices have changed by then. */
const ENOUGH = 10;

/** @param turn where a quick look begins among the heights, so that it is not always the same that are looked at */
async function price(
  master: StripMaster,
  prices: MasterPrices,
  worth: number,
  how: Pick<Round, 'exact' | 'slack'>,
  breath: Breath,
  turn = 0,
): Promise<Round> {
  const round: Round = { added: 0, worths: master.families.map(() => []), ...how, cut: false };
  const { families } = master;
  for (let f = 0; f < families.length; f++) {
    const { heights, slopes, stacks } = families[f]!;
    if (stacks) {
      const found = { ...how, added: 0, worths: round.worths[f]! };
      const whole = await priceStacks(master, f, prices, worth, found, breath, turn);
      round.added += found.added;
      if (!whole) return { ...round, cut: true };
      if (pricePiece(master, f, prices, worth)) round.added++;
      continue;
    }
    const enough = how.exact || slopes.length === 1 ? Infinity : ENOUGH;
    for (let k = 0; k < heights.length && round.added < enough; k++) {
      const height = heights[(k + turn * 7) % heights.length]!;
      priceHeight(master, f, height, graphAt(families[f]!, height), prices, worth, round);
      if (!(await breath())) return { ...round, cut: true };
    }
    if (round.added === 0 && how.exact) await priceBetween(master, f, prices, worth, round, breath);
    if (round.cut) return round;
    if (pricePiece(master, f, prices, worth)) round.added++;
  }
  return round;
}

function priceHeight(
  master: StripMaster,
  f: number,
  height: number,
  graph: RowGraph,
  prices: MasterPrices,
  worth: number,
  round: Round,
): void {
  const threshold = prices.strip(f, height);
  const bare = prices.bare(f, height);
  const open = round.slack * Math.max(0, bare);
  const priced = priceRow(
    graph,
    prices.blank,
    master.demand,
    threshold + worth + open,
    round.exact ? 'exact' : 'quick',
  );
  if (priced.best && addRow(master, f, height, priced.best)) round.added++;
  round.worths[f]!.push({ height, worth: priced.bound + bare - threshold });
}

/**
 * Strips of a height that no blank asks for: only of use where a blank is raised beside its neighbour. From twice the tallest
 * blank's height on, a strip may as well be two, one with the blanks that lie low and one with those that lie high, parted by the
 * same cuts; so no plan needs one so tall.
 */
async function priceBetween(
  master: StripMaster,
  f: number,
  prices: MasterPrices,
  worth: number,
  round: Round,
  breath: Breath,
): Promise<void> {
  const family = master.families[f]!;
  if (!gainsByRaising(family)) return;
  const ruler = family.ruler!;
  const top = Math.min(family.stack ?? Infinity, 2 * family.heights.at(-1)! - ruler);
  const asked = new Set(family.heights.map((h) => Math.round(h / ruler)));
  for (let k = Math.round(family.heights[0]! / ruler) + 1; k * ruler <= top * (1 + 1e-9); k++) {
    if (!asked.has(k)) priceHeight(master, f, k * ruler, passingGraphAt(family, k * ruler), prices, worth, round);
    if (!(await breath())) {
      round.cut = true;
      return;
    }
  }
}

/** Adds the row; where it holds more of a blank than is wanted, what is wanted of it too, since only that can be planned. */
export function addRow(master: StripMaster, f: number, height: number, row: PricedRow): boolean {
  const variants = row.steps.map((s) => s.variant);
  const counts = count(variants.map((v) => v.blank));
  if ([...counts].every(([blank, n]) => n <= master.demand[blank]!)) {
    return master.addStrip({ family: f, height, counts, row: layRow(row.steps, height) });
  }
  const seen = new Map<number, number>();
  const wanted = variants.filter(({ blank }) => {
    seen.set(blank, (seen.get(blank) ?? 0) + 1);
    return seen.get(blank)! <= master.demand[blank]!;
  });
  const real = fitRow(wanted, height, master.families[f]!.span);
  const addedReal =
    real !== null && master.addStrip({ family: f, height, counts: count(wanted.map((v) => v.blank)), row: real });
  return master.addStrip({ family: f, height, counts, row: null }) || addedReal;
}

export function count(blanks: readonly number[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const b of blanks) counts.set(b, (counts.get(b) ?? 0) + 1);
  return counts;
}

/** Adds the piece that is worth most more than it costs. */
function pricePiece(master: StripMaster, f: number, prices: MasterPrices, worth: number): boolean {
  const family = master.families[f]!;
  if (family.stack === null) return false;
  const heights = slotHeights(master, f, family);
  const best = bestSlots(
    heights.map((h) => [h, prices.slot(f, h)] as const),
    family.stack,
    prices.piece(f) + worth,
  );
  return best !== null && master.addPiece({ family: f, slots: best.slots });
}

function slotHeights(master: StripMaster, f: number, family: Family): readonly number[] {
  const used = master.strips.filter((s) => s.family === f).map((s) => s.height);
  return [...new Set([...family.heights, ...used])].sort((a, b) => b - a);
}
