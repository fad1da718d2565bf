/**
 * The best value per length that an endless row could reach, and what each state adds to it at the row's ends: together they
 * bound what any row, however it goes on, can still be worth.
 * Policy iteration for the greatest cycle ratio (Howard 1960; Cochet-Terrasson et al. 1998).
 */
import { type RowGraph, tail } from './row-graph.ts';

export interface RatioBound {
  /** Value per unit of length. */
  readonly rate: number;
  /** bonus[s]: a row that stands at a cut of slope s with `rest` left beyond it gains at most rate × rest + bonus[s]. */
  readonly bonus: Float64Array;
}

/** @param values by the graph's blanks, 0 for those that are not to be used; at least one positive */
export function boundByRatio(graph: RowGraph, values: Float64Array): RatioBound {
  const m = graph.slopes.length;
  let rate = greatestRatio(graph, values) * (1 + 1e-9);
  // What is returned is checked here: settled bonuses are a certificate that no row gains more than they say.
  for (;;) {
    const arcs = bestArcs(graph, values, rate);
    const bonus = settle(graph, arcs, m, rate);
    if (bonus) return { rate, bonus };
    rate *= 1.001;
  }
}

export interface DemandBound {
  readonly bound: number;
  /** By the graph's blanks: what each copy gains over the rate, which is the rent that would take the gain away. */
  readonly gains: Float64Array;
}

/**
 * A bound that knows demand: at a lower rate some blanks gain on every copy, but no row holds more copies than are wanted. Rates tried
 * are a little below the best one, and those of rows without the blanks worth most for their length, as long as they cannot fill
 * the strip alone.
 * @param most by the graph's blanks
 */
export function boundByDemand(graph: RowGraph, values: Float64Array, most: Int32Array, ratio: RatioBound): DemandBound {
  let best = boundAt(graph, values, most, ratio, ratio.rate);
  const offer = (tried: DemandBound) => {
    if (tried.bound < best.bound) best = tried;
  };
  for (const part of RATES) offer(boundAt(graph, values, most, ratio, ratio.rate * part));
  const rest = values.slice();
  for (const k of scarceBlanks(graph, values, most)) {
    rest[k] = 0;
    if (rest.every((v) => v <= 0)) break;
    const lower = boundByRatio(graph, rest);
    offer(boundAt(graph, values, most, lower, lower.rate));
  }
  return best;
}

/** Parts of the best rate at which the bound that knows demand is tried. */
const RATES = [0.97, 0.94, 0.91, 0.88, 0.85, 0.82, 0.79, 0.76, 0.73, 0.7];
const MOST_SCARCE = 5;

/** Blanks of which fewer are wanted than a strip could hold, those worth most for their length first. */
function scarceBlanks(graph: RowGraph, values: Float64Array, most: Int32Array): readonly number[] {
  const each = graph.slopes.length ** 2;
  return [...values.keys()]
    .map((k) => ({
      k,
      least: graph.length.subarray(k * each, (k + 1) * each).reduce((a, b) => Math.min(a, b), Infinity),
    }))
    .filter(({ k, least }) => values[k]! > 0 && most[k]! * least < graph.span)
    .sort((a, b) => values[b.k]! / b.least - values[a.k]! / a.least || a.k - b.k)
    .slice(0, MOST_SCARCE)
    .map(({ k }) => k);
}

/** By blank, value and potential: what is left once the rate times the length is taken off. */
function boundAt(
  graph: RowGraph,
  values: Float64Array,
  most: Int32Array,
  { bonus }: RatioBound,
  rate: number,
): DemandBound {
  const m = graph.slopes.length;
  let end = 0;
  for (let s = 0; s < m; s++) end = Math.max(end, -bonus[s]! - rate * tail(graph, s));
  let bound = rate * graph.span * (1 + 1e-9) + bonus[graph.square]! + end;
  const gains = new Float64Array(values.length);
  for (let k = 0; k < graph.blanks.length; k++) {
    const value = values[k]!;
    if (value <= 0) continue;
    let gain = 0;
    for (let s = 0; s < m; s++) {
      const row = (k * m + s) * m;
      for (let t = 0; t < m; t++) {
        const g = value - rate * graph.length[row + t]! + bonus[t]! - bonus[s]!;
        if (g > gain) gain = g;
      }
    }
    gains[k] = gain;
    bound += gain * most[k]!;
  }
  return { bound, gains };
}

