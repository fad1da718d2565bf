/**
 * The row worth most in a strip of one height: a longest path over (position, last blank, how it lies), positions exact.
 * Values are the master's duals. Nothing that cannot beat `threshold` is followed.
 */
import { measureRows, type RowMeasure } from './measure-row.ts';
import type { RowGraph } from './row-graph.ts';

export interface PricedRow {
  /** Indices of states, in order along the strip. */
  readonly path: readonly number[];
  readonly value: number;
}

export interface PricedRows {
  /** The best row, or null when none is worth more than the threshold. */
  readonly best: PricedRow | null;
  /** No row is worth more than this. */
  readonly bound: number;
}

const CRITICAL_MOST = 10;
const LABELS_MOST = 200_000;

/**
 * @param values by blank of the job, never negative
 * @param demand by blank: no row holds more of a blank than this (honoured in full for knapsack rows; for others as far as
 * the search needs to, which never makes the bound too low)
 * @param exact false: a quick look, whose bound is only the one known without any search
 */
export function priceRow(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number, exact = true): PricedRows {
  if (graph.additive) return priceKnapsack(graph, values, demand, threshold);
  const stateValues = Float64Array.from(graph.states, (s) => values[s.variant.blank]!);
  const active = Int32Array.from(graph.states.keys()).filter((u) => stateValues[u]! > 1e-9 && demand[graph.states[u]!.variant.blank]! > 0);
  if (active.length === 0) return { best: null, bound: 0 };
  const measure = measureRows(graph, stateValues, active);
  const { rate, bonus, share, own } = measure;
  let bound = 0;
  for (const u of active) bound = Math.max(bound, stateValues[u]! + rate * (graph.span - share * graph.head[u]! - own[u]!) + bonus[u]!);
  if (bound <= threshold) return { best: null, bound };
  const critical: number[] = [];
  for (;;) {
    const found = longestPath(graph, stateValues, active, measure, threshold, critical, demand, exact);
    if (!found) return { best: null, bound: exact ? Math.max(threshold, 0) : bound };
    if (!exact || found.cut) return { best: found.path.length > 0 ? found : null, bound };
    const over = overDemand(graph, found.path, demand).filter((b) => !critical.includes(b));
    if (over.length === 0 || critical.length + over.length > CRITICAL_MOST) return { best: found, bound: found.value };
    critical.push(...over);
  }
}

function overDemand(graph: RowGraph, path: readonly number[], demand: Int32Array): number[] {
  const counts = new Map<number, number>();
  for (const u of path) {
    const blank = graph.states[u]!.variant.blank;
    counts.set(blank, (counts.get(blank) ?? 0) + 1);
  }
  return [...counts].filter(([blank, count]) => count > demand[blank]!).map(([blank]) => blank);
}

/**
 * Labels are taken in the order of their place along the strip. A label remembers which blanks before its last one may still
 * stand in the way of what comes next (a low blank tucked under a tall one's slant hides nothing), so its path is as long as
 * a row in which every pair is kept apart.
 */
