/**
 * What a strip of each height, or a lower one instead, can at most be worth, at one set of values. A taller strip by itself may hold
 * less, since its cuts run on and meet; so each look is at all heights from the last one on at which another blank fits in.
 */
import { type Family, graphAt, rangeGraph } from './family.ts';
import { stepsFit } from './lay-row.ts';
import { type Effort, type PricedRow, priceRow, rowBound } from './price-row.ts';

export interface WorthSearch {
  readonly family: Family;
  /** Ascending. */
  readonly heights: readonly number[];
  /** By blank of the job, never negative. */
  readonly values: Float64Array;
  readonly demand: Int32Array;
  /** By height: what a row known already is worth. */
  readonly known: Float64Array;
  /** Hears of each row found on the way. */
  readonly onRow: (height: number, row: PricedRow) => void;
  /** False when time is up. */
  readonly breath: () => Promise<boolean>;
}

/** With more tolerance than this, a fair look will do. */
const FAIR = 0.0015;

export class StripWorths {
  /** By height: no row of such a strip or a lower one is worth more. Ascending. */
  readonly worths: Float64Array;
  /** The same of strips no lower than the last height at which another blank fits in. */
  private readonly own: Float64Array;
  /** By height: where those strips begin. */
  private readonly starts: Int32Array;
  /** By height: the worth of a row that the bounds must allow for. */
  private readonly found: Float64Array;
  /** By height: how closely it has been looked at, in parts of the worth. */
  private readonly closeness: Float64Array;
  /** By height: what is known of it by itself without looking for rows; NaN until it is asked for. */
  private readonly free: Float64Array;
  private readonly search: WorthSearch;

  constructor(search: WorthSearch) {
    const n = search.heights.length;
    this.search = search;
    this.worths = new Float64Array(n).fill(Infinity);
    this.found = search.known.slice();
    this.closeness = new Float64Array(n).fill(Infinity);
    this.own = new Float64Array(n).fill(Infinity);
    this.free = new Float64Array(n).fill(Number.NaN);
    let start = 0;
    this.starts = Int32Array.from(search.heights, (h, i) => {
      if (search.family.heights.includes(h)) start = i;
      return start;
    });
  }

  /**
   * A first look at all heights. Those that hold no more than a lower one, within the tolerance, get the same worth, so that worths
   * rise in few steps and nobody takes a taller strip for nothing.
   * @param tolerance in parts of the worth: the looser, the faster
   * @returns false when time ran out: the worths are of no use then
   */
  async sketch(tolerance: number): Promise<boolean> {
    const { family, heights, breath } = this.search;
    const { own } = this;
    const n = heights.length;
    // Worths leap where another blank fits in.
    const leaps = heights.flatMap((h, i) => (family.heights.includes(h) ? (i > 0 ? [i - 1, i] : [i]) : []));
    const stops = [...new Set([0, ...leaps, n - 1])].sort((a, b) => a - b);
    for (const i of stops) {
      // Just below a leap a quick look will do: what is worth no more than the last leap needs none at all.
      if (family.heights.includes(heights[i]!)) this.look(i, tolerance);
      else this.glance(i);
      if (!(await breath())) return false;
    }
    const between = async (low: number, high: number): Promise<boolean> => {
      if (own[high]! <= own[low]! * (1 + tolerance) + 1e-12) {
        // What holds up to a leap says nothing of the heights below it.
        const isLeap = this.starts[high] === high;
        own.fill(isLeap ? Math.max(own[low]!, own[high]!) : own[high]!, low, high);
        return true;
      }
      if (high - low <= 1) return true;
      const middle = (low + high) >> 1;
      this.glance(middle);
      return (await breath()) && (await between(low, middle)) && (await between(middle, high));
    };
    for (let k = 1; k < stops.length; k++) if (!(await between(stops[k - 1]!, stops[k]!))) return false;
    this.order();
    return true;
  }

  /**
   * A closer look at some heights.
   * @param effort `thorough`: also count by count where the best row is not certain otherwise
   * @returns false when time ran out; the worths hold all the same
   */
  async refine(
    indices: readonly number[],
    tolerance: number,
    effort: 'exact' | 'thorough' = 'exact',
  ): Promise<boolean> {
    let inTime = true;
    for (const i of indices) {
      const thorough = effort === 'thorough' && this.own[i]! > this.foundUpTo(i) * (1 + tolerance) + 1e-12;
      if (this.closeness[i]! <= tolerance && !thorough) continue;
      this.look(i, tolerance, thorough);
      inTime = await this.search.breath();
      if (!inTime) break;
      // A lower strip that seems to be worth more stands in the way of what was found.
      for (let lower = this.dearestBelow(i, tolerance); lower >= 0 && inTime; lower = this.dearestBelow(i, tolerance)) {
        this.look(lower, tolerance, thorough);
        inTime = await this.search.breath();
      }
    }
    this.order();
    return inTime;
  }

