/**
 * Strips of given heights, and how much of what is wanted they can hold: the linear programme over rows, which asks for the
 * greatest share of the demand. A share of 1 or more says the strips may do; less, that they do not, and its prices say why.
 */
import type { Solver } from '../programme/glpk.ts';
import type { Programme, ProgrammeColumn } from '../programme/programme.ts';
import type { StripColumn } from './column.ts';

export interface Slot {
  readonly height: number;
  readonly count: number;
}

export interface Shared {
  /** How much of the demand goes in, all blanks alike. */
  readonly share: number;
  /** By blank of the job: all that is wanted is worth 1. */
  readonly values: Float64Array;
  /** By slot: what one more of it would add to the share. */
  readonly prices: readonly number[];
  /** Columns used, as far as the demand goes, and how often. */
  readonly used: readonly { readonly column: StripColumn; readonly slot: number; readonly times: number }[];
}

/** More than this of the demand is not asked for. */
const SHARE_MOST = 1.2;

/**
 * @param slots ascending by height; a lower strip may use a taller slot
 * @param columns those that fit no slot are passed over; what one holds beyond the demand does not count
 */
export function greatestShare(
  solver: Solver,
  slots: readonly Slot[],
  columns: readonly StripColumn[],
  demand: Int32Array,
): Shared {
  const wanted = [...demand.keys()].filter((b) => demand[b]! > 0);
  const rowOf = new Map(wanted.map((b, r) => [b, r]));
  const variables: ProgrammeColumn[] = [{ cost: -1, lower: 0, upper: SHARE_MOST, integer: false }];
  const demandRows = wanted.map((b) => ({
    lower: 0,
    upper: Infinity,
    entries: [[0, -demand[b]!] as [number, number]],
  }));
  let taller = 0;
  const slotRows = [...slots]
    .reverse()
    .map(({ count }) => {
      taller += count;
      return { lower: -Infinity, upper: taller, entries: [] as [number, number][] };
    })
    .reverse();
  const meant: { column: StripColumn; slot: number }[] = [];
  const seen = new Set<string>();
  for (const column of columns) {
    const slot = slots.findIndex((s) => s.height >= column.height - 1e-9);
    if (slot < 0) continue;
    const held: [number, number][] = [];
    for (const [b, n] of column.counts) {
      const r = rowOf.get(b);
      if (r !== undefined) held.push([r, Math.min(n, demand[b]!)]);
    }
    if (held.length === 0) continue;
    held.sort((a, b) => a[0] - b[0]);
    const key = `${slot}|${held.join(';')}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const x = variables.push({ cost: 0, lower: 0, upper: Infinity, integer: false }) - 1;
    for (const [r, n] of held) demandRows[r]!.entries.push([x, n]);
    for (let s = 0; s <= slot; s++) slotRows[s]!.entries.push([x, 1]);
    meant.push({ column, slot });
  }
  const programme: Programme = { columns: variables, rows: [...demandRows, ...slotRows] };
  const solved = solver.linear(programme);
  const values = new Float64Array(demand.length);
  wanted.forEach((b, r) => {
    values[b] = Math.max(0, solved.duals[r]!);
  });
  let price = 0;
  const prices = slots.map((_, s) => {
    price += Math.max(0, -solved.duals[wanted.length + s]!);
    return price;
  });
  const used = meant.flatMap((m, i) => (solved.x[i + 1]! > 1e-7 ? [{ ...m, times: solved.x[i + 1]! }] : []));
  return { share: solved.x[0]!, values, prices, used };
}