function longestPath(
  graph: RowGraph,
  values: Float64Array,
  active: Int32Array,
  measure: RowMeasure,
  threshold: number,
  critical: readonly number[],
  demand: Int32Array,
  exact: boolean,
): (PricedRow & { cut: boolean }) | null {
  const n = graph.states.length;
  const { span, advances, head, tail } = graph;
  const { rate, bonus, share, own } = measure;
  const fits = span * (1 + 1e-9) + 1e-9;
  const at: number[] = [], val: number[] = [], used: number[] = [], state: number[] = [], parent: number[] = [];
  const exposed: (readonly number[])[] = [];
  const counts: (readonly number[])[] = [];
  const heap = new Heap(at, val);
  let best = -1;
  let bestValue = threshold;
  const settled: number[][] = Array.from({ length: n }, () => []);
  const settledBest = new Float64Array(n).fill(-Infinity);
  const criticalOf = Int32Array.from(graph.states, (s) => critical.indexOf(s.variant.blank));

  const push = (position: number, value: number, taken: number, u: number, from: number) => {
    if (position + tail[u]! > fits) return;
    if (value + rate * (span - taken) + bonus[u]! <= bestValue) return;
    let held = from < 0 ? (critical.length > 0 ? critical.map(() => 0) : NONE) : counts[from]!;
    const c = criticalOf[u]!;
    if (c >= 0) {
      if (held[c]! >= demand[critical[c]!]!) return;
      held = held.map((x, i) => (i === c ? x + 1 : x));
    } else if (critical.length === 0 && value <= settledBest[u]!) {
      return;
    }
    at.push(position);
    val.push(value);
    used.push(taken);
    state.push(u);
    parent.push(from);
    counts.push(held);
    exposed.push(from < 0 ? NONE : stillExposed(position, u, from));
    const label = at.length - 1;
    if (value > bestValue) {
      bestValue = value;
      best = label;
    }
    heap.push(label);
  };
  const stillExposed = (position: number, u: number, from: number): readonly number[] => {
    const hides = (l: number) => at[l]! + furthest(graph, state[l]!, u) <= position + 1e-9;
    const kept = exposed[from]!.filter((l) => !hides(l));
    return hides(from) ? (kept.length > 0 ? kept : NONE) : [...kept, from];
  };
  const dominated = (label: number, u: number): boolean => {
    const value = val[label]!;
    const mine = exposed[label]!;
    const held = counts[label]!;
    if (critical.length === 0 && value <= settledBest[u]!) return true;
    return settled[u]!.some(
      (s) =>
        val[s]! >= value &&
        counts[s]!.every((x, i) => x <= held[i]!) &&
        exposed[s]!.every((e) => mine.some((m) => state[m] === state[e] && at[e]! <= at[m]!)),
    );
  };

  for (const u of active) push(head[u]!, values[u]!, share * head[u]! + own[u]!, u, -1);
  for (let label = heap.pop(); label >= 0; label = heap.pop()) {
    const u = state[label]!;
    const value = val[label]!;
    const position = at[label]!;
    if (value + rate * (span - used[label]!) + bonus[u]! <= bestValue) continue;
    if (dominated(label, u)) continue;
    if (critical.length === 0 && (!exact || exposed[label]!.length === 0)) settledBest[u] = value;
    if (exact) settled[u]!.push(label);
    if (at.length > LABELS_MOST) return { path: pathTo(best, state, parent), value: bestValue, cut: true };
    const others = exposed[label]!;
    for (const v of active) {
      let place = position + advances[u * n + v]!;
      for (const l of others) place = Math.max(place, at[l]! + advances[state[l]! * n + v]!);
      push(place, value + values[v]!, used[label]! + share * (place - position) + own[v]!, v, label);
    }
  }
  return best < 0 ? null : { path: pathTo(best, state, parent), value: bestValue, cut: false };
}

function pathTo(label: number, state: readonly number[], parent: readonly number[]): readonly number[] {
  const path: number[] = [];
  for (let l = label; l >= 0; l = parent[l]!) path.push(state[l]!);
  return path.reverse();
}

/** How much further than behind v any third blank may have to lie behind u: beyond that, v hides u. */
function furthest(graph: RowGraph, u: number, v: number): number {
  const n = graph.states.length;
  const known = graph.furthest[u * n + v]!;
  if (!Number.isNaN(known)) return known;
  let most = -Infinity;
  for (let w = 0; w < n; w++) most = Math.max(most, graph.advances[u * n + w]! - graph.advances[v * n + w]!);
  graph.furthest[u * n + v] = most;
  return most;
}

const NONE: readonly number[] = [];