  /** What a row that is known is worth in a strip of this height or a lower one. */
  foundUpTo(i: number): number {
    let best = 0;
    for (let k = 0; k <= i; k++) best = Math.max(best, this.found[k]!);
    return best;
  }

  /** The lower height that keeps this one's worth up, if it can still be looked at more closely; −1 where none does. */
  private dearestBelow(i: number, tolerance: number): number {
    let dearest = -1;
    let most = this.own[i]! * (1 + tolerance);
    for (let k = 0; k < i; k++) {
      if (this.own[k]! <= most) continue;
      most = this.own[k]!;
      dearest = this.closeness[k]! > tolerance ? k : -1;
    }
    return dearest;
  }

  /** Only what is known without looking for rows: height by height, which says more than all of them at once. */
  private glance(i: number): void {
    let most = 0;
    for (let k = this.starts[i]!; k <= i; k++) most = Math.max(most, this.freeAt(k));
    this.own[i] = Math.min(this.own[i]!, most);
  }

  private freeAt(i: number): number {
    const { family, heights, values, demand } = this.search;
    if (Number.isNaN(this.free[i]!)) this.free[i] = rowBound(graphAt(family, heights[i]!), values, demand);
    return this.free[i]!;
  }

  /** The range without the heights at its ends that are known to hold no more than `enough`; low beyond high where none is left. */
  private narrowed(low: number, high: number, enough: number): readonly [low: number, high: number] {
    let [from, to] = [low, high];
    while (from <= to && this.freeAt(from) <= enough) from++;
    while (from <= to && this.freeAt(to) <= enough) to--;
    return [from, to];
  }

  private look(i: number, tolerance: number, thorough = false): void {
    const full = thorough ? 'thorough' : tolerance < FAIR ? 'exact' : 'fair';
    // A lower strip's row will do for this one too.
    let best = 0;
    for (let k = 0; k <= i; k++) best = Math.max(best, this.found[k]!);
    this.found[i] = best;
    const bound = this.most(this.starts[i]!, i, i, tolerance, full);
    this.own[i] = Math.min(this.own[i]!, Math.max(bound, 0));
    this.closeness[i] = tolerance;
    this.lowerThan(i, full);
  }

  /**
   * A bound on rows from one height to another. Where what is found goes in at no height, they are parted.
   * @param i the height whose best row grows on the way
   */
  private most(from: number, to: number, i: number, tolerance: number, full: Effort): number {
    const { family, heights, values, demand, onRow } = this.search;
    const passed = this.found[i]! * (1 + tolerance);
    const [low, high] = this.narrowed(from, to, passed);
    if (low > high) return passed;
    const graph = rangeGraph(family, heights[low]!, heights[high]!);
    // A good row at once shows how far there is to go, if at all, unless one is known.
    for (let effort: Effort = this.found[i]! > 0 ? full : 'quick'; ; effort = full) {
      const best = this.found[i]!;
      const wanted = effort === 'quick' ? best : best * (1 + tolerance);
      const { best: row, bound } = priceRow(graph, values, demand, wanted + 1e-12, effort);
      if (row) {
        const { steps, value } = row;
        if (!stepsFit(steps, heights[high]!, family.span)) {
          const middle = (low + high) >> 1;
          const lower = this.most(low, middle, i, tolerance, full);
          const both = Math.max(lower, this.most(middle + 1, high, i, tolerance, full));
          return Math.max(passed, Math.min(bound, both));
        }
        onRow(heights[high]!, row);
        this.found[i] = value;
      }
      if (bound <= this.found[i]! * (1 + tolerance) || (!row && effort !== 'quick')) return Math.max(passed, bound);
    }
  }

  /** Bounds of lower strips that are worth more than this one's: they may only be loose. */
  private lowerThan(i: number, effort: Effort): void {
    const { family, heights, values, demand } = this.search;
    const { own, starts } = this;
    const enough = own[i]!;
    for (let end = starts[i]! - 1; end >= 0; end = starts[end]! - 1) {
      if (own[end]! <= enough || own[end] === Infinity) continue;
      const [low, high] = this.narrowed(starts[end]!, end, enough);
      const graph = low > high ? null : rangeGraph(family, heights[low]!, heights[high]!);
      const bound = graph ? priceRow(graph, values, demand, enough, effort).bound : enough;
      own[end] = Math.min(own[end]!, Math.max(bound, enough));
    }
  }

  /** Where no more blanks fit in, a look at a taller strip was one at the lower ones too; beyond, a lower strip will always do. */
  private order(): void {
    const { worths, own, starts } = this;
    for (let i = own.length - 2; i >= 0; i--) if (starts[i + 1]! <= i) own[i] = Math.min(own[i]!, own[i + 1]!);
    let most = 0;
    own.forEach((w, i) => {
      most = Math.max(most, w);
      worths[i] = most;
    });
  }
}
