/**
 * Column generation: the linear programme over all strips, by asking again and again for the strip that is worth more than
 * it costs at the prices of the moment. When none is left its value bounds every plan.
 */
import { type Family, gainsByRaising, graphAt } from '../strips/family.ts';
import { fitRow } from '../strips/lay-row.ts';
import { type PricedRow, type PricedRows, priceRow } from '../strips/price-row.ts';
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
  /** Only strips that can really be laid. */
  readonly realOnly?: boolean;
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
  const { quick = false, slack = 0, realOnly = false, onBound = () => {} } = effort;
  let bound = 0;
  const boltsOnly = master.families.every((f) => f.stack === null);
  for (;;) {
    const solved = master.linear(cuts);
    if (!solved) return null;
    const { solution, prices } = solved;
    const worth = WORTH * (1 + solution.value);
    // A quick look over all heights first; only when it finds nothing more, the search that proves there is nothing.
    let round = await price(master, prices, worth, { exact: false, slack: 0, realOnly }, breath);
    const proving = round.added === 0 && !quick && !round.cut;
    if (proving) round = await price(master, prices, worth, { exact: true, slack, realOnly }, breath);
    if (boltsOnly && proving && !round.cut) {
      // Farley 1990: prices scaled down until no strip is worth more than it costs are a proof.
      bound = Math.max(bound, master.fixedCost() + (solution.value - master.fixedCost()) * round.scale);
      onBound(bound);
    }
    if (round.cut) return { solution, prices, bound, complete: false };
    if (round.added === 0) {
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
  readonly realOnly: boolean;
  /** Time ran out before everything was priced. */
  cut: boolean;
}

async function price(master: StripMaster, prices: MasterPrices, worth: number, how: Pick<Round, 'exact' | 'slack' | 'realOnly'>, breath: Breath): Promise<Round> {
  const round: Round = { added: 0, scale: 1, open: false, ...how, cut: false };
  for (let f = 0; f < master.families.length; f++) {
    for (const height of master.families[f]!.heights) {
      priceHeight(master, f, height, prices, worth, round);
      if (!(await breath())) return { ...round, cut: true };
    }
    if (round.added === 0 && how.exact) await priceBetween(master, f, prices, worth, round, breath);
    if (round.cut) return round;
    if (pricePiece(master, f, prices, worth)) round.added++;
  }
  return round;
}

function priceHeight(master: StripMaster, f: number, height: number, prices: MasterPrices, worth: number, round: Round): PricedRows {
  const family = master.families[f]!;
  const graph = graphAt(family, height);
  const threshold = prices.strip(f, height);
  const open = round.slack * Math.max(0, prices.bare(f, height));
  const priced = priceSound(graph, prices.blank, master.demand, threshold + worth + open, round.exact);
  if (priced.best && addRow(master, f, height, graph, priced.best, round.realOnly)) round.added++;
  if (priced.bound > threshold + worth * 1.001) {
    const bare = prices.bare(f, height);
    round.scale = Math.min(round.scale, Math.max(0, bare / (priced.bound + bare - threshold)));
    round.open = true;
  }
  return priced;
}

/** Where paths prove nothing (an advance that is not forward), area does. */
function priceSound(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number, exact: boolean): PricedRows {
  if (graph.sound) return priceRow(graph, values, demand, threshold, exact);
  let dearest = 0;
  for (const { variant } of graph.states) dearest = Math.max(dearest, values[variant.blank]! / variant.area);
  const straight = { ...graph, advances: graph.advances.map((d) => Math.max(d, graph.span * 1e-3)) };
  return { best: priceRow(straight, values, demand, threshold, false).best, bound: dearest * graph.span * graph.height };
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
    if (!asked.has(k)) priceHeight(master, f, k * ruler, prices, worth, round);
    if (!(await breath())) {
      round.cut = true;
      return;
    }
  }
}

/** Adds the row, or what of it can be laid beside the row itself, which then only serves the bound. */
export function addRow(master: StripMaster, f: number, height: number, graph: RowGraph, row: PricedRow, realOnly: boolean): boolean {
  let states = row.path.map((u) => graph.states[u]!);
  const counts = count(states.map((s) => s.variant.blank));
  const within = [...counts].every(([blank, n]) => n <= master.demand[blank]!);
  const laid = within ? fitRow(states, graph.span) : null;
  const added = laid !== null || !realOnly ? master.addStrip({ family: f, height, counts, row: laid }) : false;
  if (laid) return added;
  const seen = new Map<number, number>();
  states = states.filter((s) => {
    const n = (seen.get(s.variant.blank) ?? 0) + 1;
    seen.set(s.variant.blank, n);
    return n <= master.demand[s.variant.blank]!;
  });
  while (states.length > 0) {
    const real = fitRow(states, graph.span);
    if (real) {
      const realAdded = master.addStrip({ family: f, height, counts: count(states.map((s) => s.variant.blank)), row: real });
      return added || realAdded;
    }
    states = states.slice(0, -1);
  }
  return added;
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