/** Smallest place first, then greatest value. */
class Heap {
  private readonly items: number[] = [];
  private readonly at: readonly number[];
  private readonly val: readonly number[];
  constructor(at: readonly number[], val: readonly number[]) {
    this.at = at;
    this.val = val;
  }
  private before(a: number, b: number): boolean {
    const d = this.at[a]! - this.at[b]!;
    return d < 0 || (d === 0 && this.val[a]! > this.val[b]!);
  }
  push(label: number): void {
    const items = this.items;
    let i = items.push(label) - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (!this.before(items[i]!, items[up]!)) break;
      [items[i], items[up]] = [items[up]!, items[i]!];
      i = up;
    }
  }
  /** −1 when empty. */
  pop(): number {
    const items = this.items;
    const top = items[0];
    if (top === undefined) return -1;
    const last = items.pop()!;
    if (items.length > 0) {
      items[0] = last;
      let i = 0;
      for (;;) {
        const l = 2 * i + 1;
        const r = l + 1;
        let least = i;
        if (l < items.length && this.before(items[l]!, items[least]!)) least = l;
        if (r < items.length && this.before(items[r]!, items[least]!)) least = r;
        if (least === i) break;
        [items[i], items[least]] = [items[least]!, items[i]!];
        i = least;
      }
    }
    return top;
  }
}

interface Item {
  readonly state: number;
  readonly width: number;
  readonly value: number;
  readonly most: number;
}

/**
 * Each blank at its narrowest: the only way of lying that a knapsack row needs. Best value per width first.
 * @param worthless whether blanks of no value are wanted too
 */
export function knapsackItems(graph: RowGraph, values: Float64Array, demand: Int32Array, worthless = false): readonly Item[] {
  const narrowest = new Map<number, Item>();
  graph.states.forEach((s, state) => {
    const { blank, width } = s.variant;
    const value = values[blank]!;
    const most = Math.min(demand[blank]!, Math.floor(graph.span / width + 1e-9));
    if ((value <= 1e-9 && !worthless) || most <= 0) return;
    if (width < (narrowest.get(blank)?.width ?? Infinity)) narrowest.set(blank, { state, width, value, most });
  });
  return [...narrowest.values()].sort((a, b) => b.value / b.width - a.value / a.width);
}

/** Bounded knapsack by lists of undominated (length, value) pairs, item by item, cut off by the fractional bound. */
function priceKnapsack(graph: RowGraph, values: Float64Array, demand: Int32Array, threshold: number): PricedRows {
  const items = knapsackItems(graph, values, demand);
  const span = graph.span * (1 + 1e-9) + 1e-9;
  const at = [0], val = [0], item = [-1], parent = [-1];
  let front: number[] = [0];
  let best = -1;
  let bestValue = threshold + 1e-9;
  const rest = (from: number, length: number): number => {
    let sum = 0;
    for (let k = from; k < items.length && length > 0; k++) {
      const { width, value, most } = items[k]!;
      const n = Math.min(most, length / width);
      sum += n * value;
      length -= n * width;
    }
    return sum;
  };
  const bound = rest(0, span);
  if (bound <= threshold) return { best: null, bound };
  items.forEach(({ width, value, most }, k) => {
    const grown = [...front];
    let layer = front;
    for (let copy = 0; copy < most; copy++) {
      const next: number[] = [];
      for (const l of layer) {
        const position = at[l]! + width;
        if (position > span) continue;
        const worth = val[l]! + value;
        if (worth + rest(k, span - position) <= bestValue) continue;
        at.push(position);
        val.push(worth);
        item.push(k);
        parent.push(l);
        const label = at.length - 1;
        if (worth > bestValue) {
          bestValue = worth;
          best = label;
        }
        next.push(label);
      }
      if (next.length === 0) break;
      grown.push(...next);
      layer = next;
    }
    grown.sort((a, b) => at[a]! - at[b]! || val[b]! - val[a]!);
    let top = -Infinity;
    front = grown.filter((l) => {
      if (val[l]! <= top || val[l]! + rest(k + 1, span - at[l]!) <= bestValue - 1e-12) return false;
      top = val[l]!;
      return true;
    });
  });
  if (best < 0) return { best: null, bound: Math.max(threshold, 0) };
  const path: number[] = [];
  for (let l = best; parent[l]! >= 0; l = parent[l]!) path.push(items[item[l]!]!.state);
  return { best: { path, value: bestValue }, bound: bestValue };
}
