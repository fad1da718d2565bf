/** A row laid out: where each blank and each cut lies. */
import { cutSlopes } from './cut-slopes.ts';
import type { RowStep } from './row-graph.ts';
import type { Variant } from './variant.ts';

export interface LaidBlank {
  readonly variant: Variant;
  /** Leftmost point from the strip's start, lowest point from its near edge. */
  readonly x: number;
  readonly y: number;
  /** Of the cut after it. */
  readonly slope: number;
  /** Which stack of its row it lies in; absent: it lies between two cuts by itself. */
  readonly stack?: number;
}

export interface LaidRow {
  readonly blanks: readonly LaidBlank[];
  /** As far as its blanks reach. */
  readonly length: number;
  /** Where the last cut meets the line midway between the strip's edges. */
  readonly middle: number;
}

/** Lays steps out as their cuts say, as tight as those allow, in a strip of this height. */
export function layRow(steps: readonly RowStep[], height: number): LaidRow {
  const blanks: LaidBlank[] = [];
  let middle = 0;
  let slope = 0;
  for (const step of steps) {
    const { variant, rise } = step;
    const offset = rise - height / 2;
    const left = reach(variant, slope, Math.min) - slope * offset;
    blanks.push({ variant, x: middle - left, y: rise, slope: step.slope });
    const right = reach(variant, step.slope, Math.max) - step.slope * offset;
    middle += Math.max(right - left, (Math.abs(step.slope - slope) * height) / 2);
    slope = step.slope;
  }
  return { blanks, length: Math.max(0, ...blanks.map((b) => b.x + b.variant.width)), middle };
}

/** Whether these steps, whatever graph they come from, go into a strip of this height: the last cut too ends within it. */
export function stepsFit(steps: readonly RowStep[], height: number, span: number): boolean {
  const last = steps.at(-1);
  return !last || layRow(steps, height).middle + (Math.abs(last.slope) * height) / 2 <= span * (1 + 1e-9) + 1e-9;
}

function reach(variant: Variant, slope: number, most: (...values: number[]) => number): number {
  return most(...variant.hull.map(([x, y]) => x - slope * y));
}

/**
 * The shortest row of these blanks in this order: each low or high, cuts of any slope their edges have. Null when even that
 * is longer than `span`.
 */
export function fitRow(variants: readonly Variant[], height: number, span: number): LaidRow | null {
  if (variants.length === 0) return { blanks: [], length: 0, middle: 0 };
  const slopes = cutSlopes([...new Set(variants)], span).filter((s) => Math.abs(s) * height <= span);
  const m = slopes.length;
  const square = slopes.indexOf(0);
  let length = new Float64Array(m).fill(Infinity);
  length[square] = 0;
  const back: { from: Int32Array; high: Uint8Array }[] = [];
  for (const variant of variants) {
    const next = new Float64Array(m).fill(Infinity);
    const from = new Int32Array(m).fill(-1);
    const high = new Uint8Array(m);
    const right = Float64Array.from(slopes, (s) => reach(variant, s, Math.max));
    const left = Float64Array.from(slopes, (s) => reach(variant, s, Math.min));
    const free = height - variant.height;
    for (let up = 0; up <= (free > 1e-9 && m > 1 ? 1 : 0); up++) {
      const offset = (up === 1 ? free : 0) - height / 2;
      for (let s = 0; s < m; s++) {
        if (length[s] === Infinity || (variant.stack && s !== square)) continue;
        for (let t = 0; t < m; t++) {
          if (variant.stack && t !== square) continue;
          const own = right[t]! - slopes[t]! * offset - left[s]! + slopes[s]! * offset;
          const to = length[s]! + Math.max(own, (Math.abs(slopes[t]! - slopes[s]!) * height) / 2);
          if (to < next[t]!) {
            next[t] = to;
            from[t] = s;
            high[t] = up;
          }
        }
      }
    }
    back.push({ from, high });
    length = next;
  }
  if (length[square]! > span * (1 + 1e-9) + 1e-9) return null;
  const steps: RowStep[] = [];
  let at = square;
  for (let i = variants.length - 1; i >= 0; i--) {
    const { from, high } = back[i]!;
    const variant = variants[i]!;
    steps.unshift({ variant, rise: high[at] ? height - variant.height : 0, slope: slopes[at]! });
    at = from[at]!;
  }
  return layRow(steps, height);
}
