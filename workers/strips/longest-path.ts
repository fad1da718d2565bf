/**
 * The longest path from the start of a strip, label by label in the order of their place along it. A label remembers which
 * blanks before its last one may still stand in the way of what comes next (a low blank tucked under a tall one's slant hides
 * nothing), so its path is as long as a row in which every pair is kept apart.
 */
import type { RowMeasure } from './measure-row.ts';
import type { RowGraph } from './row-graph.ts';

export interface PathSearch {
  readonly graph: RowGraph;
  /** By state. */
  readonly values: Float64Array;
  readonly active: Int32Array;
  readonly measure: RowMeasure;
  /** Only paths worth more are looked for. */
  readonly threshold: number;
  /** Blanks whose copies are counted against their demand. */
  readonly critical: readonly number[];
  readonly demand: Int32Array;
  /** False: labels that are nearly as good as another are dropped too, so that the best path may be missed. */
  readonly exact: boolean;
}

export interface FoundPath {
  readonly path: readonly number[];
  readonly value: number;
  /** The search was given up for its size. */
  readonly cut: boolean;
}

const LABELS_EXACT = 120_000;
const LABELS_QUICK = 20_000;
/** How much better a label must be, in parts of the threshold, for a quick search to follow it. */
const COARSE = 2e-3;
const LOOK_BACK = 30;
const NONE: readonly number[] = [];

/** Null when no path is worth more than the threshold. */
export function longestPath(search: PathSearch): FoundPath | null {
  return new Labels(search).run();
}

class Labels {
  private readonly s: PathSearch;
  private readonly n: number;
  private readonly at: number[] = [];
  private readonly value: number[] = [];
  private readonly used: number[] = [];
  private readonly state: number[] = [];
  private readonly parent: number[] = [];
  private readonly exposed: (readonly number[])[] = [];
  private readonly counts: (readonly number[])[] = [];
  private readonly heap: number[] = [];
  private readonly settled: number[][];
  private readonly settledBest: Float64Array;
  private readonly criticalOf: Int32Array;
  private readonly fits: number;
  private readonly coarse: number;
  private best = -1;
  private bestValue: number;

  constructor(search: PathSearch) {
    this.s = search;
    const { graph, critical, threshold, exact } = search;
    this.n = graph.states.length;
    this.settled = Array.from({ length: this.n }, () => []);
    this.settledBest = new Float64Array(this.n).fill(-Infinity);
    this.criticalOf = Int32Array.from(graph.states, (st) => critical.indexOf(st.variant.blank));
    this.fits = graph.span * (1 + 1e-9) + 1e-9;
    this.coarse = exact ? 0 : COARSE * Math.max(threshold, 0);
    this.bestValue = threshold;
  }

  run(): FoundPath | null {
    const { graph, values, active, measure, critical, exact } = this.s;
    const none = critical.length > 0 ? critical.map(() => 0) : NONE;
    for (const u of active) this.push(graph.head[u]!, values[u]!, measure.share * graph.head[u]! + measure.own[u]!, u, -1, none);
    const most = exact ? LABELS_EXACT : LABELS_QUICK;
    for (let label = this.pop(); label >= 0; label = this.pop()) {
      if (this.hopeless(label) || this.dominated(label)) continue;
      const u = this.state[label]!;
      if (critical.length === 0 && (!exact || this.exposed[label]!.length === 0)) this.settledBest[u] = this.value[label]!;
      if (exact || critical.length > 0) this.settled[u]!.push(label);
      if (this.at.length > most) return { path: this.best < 0 ? [] : this.path(), value: this.bestValue, cut: true };
      this.extend(label, u);
    }
    return this.best < 0 ? null : { path: this.path(), value: this.bestValue, cut: false };
  }

  private extend(label: number, u: number): void {
    const { graph, values, active, measure } = this.s;
    const { advances } = graph;
    const position = this.at[label]!;
    const others = this.exposed[label]!;
    for (let i = 0; i < active.length; i++) {
      const v = active[i]!;
      let place = position + advances[u * this.n + v]!;
      for (let k = 0; k < others.length; k++) {
        const l = others[k]!;
        const behind = this.at[l]! + advances[this.state[l]! * this.n + v]!;
        if (behind > place) place = behind;
      }
      const used = this.used[label]! + measure.share * (place - position) + measure.own[v]!;
      this.push(place, this.value[label]! + values[v]!, used, v, label, this.counts[label]!);
    }
  }

