/** What a strip of each height can at most be worth, at one set of values: the taller the strip, the more. */
import { type Family, graphAt } from './family.ts';
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
  /** By height: no row of such a strip is worth more. Ascending. */
  readonly worths: Float64Array;
  /** By height: the worth of a row that goes in. */
  private readonly found: Float64Array;
  /** By height: how closely it has been looked at, in parts of the worth. */
  private readonly closeness: Float64Array;
  private readonly search: WorthSearch;

  constructor(search: WorthSearch) {
    const n = search.heights.length;
    this.search = search;
    this.worths = new Float64Array(n).fill(Infinity);
    this.found = search.known.slice();
    this.closeness = new Float64Array(n).fill(Infinity);
  }

  /**
   * A first look at all heights. Those that hold no more than a lower one, within the tolerance, get the same worth, so that worths
   * rise in few steps and nobody takes a taller strip for nothing.
   * @param tolerance in parts of the worth: the looser, the faster
   * @returns false when time ran out: the worths are of no use then
   */
  async sketch(tolerance: number): Promise<boolean> {
    const { family, heights, breath } = this.search;
    const { worths } = this;
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
      if (worths[high]! <= worths[low]! * (1 + tolerance) + 1e-12) {
        worths.fill(worths[high]!, low, high);
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
   * @returns false when time ran out; the worths hold all the same
   */
  async refine(indices: readonly number[], tolerance: number): Promise<boolean> {
    let inTime = true;
    for (const i of indices) {
      if (this.closeness[i]! <= tolerance) continue;
      this.look(i, tolerance);
      inTime = await this.search.breath();
      if (!inTime) break;
    }
    this.order();
    return inTime;
  }

  /** Only what is known without looking for rows. */
  private glance(i: number): void {
    const { family, heights, values, demand } = this.search;
    this.worths[i] = Math.min(this.worths[i]!, rowBound(graphAt(family, heights[i]!), values, demand));
  }

  private look(i: number, tolerance: number): void {
    const { family, heights, values, demand, onRow } = this.search;
    const height = heights[i]!;
    const graph = graphAt(family, height);
    // A lower strip's row goes into this one too.
    let best = 0;
    for (let k = 0; k <= i; k++) best = Math.max(best, this.found[k]!);
    const full = tolerance < FAIR ? 'exact' : 'fair';
    // A good row at once shows how far there is to go, if at all, unless one is known.
    for (let effort: Effort = best > 0 ? full : 'quick'; ; effort = full) {
      const wanted = effort === 'quick' ? best : best * (1 + tolerance);
      const priced = priceRow(graph, values, demand, wanted + 1e-12, effort);
      if (priced.best) {
        onRow(height, priced.best);
        best = priced.best.value;
      }
      if (priced.bound <= best * (1 + tolerance) || (!priced.best && effort !== 'quick')) {
        this.worths[i] = Math.min(this.worths[i]!, Math.max(priced.bound, 0));
        break;
      }
    }
    this.found[i] = best;
    this.closeness[i] = tolerance;
  }

  /** A lower strip holds no more than a taller one does. */
  private order(): void {
    const { worths } = this;
    for (let i = worths.length - 2; i >= 0; i--) worths[i] = Math.min(worths[i]!, worths[i + 1]!);
  }
}