/** gain[s * m + t]: the most that one blank between cuts of slopes s and t gains over the rate. */
function bestArcs(graph: RowGraph, values: Float64Array, rate: number): Float64Array {
  const m = graph.slopes.length;
  const gain = new Float64Array(m * m).fill(-Infinity);
  for (let k = 0; k < graph.blanks.length; k++) {
    const value = values[k]!;
    if (value <= 0) continue;
    for (let i = 0, j = k * m * m; i < m * m; i++, j++) {
      const g = value - rate * graph.length[j]!;
      if (g > gain[i]!) gain[i] = g;
    }
  }
  return gain;
}

function settle(graph: RowGraph, gain: Float64Array, m: number, rate: number): Float64Array | undefined {
  const bonus = Float64Array.from({ length: m }, (_, s) => -rate * tail(graph, s));
  for (let round = 0; round <= m + 1; round++) {
    let changed = false;
    for (let s = 0; s < m; s++) {
      const before = bonus[s]!;
      let best = before;
      for (let t = 0; t < m; t++) {
        const through = gain[s * m + t]! + bonus[t]!;
        if (through > best) best = through;
      }
      if (best > before + 1e-10) {
        changed = true;
        bonus[s] = best;
      }
    }
    if (!changed) return bonus;
  }
  return undefined;
}

/** Newton's way to the rate: at each, the best cycle of gains gives a better one, until no cycle gains. */
function greatestRatio(graph: RowGraph, values: Float64Array): number {
  const m = graph.slopes.length;
  let rate = 0;
  for (let k = 0; k < graph.blanks.length; k++) {
    for (let s = 0; s < m; s++) {
      const length = graph.length[(k * m + s) * m + s]!;
      if (values[k]! > 0 && length < Infinity) rate = Math.max(rate, values[k]! / length);
    }
  }
  for (let round = 0; round < 60; round++) {
    const better = improvedRate(graph, values, rate);
    if (better <= rate * (1 + 1e-10)) break;
    rate = better;
  }
  return rate;
}

/** Follows gains until some cycle of the best predecessors shows; its own ratio of value to length, or the rate as it is. */
function improvedRate(graph: RowGraph, values: Float64Array, rate: number): number {
  const m = graph.slopes.length;
  const gain = bestArcs(graph, values, rate);
  const potential = new Float64Array(m);
  const from = new Int32Array(m).fill(-1);
  for (let round = 0; round < m + 1; round++) {
    let changed = false;
    for (let s = 0; s < m; s++) {
      for (let t = 0; t < m; t++) {
        const through = potential[s]! + gain[s * m + t]!;
        if (through > potential[t]! + 1e-11) {
          potential[t] = through;
          from[t] = s;
          changed = true;
        }
      }
    }
    if (!changed) return rate;
    const cycle = cycleOf(from, m);
    if (cycle) return Math.max(rate, ratioOf(graph, values, cycle, rate));
  }
  return rate;
}

function cycleOf(from: Int32Array, m: number): readonly number[] | null {
  const seen = new Int32Array(m);
  for (let start = 0, mark = 1; start < m; start++, mark++) {
    let u = start;
    while (u >= 0 && seen[u] === 0) {
      seen[u] = mark;
      u = from[u]!;
    }
    if (u < 0 || seen[u] !== mark) continue;
    const cycle = [u];
    for (let w = from[u]!; w !== u; w = from[w]!) cycle.push(w);
    return cycle.reverse();
  }
  return null;
}

function ratioOf(graph: RowGraph, values: Float64Array, cycle: readonly number[], rate: number): number {
  const m = graph.slopes.length;
  let value = 0;
  let length = 0;
  cycle.forEach((s, i) => {
    const t = cycle[(i + 1) % cycle.length]!;
    let best = -Infinity;
    let chosen = 0;
    for (let k = 0; k < graph.blanks.length; k++) {
      if (values[k]! <= 0) continue;
      const g = values[k]! - rate * graph.length[(k * m + s) * m + t]!;
      if (g > best) {
        best = g;
        chosen = k;
      }
    }
    value += values[chosen]!;
    length += graph.length[(chosen * m + s) * m + t]!;
  });
  return length > 0 ? value / length : rate;
}
