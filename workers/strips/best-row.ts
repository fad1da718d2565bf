/**
 * The row worth most that holds no more of any blank than is wanted, places exact: best first, by what a row begun may still come to
 * (A*; Hart, Nilsson & Raphael 1968). Blanks of which few are wanted pay rent in that estimate, and the rent of the copies not
 * used yet is given back (a Lagrangian bound), so that it stays one.
 */
import { bestByCounts } from './by-counts.ts';
import { boundByRatio, type RatioBound } from './ratio.ts';
import { countsOfBest, type Grid, makeRestTable, type RestTable, restOf } from './rest-table.ts';
import { type Arcs, usableArcs } from './row-arcs.ts';
import { type RowStep, stepOf, tail } from './row-graph.ts';
import { type BestRow, LOOSE, type RowSearch, scarceBlanks } from './row-search.ts';
import { leadsByTurning } from './turning.ts';

export function bestRow(search: RowSearch): BestRow {
  const first = new Search({ ...search, labels: Math.min(FEW, search.labels) }, 'coarse').run();
  const known = Math.max(first.value, search.threshold);
  if (first.bound <= known || search.labels <= FEW) return first;
  // Better rents and a finer table take longer to make, and tell rows that come near from those that do.
  const { rent, bound } = tuneRent({ ...search, threshold: known });
  if (bound <= known) return { ...first, bound: known };
  const again = new Search({ ...search, rent, threshold: known }, 'fine').run();
  const better = again.steps.length > 0 ? again : first;
  const left = Math.min(first.bound, bound, again.bound);
  if (search.labelsByCounts === 0 || left <= Math.max(better.value, known)) return { ...better, bound: left };
  const last = bestByCounts({ ...search, threshold: Math.max(better.value, known) });
  return { ...(last.steps.length > 0 ? last : better), bound: Math.min(left, last.bound) };
}

/** Rows begun that a coarse table may cost. */
const FEW = 2000;
const RENT_ROUNDS = 3;

/**
 * Rents rise on blanks that the best row holds too many of, and fall on those it leaves (subgradient steps towards the threshold;
 * Held, Wolfe & Crowder 1974).
 */
function tuneRent({ graph, values, most, rent: first, threshold }: RowSearch): { rent: Float64Array; bound: number } {
  const scarce = scarceBlanks(graph, values, most);
  const rent = new Float64Array(values.length);
  for (const k of scarce) rent[k] = Math.min(first[k]!, values[k]!);
  let best = { rent: rent.slice(), bound: Infinity };
  for (let round = 0; round < RENT_ROUNDS && scarce.length > 0; round++) {
    const worth = values.map((v, k) => (v > 0 ? Math.max(LOOSE * v, v - rent[k]!) : 0));
    const back = scarce.reduce((sum, k) => sum + rent[k]! * most[k]!, 0);
    const ratio = boundByRatio(graph, worth);
    const fits = graph.span * (1 + 1e-9) + 1e-9;
    const lead = ratio.rate * fits + ratio.bonus[graph.square]! + back - threshold;
    if (lead <= 0) return { rent: rent.slice(), bound: threshold };
    const arcs = usableArcs(graph, worth, ratio, lead, false);
    const table = makeRestTable(graph, arcs, 'coarse');
    if (!table) break;
    const bound = restOf(table, ratio, fits, graph.square, graph.slopes.length) + back;
    if (bound < best.bound) best = { rent: rent.slice(), bound };
    if (bound <= threshold) break;
    const counts = countsOfBest(graph, arcs, table, fits);
    let size = 0;
    const off = scarce.map((k) => {
      const over = counts[k]! > most[k]! || rent[k]! > 0 ? counts[k]! - most[k]! : 0;
      size += over * over;
      return over;
    });
    if (size === 0) break;
    const step = (bound - threshold) / size;
    scarce.forEach((k, i) => {
      rent[k] = Math.min(values[k]!, Math.max(0, rent[k]! + step * off[i]!));
    });
  }
  return best;
}

class Search {
  private readonly s: RowSearch;
  private readonly arcs: readonly Arcs[];
  private readonly ratio: RatioBound;
  private readonly table: RestTable | null;
  private readonly fits: number;
  private readonly rent: Float64Array;
  /** By blank, where it is counted at all: its place in a label's counts. */
  private readonly counted: Int32Array;
  private readonly mostCounted: Int32Array;
  private readonly at: number[] = [];
  private readonly value: number[] = [];
  private readonly estimate: number[] = [];
  private readonly slope: number[] = [];
  /** The blank before the cut; −1 at the start. */
  private readonly blank: number[] = [];
  private readonly parent: number[] = [];
  private readonly counts: (readonly number[])[] = [];
  private readonly heap: number[] = [];
  private readonly settled: number[][];
  private readonly ahead: Float64Array;
  private best = -1;
  private bestValue: number;