  private push(position: number, value: number, used: number, u: number, from: number, counts: readonly number[]): void {
    const { graph, measure, critical, demand } = this.s;
    if (position + graph.tail[u]! > this.fits) return;
    if (value + measure.rate * (graph.span - used) + measure.bonus[u]! <= this.bestValue + this.coarse * 0.25) return;
    let held = counts;
    const c = this.criticalOf[u]!;
    if (c >= 0) {
      if (counts[c]! >= demand[critical[c]!]!) return;
      const more = counts.slice();
      more[c]!++;
      held = more;
    } else if (critical.length === 0 && value <= this.settledBest[u]! + this.coarse) {
      return;
    }
    const label = this.at.push(position) - 1;
    this.value.push(value);
    this.used.push(used);
    this.state.push(u);
    this.parent.push(from);
    this.counts.push(held);
    this.exposed.push(from < 0 ? NONE : this.stillExposed(position, u, from));
    if (value > this.bestValue) {
      this.bestValue = value;
      this.best = label;
    }
    this.heapIn(label);
  }

  private stillExposed(position: number, u: number, from: number): readonly number[] {
    const before = this.exposed[from]!;
    let kept: number[] | null = null;
    for (let i = 0; i < before.length; i++) {
      const l = before[i]!;
      if (this.at[l]! + furthest(this.s.graph, this.state[l]!, u) > position + 1e-9) (kept ??= []).push(l);
    }
    if (this.at[from]! + furthest(this.s.graph, this.state[from]!, u) > position + 1e-9) (kept ??= []).push(from);
    return kept ?? NONE;
  }

  private hopeless(label: number): boolean {
    const { graph, measure } = this.s;
    return this.value[label]! + measure.rate * (graph.span - this.used[label]!) + measure.bonus[this.state[label]!]! <= this.bestValue;
  }

  /** Whether some label before it ends alike, is worth as much, and leaves as much room for whatever may follow. */
  private dominated(label: number): boolean {
    const u = this.state[label]!;
    const value = this.value[label]!;
    if (this.s.critical.length === 0 && value <= this.settledBest[u]!) return true;
    if (!this.s.exact) return this.nearlyDominated(label, u);
    const mine = this.exposed[label]!;
    const held = this.counts[label]!;
    const before = this.settled[u]!;
    for (let i = before.length - 1; i >= 0; i--) {
      const s = before[i]!;
      if (this.value[s]! >= value && noMore(this.counts[s]!, held) && this.noMoreExposed(this.exposed[s]!, mine)) return true;
    }
    return false;
  }

  /** The quick search's look at a few labels before it, whatever they leave exposed. */
  private nearlyDominated(label: number, u: number): boolean {
    if (this.s.critical.length === 0) return false;
    const before = this.settled[u]!;
    for (let i = before.length - 1; i >= 0 && i >= before.length - LOOK_BACK; i--) {
      if (this.value[before[i]!]! + this.coarse >= this.value[label]! && noMore(this.counts[before[i]!]!, this.counts[label]!)) return true;
    }
    return false;
  }

  private noMoreExposed(theirs: readonly number[], mine: readonly number[]): boolean {
    for (let i = 0; i < theirs.length; i++) {
      const e = theirs[i]!;
      let matched = false;
      for (let k = 0; k < mine.length && !matched; k++) matched = this.state[mine[k]!] === this.state[e] && this.at[e]! <= this.at[mine[k]!]!;
      if (!matched) return false;
    }
    return true;
  }

  private path(): readonly number[] {
    const path: number[] = [];
    for (let l = this.best; l >= 0; l = this.parent[l]!) path.push(this.state[l]!);
    return path.reverse();
  }

  /** Heap order: smallest place first, then greatest value. */
  private before(a: number, b: number): boolean {
    const d = this.at[a]! - this.at[b]!;
    return d < 0 || (d === 0 && this.value[a]! > this.value[b]!);
  }

  private heapIn(label: number): void {
    const { heap } = this;
    let i = heap.push(label) - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      const other = heap[up]!;
      if (!this.before(label, other)) break;
      heap[i] = other;
      i = up;
    }
    heap[i] = label;
  }

  /** −1 when empty. */
  private pop(): number {
    const { heap } = this;
    const top = heap[0];
    if (top === undefined) return -1;
    const last = heap.pop()!;
    const size = heap.length;
    if (size > 0) {
      let i = 0;
      for (;;) {
        let child = 2 * i + 1;
        if (child >= size) break;
        if (child + 1 < size && this.before(heap[child + 1]!, heap[child]!)) child++;
        if (!this.before(heap[child]!, last)) break;
        heap[i] = heap[child]!;
        i = child;
      }
      heap[i] = last;
    }
    return top;
  }
}

function noMore(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i]! > b[i]!) return false;
  return true;
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
