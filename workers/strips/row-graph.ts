/**
 * Rows of a strip as paths. A row is told by its subcuts, each straight from one edge of the strip to the other, none crossing
 * another; between two of them lies one blank. So a state is the slant of the last cut, an edge is a blank, and what it takes
 * of the strip is how far the next cut must lie beyond the last, measured midway between the strip's edges:
 * the blank's reach to the right against the next cut's slant, less its reach to the left against the last one's. Nothing else
 * of what lies before matters, so the least over paths is the least over rows, and every path can be cut.
 *
 * How high a blank lies changes that length in proportion, so it lies low or high; between is never better.
 */
import type { Reach } from './cut-slopes.ts';
import type { Variant } from './variant.ts';

export interface RowGraph {
  readonly height: number;
  /**
   * Over so much of the height, about its middle, cuts keep apart and within the strip: all of it, but where the graph speaks of
   * lower strips too.
   */
  readonly apart: number;
  readonly span: number;
  /** What sizes are whole multiples of, if anything. */
  readonly ruler: number | null;
  /** Slopes of cuts, ascending; `square` is the index of 0. */
  readonly slopes: Float64Array;
  readonly square: number;
  /** The blanks that fit, as indices of the job's. */
  readonly blanks: Int32Array;
  /** length[(k * m + s) * m + t]: what blank k takes between a cut of slope s and one of slope t; m slopes. */
  readonly length: Float64Array;
  /** Which variant does so, twice its index, plus 1 where it lies high. */
  readonly choice: Int32Array;
  readonly variants: readonly Variant[];
}

/** A blank of a row: how it lies and the slope of the cut after it. */
export interface RowStep {
  readonly variant: Variant;
  /** How far its lowest point lies above the strip's near edge. */
  readonly rise: number;
  readonly slope: number;
}

/**
 * @param variants of the family, with `reach` over `slopes`; those too tall for the strip are passed over
 * @param height of the strip @param span its length
 * @param apart less than the height: then no row of a strip between the two heights is longer in this graph than in its own, since
 * a blank low or high in the middle of a taller strip is somewhere between low and high in that
 */
export function makeRowGraph(
  variants: readonly Variant[],
  slopes: Float64Array,
  reach: Reach,
  height: number,
  span: number,
  ruler: number | null,
  apart = height,
): RowGraph {
  const m = slopes.length;
  const fitting = [...variants.keys()].filter((v) => variants[v]!.height <= height + 1e-9 * (1 + height));
  const blanks = Int32Array.from(new Set(fitting.map((v) => variants[v]!.blank)));
  const length = new Float64Array(blanks.length * m * m).fill(Infinity);
  const choice = new Int32Array(blanks.length * m * m);
  const usable = Array.from(slopes, (s) => Math.abs(s) * apart <= span);
  blanks.forEach((blank, k) => {
    for (const v of fitting) {
      if (variants[v]!.blank !== blank) continue;
      const free = height - variants[v]!.height;
      for (let high = 0; high <= (free > 1e-9 && m > 1 ? 1 : 0); high++) {
        const offset = (high === 1 ? free : 0) - height / 2;
        for (let s = 0; s < m; s++) {
          if (!usable[s]) continue;
          const from = slopes[s]! * offset - reach.left[v * m + s]!;
          const row = (k * m + s) * m;
          for (let t = 0; t < m; t++) {
            const d = reach.right[v * m + t]! - slopes[t]! * offset + from;
            if (d < length[row + t]! && usable[t]) {
              length[row + t] = d;
              choice[row + t] = 2 * v + high;
            }
          }
        }
      }
    }
    for (let s = 0; s < m; s++) {
      for (let t = 0; t < m; t++) {
        const i = (k * m + s) * m + t;
        // Cuts that lean apart must not cross within the strip.
        length[i] = Math.max(length[i]!, (Math.abs(slopes[t]! - slopes[s]!) * apart) / 2);
      }
    }
  });
  return { height, apart, span, ruler, slopes, square: slopes.indexOf(0), blanks, length, choice, variants };
}

/** What a cut needs of the strip beyond its middle. */
export function tail(graph: RowGraph, slope: number): number {
  return (Math.abs(graph.slopes[slope]!) * graph.apart) / 2;
}

/** The step that blank k makes from slope s to slope t. */
export function stepOf(graph: RowGraph, k: number, s: number, t: number): RowStep {
  const m = graph.slopes.length;
  const choice = graph.choice[(k * m + s) * m + t]!;
  const variant = graph.variants[choice >> 1]!;
  return { variant, rise: choice & 1 ? graph.height - variant.height : 0, slope: graph.slopes[t]! };
}

/** Whether both its sides stand square to the strip. */
export function isBox(v: Variant): boolean {
  return (
    v.hull.length === 4 &&
    v.hull.every(([x, y]) => (x < 1e-9 || v.width - x < 1e-9) && (y < 1e-9 || v.height - y < 1e-9))
  );
}