  constructor(search: RowSearch, grid: Grid) {
    this.s = search;
    const { graph, values, most } = search;
    const m = graph.slopes.length;
    const scarce = scarceBlanks(graph, values, most);
    this.counted = new Int32Array(values.length).fill(-1);
    scarce.forEach((k, c) => {
      this.counted[k] = c;
    });
    this.mostCounted = Int32Array.from(scarce, (k) => most[k]!);
    this.rent = search.rent.map((r, k) => (this.counted[k]! >= 0 ? Math.min(r, values[k]!) : 0));
    const worth = values.map((v, k) => (v > 0 ? Math.max(LOOSE * v, v - this.rent[k]!) : 0));
    this.ratio = boundByRatio(graph, worth);
    this.fits = graph.span * (1 + 1e-9) + 1e-9;
    this.bestValue = search.threshold;
    const back = this.rentLeft(scarce.map(() => 0));
    const lead = this.ratio.rate * this.fits + this.ratio.bonus[graph.square]! + back - search.threshold;
    this.arcs = lead <= 0 ? [] : usableArcs(graph, worth, this.ratio, lead, false);
    this.table = lead <= 0 ? null : makeRestTable(graph, this.arcs, grid);
    this.ahead = leadsByTurning(graph);
    this.settled = Array.from({ length: m }, () => []);
    if (lead > 0)
      this.push(
        0,
        0,
        graph.square,
        -1,
        -1,
        scarce.map(() => 0),
      );
  }

  run(): BestRow {
    const { threshold, labels } = this.s;
    for (let label = this.pop(); label >= 0; label = this.pop()) {
      const open = this.estimate[label]!;
      if (open <= this.bestValue + LOOSE * Math.abs(this.bestValue)) break;
      if (this.dominated(label)) continue;
      this.settled[this.slope[label]!]!.push(label);
      if (this.at.length > labels) return this.found(Math.max(open, this.bestValue));
      const { blank, to, length } = this.arcs[this.slope[label]!]!;
      for (let i = 0; i < to.length; i++) {
        const k = blank[i]!;
        this.push(
          this.at[label]! + length[i]!,
          this.value[label]! + this.s.values[k]!,
          to[i]!,
          k,
          label,
          this.counts[label]!,
        );
      }
    }
    return this.found(this.best < 0 ? threshold : this.bestValue);
  }

  private found(bound: number): BestRow {
    const steps: RowStep[] = [];
    for (let l = this.best; l >= 0 && this.blank[l]! >= 0; l = this.parent[l]!)
      steps.push(stepOf(this.s.graph, this.blank[l]!, this.slope[this.parent[l]!]!, this.slope[l]!));
    return { steps: steps.reverse(), value: this.best < 0 ? 0 : this.bestValue, bound: Math.max(bound, 0) };
  }

  private rentLeft(counts: readonly number[]): number {
    let sum = 0;
    for (let k = 0; k < this.counted.length; k++) {
      const c = this.counted[k]!;
      if (c >= 0) sum += this.rent[k]! * (this.mostCounted[c]! - counts[c]!);
    }
    return sum;
  }

  private push(
    at: number,
    value: number,
    slope: number,
    blank: number,
    parent: number,
    counts: readonly number[],
  ): void {
    const { graph } = this.s;
    if (at + tail(graph, slope) > this.fits) return;
    let held = counts;
    const c = blank >= 0 ? this.counted[blank]! : -1;
    if (c >= 0) {
      if (counts[c]! >= this.mostCounted[c]!) return;
      const more = counts.slice();
      more[c]!++;
      held = more;
    }
    const rest = restOf(this.table, this.ratio, Math.max(0, this.fits - at), slope, graph.slopes.length);
    const estimate = value + rest + this.rentLeft(held);
    if (estimate <= this.bestValue) return;
    const label = this.at.push(at) - 1;
    this.value.push(value);
    this.estimate.push(estimate);
    this.slope.push(slope);
    this.blank.push(blank);
    this.parent.push(parent);
    this.counts.push(held);
    if (value > this.bestValue) {
      this.bestValue = value;
      this.best = label;
    }
    this.heapIn(label);
  }

  /** Whether a row begun otherwise is worth as much, has used up no more, and can go on with whatever this one can. */
  private dominated(label: number): boolean {
    const value = this.value[label]! - LOOSE * Math.abs(this.value[label]!);
    const held = this.counts[label]!;
    const m = this.settled.length;
    const s = this.slope[label]!;
    for (let t = 0; t < m; t++) {
      const before = this.settled[t]!;
      if (before.length === 0) continue;
      const at = this.at[label]! + LOOSE - (t === s ? 0 : this.ahead[t * m + s]!);
      for (let i = before.length - 1; i >= 0; i--) {
        const b = before[i]!;
        if (this.at[b]! <= at && this.value[b]! >= value && noMore(this.counts[b]!, held)) return true;
      }
    }
    return false;
  }

  /** Heap order: greatest estimate first, then furthest. */
  private before(a: number, b: number): boolean {
    const d = this.estimate[a]! - this.estimate[b]!;
    return d > 0 || (d === 0 && this.at[a]! > this.at[b]!);
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
