/**
 * The row worth most in a strip that holds no more of some blanks than is wanted of them, places exact: label by label in the
 * order of their place. A label is a cut with a slope, what stands before it is worth, and how many of those blanks it holds. Of
 * two cuts of one slope the earlier, richer and emptier is kept. Grids are faster where demand is no matter (grid-path.ts).
 */
import type { RatioBound } from './ratio.ts';
import type { Arcs } from './row-arcs.ts';
import { type RowGraph, type RowStep, stepOf, tail } from './row-graph.ts';

export interface PathSearch {
  readonly graph: RowGraph;
  readonly ratio: RatioBound;
  readonly arcs: readonly Arcs[];
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

const NONE: readonly number[] = [];

/** Null when no row is worth more than the threshold. */
export function longestPath(search: PathSearch): FoundPath | null {
  return new Labels(search).run();
}

class Labels {
  private readonly s: PathSearch;
  private readonly arcs: readonly Arcs[];
  private readonly at: number[] = [];
  private readonly value: number[] = [];
  /** What is left of the bound's lead over the threshold. */
  private readonly lead: number[] = [];
  private readonly slope: number[] = [];
  /** The blank before the cut, of the graph; −1 at the start. */
  private readonly blank: number[] = [];
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
    this.arcs = search.arcs;
  }

  run(): FoundPath | null {
    const { graph, critical, labels } = this.s;
    this.push(
      0,
      0,
      this.bound - this.s.threshold,
      graph.square,
      -1,
      -1,
      critical.length > 0 ? critical.map(() => 0) : NONE,
    );
    for (let label = this.pop(); label >= 0; label = this.pop()) {
      if (this.lead[label]! <= this.bestValue - this.s.threshold || this.dominated(label)) continue;
      const s = this.slope[label]!;
      if (critical.length === 0) this.settledBest[s] = this.value[label]!;
      else this.settled[s]!.push(label);
      if (this.at.length > labels) return this.found(true);
      const lead = this.lead[label]!;
      const spare = lead - (this.bestValue - this.s.threshold);
      const { blank, to, length, value, slack } = this.arcs[s]!;
      for (let i = 0; i < to.length; i++) {
        if (slack[i]! >= spare) continue;
        this.push(
          this.at[label]! + length[i]!,
          this.value[label]! + value[i]!,
          lead - slack[i]!,
          to[i]!,
          blank[i]!,
          label,
          this.counts[label]!,
        );
      }
    }
    return this.found(false);
  }

  private found(cut: boolean): FoundPath | null {
    if (this.best < 0) return cut ? { steps: [], value: this.bestValue, cut } : null;
    const steps: RowStep[] = [];
    for (let l = this.best; this.blank[l]! >= 0; l = this.parent[l]!) {
      steps.push(stepOf(this.s.graph, this.blank[l]!, this.slope[this.parent[l]!]!, this.slope[l]!));
    }
    return { steps: steps.reverse(), value: this.bestValue, cut };
  }

  private label(
    at: number,
    value: number,
    lead: number,
    slope: number,
    blank: number,
    parent: number,
    counts: readonly number[],
  ): number {
    this.value.push(value);
    this.lead.push(lead);
    this.slope.push(slope);
    this.blank.push(blank);
    this.parent.push(parent);
    this.counts.push(counts);
    return this.at.push(at) - 1;
  }

  private push(
    at: number,
    value: number,
    lead: number,
    slope: number,
    blank: number,
    parent: number,
    counts: readonly number[],
  ): void {
    const { graph, most, critical } = this.s;
    if (at + tail(graph, slope) > this.fits) return;
    let held = counts;
    const c = blank >= 0 ? this.criticalOf[blank]! : -1;
    if (c >= 0) {
      if (counts[c]! >= most[critical[c]!]!) return;
      const more = counts.slice();
      more[c]!++;
      held = more;
    }
    if (critical.length === 0 && value <= this.settledBest[slope]!) return;
    const label = this.label(at, value, lead, slope, blank, parent, held);
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
