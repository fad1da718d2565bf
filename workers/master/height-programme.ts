/**
 * How many strips of each height, and nothing of what they hold: an integer programme of its own, in which the rows are left to
 * inequalities (Benders 1962). At any values of the blanks, what strips of the chosen heights can be worth together must reach
 * what all blanks together are worth; each set of values gives one such inequality, which holds for every plan.
 */
import type { Solver } from '../programme/glpk.ts';
import type { Programme, ProgrammeColumn } from '../programme/programme.ts';
import type { StripWorths } from '../strips/strip-worths.ts';

/** Strips that have been tried: a plan must have more of them from some height on. */
export interface Exclusion {
  /** By height, how many. */
  readonly counts: Int32Array;
  /** Whether it is certain that they do not hold the blanks; if not, they are only passed over. */
  readonly certain: boolean;
}

export interface HeightChoice {
  /** By height, how many strips. */
  readonly counts: Int32Array;
  /** By how much, in parts, all inequalities are more than met. */
  readonly spare: number;
}

export type HeightAnswer =
  | { readonly status: 'found'; readonly choice: HeightChoice }
  /** No strips of so much length meet the inequalities. */
  | { readonly status: 'none' }
  | { readonly status: 'unknown' };

/** More to spare than this is not asked for: then nearly any plan will do. */
const SPARE_MOST = 0.03;
/** Of the spare share: how far below the most it may stay. */
const GAP = 0.25;
const ROUNDINGS = 12;

export class HeightProgramme {
  readonly heights: readonly number[];
  /** Strips of the chosen heights are together worth at least 1, where all that is wanted is worth 1. */
  readonly cuts: StripWorths[] = [];
  readonly exclusions: Exclusion[] = [];
  private readonly solver: Solver;

  /** @param heights ascending */
  constructor(solver: Solver, heights: readonly number[]) {
    this.solver = solver;
    this.heights = heights;
  }

  /**
   * Strips of at most `length` together that meet all inequalities, with as much to spare as may be.
   * @param seconds limit of work
   */
  next(length: number, seconds: number, near: Float64Array | null = null): HeightAnswer {
    const { heights, cuts, exclusions } = this;
    const useful = this.withinRoom(this.undominated(), length);
    if (!useful) return { status: 'none' };
    const { kept, most, rounded } = useful;
    // The numbers are of strips at least so tall: whether one of them is 3 or 4 says far more than whether one height's is.
    const columns: ProgrammeColumn[] = kept.map((i) => ({
      cost: 0,
      lower: 0,
      upper: Math.floor(length / heights[i]! + 1e-9),
      integer: true,
    }));
    const spare = columns.push({ cost: -1, lower: 0, upper: SPARE_MOST, integer: false }) - 1;
    const rows: { lower: number; upper: number; entries: (readonly [number, number])[] }[] = [];
    const sum = (of: ArrayLike<number>) =>
      kept.flatMap((i, c) => {
        const more = of[i]! - (c > 0 ? of[kept[c - 1]!]! : 0);
        return more > 1e-12 ? [[c, more] as const] : [];
      });
    kept.forEach((_, c) => {
      const taller = c + 1 < kept.length ? [[c + 1, -1] as const] : [];
      rows.push({ lower: 0, upper: most[c]!, entries: [[c, 1] as const, ...taller] });
    });
    rows.push({ lower: -Infinity, upper: length * (1 + 1e-9), entries: sum(heights) });
    for (const cut of cuts)
      rows.push({ lower: 1 - 1e-7, upper: Infinity, entries: [...sum(cut.worths), [spare, -1] as const] });
    for (const { worths, least } of rounded)
      rows.push({ lower: least * (1 - 1e-7), upper: Infinity, entries: sum(worths) });
    for (const { counts } of exclusions) {
      const ways = stepsOf(counts).flatMap(({ from, least }) => {
        const c = kept.findIndex((i) => i >= from);
        if (c < 0) return [];
        const more = columns.push({ cost: 0, lower: 0, upper: 1, integer: true }) - 1;
        rows.push({ lower: 0, upper: Infinity, entries: [[c, 1] as const, [more, -least] as const] });
        return [more];
      });
      rows.push({ lower: 1, upper: Infinity, entries: ways.map((c) => [c, 1] as const) });
    }
    if (near) {
      kept.forEach((i, c) => {
        let target = 0;
        for (let k = i; k < heights.length; k++) target += near[k]!;
        const weight = (heights[i]! - (c > 0 ? heights[kept[c - 1]!]! : 0)) / length;
        const off = columns.push({ cost: weight, lower: 0, upper: Infinity, integer: false }) - 1;
        rows.push({
          lower: -target,
          upper: Infinity,
          entries: [
            [off, 1],
            [c, -1],
          ],
        });
        rows.push({
          lower: target,
          upper: Infinity,
          entries: [
            [off, 1],
            [c, 1],
          ],
        });
      });
    }
    if (rows.some((r) => r.lower > 0 && r.entries.length === 0)) return { status: 'none' };
    const programme: Programme = { columns, rows };
    const solved = this.solver.integer(programme, seconds, GAP);
    if (solved.status === 'infeasible') return { status: 'none' };
    if (solved.status !== 'optimal' && solved.status !== 'feasible') return { status: 'unknown' };
    const counts = new Int32Array(heights.length);
    kept.forEach((i, c) => {
      counts[i] = Math.round(solved.x[c]!) - (c + 1 < kept.length ? Math.round(solved.x[c + 1]!) : 0);
    });
    return { status: 'found', choice: { counts, spare: Math.max(0, solved.x[spare]!) } };
  }

