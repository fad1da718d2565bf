/**
 * Column generation: the linear programme over all strips, by asking again and again for the strip that is worth more than
 * it costs at the prices of the moment. When none is left its value bounds every plan.
 */
import { type Family, gainsByRaising, graphAt, passingGraphAt } from '../strips/family.ts';
import { fitRow, layRow } from '../strips/lay-row.ts';
import { type PricedRow, priceRow } from '../strips/price-row.ts';
import type { RowGraph } from '../strips/row-graph.ts';
import type { HeightCut, MasterPrices, MasterSolution, StripMaster } from './strip-master.ts';

export interface Generated {
  readonly solution: MasterSolution;
  readonly prices: MasterPrices;
  /** Proved: no plan under these cuts is cheaper. 0 until something is known. */
  readonly bound: number;
  /** False when time ran out first. */
  readonly complete: boolean;
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
  /** Hears of each better bound on the way (only where every strip comes off a bolt). */
  readonly onBound?: (bound: number) => void;
}

/** Generates columns until none improves. Null when the cuts admit no plan at all. */
export async function generate(master: StripMaster, cuts: readonly HeightCut[], breath: Breath, effort: Effort = {}): Promise<Generated | null> {
  const { quick = false, slack = 0, rounds = Infinity, onBound = () => {} } = effort;
  let bound = 0;
  const boltsOnly = master.families.every((f) => f.stack === null);
  for (let turn = 0; ; turn++) {
    const solved = master.linear(cuts);
    if (!solved) return null;
    const { solution, prices } = solved;
    const worth = WORTH * (1 + solution.value);
    // A quick look over all heights first; only when it finds nothing more, the search that proves there is nothing.
    let round = await price(master, prices, worth, { exact: false, slack: 0 }, breath, turn);
    const proving = round.added === 0 && !quick && !round.cut;
    if (proving) round = await price(master, prices, worth, { exact: true, slack }, breath);
    if (boltsOnly && proving && !round.cut) {
      // Farley 1990: prices scaled down until no strip is worth more than it costs are a proof.
      bound = Math.max(bound, master.fixedCost() + (solution.value - master.fixedCost()) * round.scale);
      onBound(bound);
    }
    if (round.cut) return { solution, prices, bound, complete: false };
    if (round.added === 0 || turn >= rounds) {
      return { solution, prices, bound: quick ? 0 : boltsOnly ? bound : round.open ? 0 : solution.value, complete: true };
    }
    if (!(await breath())) return { solution, prices, bound, complete: false };
  }
}

interface Round {
  added: number;
  /** By how much prices must shrink to be a proof. */
  scale: number;
  /** Some strip may be worth more than it costs, though none was found. */
  open: boolean;
  readonly exact: boolean;
  readonly slack: number;
  /** Time ran out before everything was priced. */
  cut: boolean;
}

/** A quick look at slanted blanks is content with so many new strips: prices have changed by then. */
const ENOUGH = 4;

/** @param turn where a quick look begins among the heights, so that it is not always the same that are looked at */
async function price(
  master: StripMaster,
  prices: MasterPrices,
  worth: number,
  how: Pick<Round, 'exact' | 'slack'>,
  breath: Breath,
  turn = 0,
): Promise<Round> {
  const round: Round = { added: 0, scale: 1, open: false, ...how, cut: false };
  const { families } = master;
  for (let f = 0; f < families.length; f++) {
    const { heights, slopes } = families[f]!;
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

function priceHeight(master: StripMaster, f: number, height: number, graph: RowGraph, prices: MasterPrices, worth: number, round: Round): void {
  const threshold = prices.strip(f, height);
  const bare = prices.bare(f, height);
  const open = round.slack * Math.max(0, bare);
  const priced = priceRow(graph, prices.blank, master.demand, threshold + worth + open, round.exact);
  if (priced.best && addRow(master, f, height, priced.best)) round.added++;
  if (priced.bound > threshold + worth * 1.001) {
    round.scale = Math.min(round.scale, Math.max(0, bare / (priced.bound + bare - threshold)));
    round.open = true;
  }
}

/**
 * Strips of a height that no blank asks for: only of use where a blank is raised beside its neighbour, and of no more use
 * once the strip is twice as tall as the tallest.
 */
async function priceBetween(master: StripMaster, f: number, prices: MasterPrices, worth: number, round: Round, breath: Breath): Promise<void> {
  const family = master.families[f]!;
  if (!gainsByRaising(family)) return;
  const ruler = family.ruler!;
  const top = Math.min(family.stack ?? Infinity, 2 * family.heights.at(-1)! + ruler);
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
  const addedReal = real !== null && master.addStrip({ family: f, height, counts: count(wanted.map((v) => v.blank)), row: real });
  return master.addStrip({ family: f, height, counts, row: null }) || addedReal;
}

export function count(blanks: readonly number[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const b of blanks) counts.set(b, (counts.get(b) ?? 0) + 1);
  return counts;
}

/** The best way to part one piece into strips: an unbounded knapsack over slot heights. */
function pricePiece(master: StripMaster, f: number, prices: MasterPrices, worth: number): boolean {
  const family = master.families[f]!;
  if (family.stack === null) return false;
  const heights = slotHeights(master, f, family);
  const best = bestSlots(heights.map((h) => [h, prices.slot(f, h)] as const), family.stack, prices.piece(f) + worth);
  return best !== null && master.addPiece({ family: f, slots: best });
}

function slotHeights(master: StripMaster, f: number, family: Family): readonly number[] {
  const used = master.strips.filter((s) => s.family === f).map((s) => s.height);
  return [...new Set([...family.heights, ...used])].sort((a, b) => b - a);
}

function bestSlots(items: readonly (readonly [height: number, value: number])[], stack: number, threshold: number): Map<number, number> | null {
  const room = stack * (1 + 1e-9) + 1e-9;
  const at = [0], val = [0], item = [-1], parent = [-1];
  let front = [0];
  let best = -1;
  let bestValue = threshold;
  const sorted = items.filter(([, v]) => v > 1e-12).sort((a, b) => b[1] / b[0] - a[1] / a[0]);
  sorted.forEach(([height, value], k) => {
    const rate = value / height;
    const grown = [...front];
    let layer = front;
    while (layer.length > 0) {
      const next: number[] = [];
      for (const l of layer) {
        const position = at[l]! + height;
        if (position > room || val[l]! + value + rate * (room - position) <= bestValue) continue;
        const label = at.push(position) - 1;
        val.push(val[l]! + value);
        item.push(k);
        parent.push(l);
        if (val[label]! > bestValue) {
          bestValue = val[label]!;
          best = label;
        }
        next.push(label);
      }
      grown.push(...next);
      layer = next;
    }
    grown.sort((a, b) => at[a]! - at[b]! || val[b]! - val[a]!);
    let top = -Infinity;
    front = grown.filter((l) => val[l]! > top && ((top = val[l]!), true));
  });
  if (best < 0) return null;
  const slots = new Map<number, number>();
  for (let l = best; parent[l]! >= 0; l = parent[l]!) {
    const height = sorted[item[l]!]![0];
    slots.set(height, (slots.get(height) ?? 0) + 1);
  }
  return slots;
}
