/**
 * The row worth most in a strip, label by label in the order of their place along it: a label is a cut at an exact place with a
 * slope, and what stands before it is worth. Of two cuts of one slope the earlier and richer is kept.
 */
import type { RatioBound } from './ratio.ts';
import { type RowGraph, type RowStep, stepOf, tail } from './row-graph.ts';

export interface PathSearch {
  readonly graph: RowGraph;
  /** By the graph's blanks; 0 for those not to be used. */
  readonly values: Float64Array;
  readonly ratio: RatioBound;
  /** Only rows worth more are looked for. */
  readonly threshold: number;
  /** Blanks (of the graph) whose copies are counted against `most`, their demand. */
  readonly critical: readonly number[];
  readonly most: Int32Array;
  readonly labels: number;
}

export interface FoundPath {
  readonly steps: readonly RowStep[];
  readonly value: number;
  /** The search was given up for its size. */
  readonly cut: boolean;
}

interface Arc {
  readonly blank: number;
  readonly to: number;
  readonly length: number;
  readonly value: number;
  /** What taking it costs against the bound. Never negative. */
  readonly slack: number;
}

const NONE: readonly number[] = [];

/** Null when no row is worth more than the threshold. */
export function longestPath(search: PathSearch): FoundPath | null {
  return new Labels(search).run();
}

class Labels {
  private readonly s: PathSearch;
  private readonly arcs: readonly (readonly Arc[])[];
  private readonly at: number[] = [];
  private readonly value: number[] = [];
  /** What is left of the bound's lead over the threshold. */
  private readonly lead: number[] = [];
  private readonly slope: number[] = [];
  private readonly arc: (Arc | null)[] = [];
  private readonly parent: number[] = [];
  private readonly counts: (readonly number[])[] = [];
  private readonly heap: number[] = [];
  private readonly settled: number[][];
  private readonly settledBest: Float64Array;
  private readonly criticalOf: Int32Array;
  private readonly fits: number;
  private readonly bound: number;
  private best = -1;
  private bestValue: number;

  constructor(search: PathSearch) {
    this.s = search;
    const { graph, ratio, critical, threshold } = search;
    const m = graph.slopes.length;
    this.settled = Array.from({ length: m }, () => []);
    this.settledBest = new Float64Array(m).fill(-Infinity);
    this.criticalOf = new Int32Array(graph.blanks.length).fill(-1);
    critical.forEach((k, c) => {
      this.criticalOf[k] = c;
    });
    this.fits = graph.span * (1 + 1e-9) + 1e-9;
    this.bound = ratio.rate * this.fits + ratio.bonus[graph.square]!;
    this.bestValue = threshold;
    this.arcs = this.usableArcs(this.bound - threshold);
  }

  /** Arcs from each slope that some row worth more than the threshold could take, least slack first. */
  private usableArcs(lead: number): readonly (readonly Arc[])[] {
    const { graph, values, ratio } = this.s;
    const m = graph.slopes.length;
    const arcs: Arc[][] = Array.from({ length: m }, () => []);
    for (let k = 0; k < graph.blanks.length; k++) {
      const value = values[k]!;
      if (value <= 0) continue;
      for (let s = 0; s < m; s++) {
        for (let t = 0; t < m; t++) {
          const length = graph.length[(k * m + s) * m + t]!;
          const slack = ratio.bonus[s]! - (value - ratio.rate * length + ratio.bonus[t]!);
          if (slack <= lead) arcs[s]!.push({ blank: k, to: t, length, value, slack });
        }
      }
    }
    for (const list of arcs) list.sort((a, b) => a.slack - b.slack);
    return arcs;
  }

  run(): FoundPath | null {
    const { graph, critical, labels } = this.s;
    this.greedy();
    this.push(0, 0, this.bound - this.s.threshold, graph.square, null, -1, critical.length > 0 ? critical.map(() => 0) : NONE);
    for (let label = this.pop(); label >= 0; label = this.pop()) {
      if (this.lead[label]! <= this.bestValue - this.s.threshold || this.dominated(label)) continue;
      const s = this.slope[label]!;
      if (critical.length === 0) this.settledBest[s] = this.value[label]!;
      else this.settled[s]!.push(label);
      if (this.at.length > labels) return this.found(true);
      const lead = this.lead[label]!;
      const spare = lead - (this.bestValue - this.s.threshold);
      for (const arc of this.arcs[s]!) {
        if (arc.slack >= spare) break;
        this.push(this.at[label]! + arc.length, this.value[label]! + arc.value, lead - arc.slack, arc.to, arc, label, this.counts[label]!);
      }
    }
    return this.found(false);
  }

  private found(cut: boolean): FoundPath | null {
    if (this.best < 0) return cut ? { steps: [], value: this.bestValue, cut } : null;
    const steps: RowStep[] = [];
    for (let l = this.best; this.arc[l]; l = this.parent[l]!) {
      const arc = this.arc[l]!;
      steps.push(stepOf(this.s.graph, arc.blank, this.slope[this.parent[l]!]!, arc.to));
    }
    return { steps: steps.reverse(), value: this.bestValue, cut };
  }

  /** A good row first, by the least slack at each step, so that much of the search is cut off from its start. */
  private greedy(): void {
    const { graph, most, critical } = this.s;
    const taken = new Int32Array(graph.blanks.length);
    const start = this.label(0, 0, 0, graph.square, null, -1, critical.length > 0 ? critical.map(() => 0) : NONE);
    let label = start;
    for (;;) {
      const s = this.slope[label]!;
      const arc = this.arcs[s]!.find((a) => taken[a.blank]! < most[a.blank]! && this.at[label]! + a.length + tail(graph, a.to) <= this.fits);
      if (!arc) break;
      taken[arc.blank]!++;
      label = this.label(this.at[label]! + arc.length, this.value[label]! + arc.value, 0, arc.to, arc, label, NONE);
    }
    if (this.value[label]! > this.bestValue) {
      this.bestValue = this.value[label]!;
      this.best = label;
    }
  }

  private label(at: number, value: number, lead: number, slope: number, arc: Arc | null, parent: number, counts: readonly number[]): number {
    this.value.push(value);
    this.lead.push(lead);
    this.slope.push(slope);
    this.arc.push(arc);
    this.parent.push(parent);
    this.counts.push(counts);
    return this.at.push(at) - 1;
  }

  private push(at: number, value: number, lead: number, slope: number, arc: Arc | null, parent: number, counts: readonly number[]): void {
    const { graph, most, critical } = this.s;
    if (at + tail(graph, slope) > this.fits) return;
    let held = counts;
    const c = arc ? this.criticalOf[arc.blank]! : -1;
    if (c >= 0) {
      if (counts[c]! >= most[critical[c]!]!) return;
      const more = counts.slice();
      more[c]!++;
      held = more;
    }
    if (critical.length === 0 && value <= this.settledBest[slope]!) return;
    const label = this.label(at, value, lead, slope, arc, parent, held);
    if (value > this.bestValue) {
      this.bestValue = value;
      this.best = label;
    }
    this.heapIn(label);
  }

  private dominated(label: number): boolean {
    const s = this.slope[label]!;
    const value = this.value[label]!;
    if (this.s.critical.length === 0) return value <= this.settledBest[s]!;
    const before = this.settled[s]!;
    const held = this.counts[label]!;
    for (let i = before.length - 1; i >= 0; i--) {
      if (this.value[before[i]!]! >= value && noMore(this.counts[before[i]!]!, held)) return true;
    }
    return false;
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