  /** What strips that meet all inequalities must at least come to. */
  shortest(): { readonly length: number; readonly used: readonly number[] } {
    const { heights, cuts, solver } = this;
    const solved = solver.linear({
      columns: heights.map((h) => ({ cost: h, lower: 0, upper: Infinity, integer: false })),
      rows: cuts.map(({ worths }) => ({ lower: 1, upper: Infinity, entries: [...worths.entries()] })),
    });
    const prices = cuts.map((_, c) => Math.max(0, solved.duals[c]!));
    const paid = heights.map((_, i) => cuts.reduce((sum, { worths }, c) => sum + prices[c]! * worths[i]!, 0));
    const scale = heights.reduce((least, h, i) => (paid[i]! > 0 ? Math.min(least, h / paid[i]!) : least), 1);
    const used = heights.flatMap((_, i) => (solved.x[i]! > 1e-9 ? [i] : []));
    return { length: scale * prices.reduce((a, b) => a + b, 0), used };
  }

  /** Heights that no lower one and no two lower ones can stand in for: at equal worth, on the same side of what is excluded. */
  private undominated(): number[] {
    const { heights, cuts } = this;
    const starts = [...new Set(this.exclusions.flatMap(({ counts }) => stepsOf(counts).map((s) => s.from)))];
    const kept: number[] = [];
    for (let i = 0; i < heights.length; i++) {
      const from = starts.reduce((most, s) => (s <= i ? Math.max(most, s) : most), 0);
      const stands = (k: number) => cuts.every((cut) => cut.worths[k]! >= cut.worths[i]! - 1e-12);
      const pair = (k: number, l: number) =>
        heights[k]! + heights[l]! <= heights[i]! * (1 + 1e-9) &&
        cuts.every((cut) => cut.worths[k]! + cut.worths[l]! >= cut.worths[i]! - 1e-12);
      const able = kept.filter((k) => k >= from);
      if (able.some(stands) || able.some((k) => kept.some((l) => l <= k && pair(k, l)))) continue;
      kept.push(i);
    }
    return kept;
  }

  /**
   * How often each height can be there at all: the linear programme says how short strips can be together, and what each height
   * adds to that beyond its worth. Inequalities rounded for whole numbers are added as long as they help.
   * Null when the strips cannot be so short.
   */
  private withinRoom(able: readonly number[], length: number): Room | null {
    const { heights, cuts } = this;
    const rounded: Rounded[] = [];
    for (let round = 0; ; round++) {
      const rows = [...cuts.map((cut) => ({ worths: cut.worths, least: 1 })), ...rounded];
      const solved = this.solver.linear({
        columns: able.map((i) => ({ cost: heights[i]!, lower: 0, upper: Infinity, integer: false })),
        rows: rows.map(({ worths, least }) => ({
          lower: least * (1 - 1e-7),
          upper: Infinity,
          entries: able.flatMap((i, c) => (worths[i]! > 1e-12 ? [[c, worths[i]!] as const] : [])),
        })),
      });
      if (solved.status !== 'optimal')
        return { kept: [...able], most: able.map((i) => Math.floor(length / heights[i]! + 1e-9)), rounded };
      // Any prices of the inequalities will do for a bound, so what the solver leaves unclean is made sure of here.
      const prices = rows.map((_, r) => Math.max(0, solved.duals[r]!));
      const extra = able.map((i) => heights[i]! - rows.reduce((sum, row, r) => sum + prices[r]! * row.worths[i]!, 0));
      const gift = extra.reduce((least, e, c) => Math.min(least, e / heights[able[c]!]!), 0);
      const base = rows.reduce((sum, row, r) => sum + prices[r]! * row.least, 0) * (1 - 1e-7) + gift * length;
      const room = length * (1 + 1e-9) - base;
      if (room < -1e-9 * length) return null;
      const fresh = round < ROUNDINGS ? roundedCuts(cuts, able, solved.x) : [];
      if (fresh.length > 0) {
        rounded.push(...fresh);
        continue;
      }
      const kept: number[] = [];
      const most: number[] = [];
      able.forEach((i, c) => {
        const dear = extra[c]! - gift * heights[i]!;
        const n = Math.min(
          Math.floor(length / heights[i]! + 1e-9),
          dear > 1e-9 ? Math.floor(room / dear + 1e-6) : Infinity,
        );
        if (n < 1) return;
        kept.push(i);
        most.push(n);
      });
      return { kept, most, rounded };
    }
  }
}

interface Room {
  readonly kept: readonly number[];
  readonly most: readonly number[];
  readonly rounded: readonly Rounded[];
}

/** An inequality that holds for whole numbers of strips only. */
interface Rounded {
  readonly worths: Float64Array;
  readonly least: number;
}

/**
 * Mixed-integer rounding (Nemhauser & Wolsey 1990) of each inequality, in measures of the worth of each height in use: those that
 * the fractional numbers break most.
 */
function roundedCuts(cuts: readonly StripWorths[], able: readonly number[], x: Float64Array): Rounded[] {
  const used = able.flatMap((i, c) => (x[c]! > 1e-6 ? [[i, x[c]!] as const] : []));
  const found: Rounded[] = [];
  for (const cut of cuts) {
    let best: Rounded | null = null;
    let most = 1e-3;
    for (const [measure] of used) {
      const unit = cut.worths[measure]!;
      if (unit <= 1e-9) continue;
      // A hair less is asked than the inequality says, so that rounding never rests on the last bits.
      const least = (1 - 1e-7) / unit;
      const part = least - Math.floor(least);
      if (part < 0.01) continue;
      const round = (w: number) => {
        const whole = Math.floor(w / unit + 1e-9);
        return whole + Math.min(1, Math.max(0, w / unit - whole) / part);
      };
      const broken =
        (Math.ceil(least) - used.reduce((sum, [i, n]) => sum + n * round(cut.worths[i]!), 0)) / Math.ceil(least);
      if (broken > most) {
        most = broken;
        best = { worths: cut.worths.map(round), least: Math.ceil(least) };
      }
    }
    if (best) found.push(best);
  }
  return found;
}

/** Where the number of strips at least so tall must be one more than it is, if a plan is to differ upward: one of these. */
function stepsOf(counts: Int32Array): readonly { from: number; least: number }[] {
  const steps: { from: number; least: number }[] = [];
  let taller = 0;
  for (let i = counts.length - 1; i >= 0; i--) {
    if (counts[i]! === 0) continue;
    if (i + 1 < counts.length) steps.push({ from: i + 1, least: taller + 1 });
    taller += counts[i]!;
  }
  steps.push({ from: 0, least: taller + 1 });
  return steps;
}
