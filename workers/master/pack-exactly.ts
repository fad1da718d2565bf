/**
 * Whether strips of given heights can be filled at all. At the prices of the linear programme a row that is worth much less than
 * its strip has no place in any filling, since all rows together must reach what is wanted; the rest are listed, and the integer
 * programme's answer over a complete list is a proof.
 */
import type { Solver } from '../programme/glpk.ts';
import type { ProgrammeColumn } from '../programme/programme.ts';
import { type Family, graphAt, rangeGraph } from '../strips/family.ts';
import { fitRow, type LaidRow, layRow, stepsFit } from '../strips/lay-row.ts';
import { listSlantedRows } from '../strips/list-slanted-rows.ts';
import { priceRow } from '../strips/price-row.ts';
import type { RowStep } from '../strips/row-graph.ts';
import { rangesUpTo } from '../strips/strip-heights.ts';
import type { StripColumn } from './column.ts';
import { addRow, type Breath, count } from './generate.ts';
import { shareWithNewRows } from './pack-slots.ts';
import { makePlan, type Plan } from './plan.ts';
import type { Slot } from './slots-programme.ts';
import type { StripMaster } from './strip-master.ts';

const MOST_ROWS = 8000;
const LOOSE = 1e-7;
const ROUNDS = 30;

export type Filling = { readonly plan: Plan | null; readonly certain: boolean };

/**
 * @param slots ascending by height
 * @param prices values of the blanks at which all that is wanted is worth 1 and few strips are worth much more than they must be:
 * the linear programme's own values leave out whatever is not short
 * @param patience labels of rows to look at @param seconds limit of work for the choice
 * @returns a plan, or none: for certain or not; null when time ran out
 */
export async function packExactly(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  prices: Float64Array,
  patience: number,
  seconds: number,
  breath: Breath,
): Promise<Filling | null> {
  const shared = await exactShare(master, solver, slots, breath);
  if (!shared) return null;
  for (const part of [0, 0.5]) {
    const values = shared.values.map((v, b) => (1 - part) * v + part * prices[b]!);
    const listed = await listFillings(master, slots, values, patience, breath);
    if (listed === null) return null;
    if (listed === 'none') return { plan: null, certain: true };
    if (listed !== 'many') return choose(master, solver, slots, listed, seconds);
  }
  return { plan: null, certain: false };
}

/** The greatest share with all rows priced, or as near to it as a few rounds come. Null when time ran out. */
async function exactShare(master: StripMaster, solver: Solver, slots: readonly Slot[], breath: Breath) {
  const family = master.families[0]!;
  for (let round = 0; ; round++) {
    const shared = await shareWithNewRows(master, solver, slots, master.demand, breath, Infinity);
    let added = false;
    for (const [s, { height }] of slots.entries()) {
      if (!shared) return null;
      const least = shared.prices[s]! + LOOSE;
      const priced = priceRow(graphAt(family, height), shared.values, master.demand, least, 'exact');
      if (priced.best && addRow(master, 0, height, priced.best)) added = true;
      if (!(await breath())) return null;
    }
    if (!added || round === ROUNDS) return shared;
  }
}

interface Listed {
  readonly column: StripColumn;
  readonly slot: number;
}

/** Every row that a filling may hold; `none` when strips are together worth too little for one. Null when time ran out. */
async function listFillings(
  master: StripMaster,
  slots: readonly Slot[],
  values: Float64Array,
  patience: number,
  breath: Breath,
): Promise<readonly Listed[] | 'none' | 'many' | null> {
  const family = master.families[0]!;
  // A slot may hold a lower strip, and that may hold more than a strip as tall as the slot.
  const ranges = slots.map(({ height }) => rangesUpTo(family, height));
  const worths: number[] = [];
  for (const each of ranges) {
    let worth = 0;
    let most = 0;
    for (const { low, high } of each) {
      for (;;) {
        const priced = priceRow(rangeGraph(family, low, high), values, master.demand, worth + LOOSE, 'exact');
        if (priced.best) {
          worth = priced.best.value;
          if (stepsFit(priced.best.steps, high, family.span)) addRow(master, 0, high, priced.best);
        }
        if (priced.best && priced.bound > worth + LOOSE) continue;
        most = Math.max(most, priced.bound);
        break;
      }
      if (!(await breath())) return null;
    }
    worths.push(most);
  }
  // Where all goes in with much to spare, the programme's values of it come to less than 1, even to nothing.
  const wanted = values.reduce((sum, v, b) => sum + v * master.demand[b]!, 0);
  const room = slots.reduce((sum, slot, s) => sum + slot.count * worths[s]!, 0) - wanted + LOOSE;
  if (room < 0) return 'none';
  const listed: Listed[] = [];
  let left = patience;
  for (const [slot, each] of ranges.entries()) {
    const least = worths[slot]! - room;
    const known = new Set<string>();
    for (const { low, high } of each) {
      const graph = rangeGraph(family, low, high);
      const list = listSlantedRows(graph, values, master.demand, least, left, MOST_ROWS - listed.length);
      if (!list) return 'many';
      left -= list.looked;
      for (const { steps } of list.rows) {
        const counts = count(steps.map((step) => step.variant.blank));
        const key = [...counts].sort((a, b) => a[0] - b[0]).join(';');
        if (known.has(key)) continue;
        const { height, row } = realRow(family, steps, low, high);
        if (row) known.add(key);
        listed.push({ column: { family: 0, height, counts, row }, slot });
      }
      if (!(await breath())) return null;
    }
  }
  return listed;
}

/** The row at the greatest height of the range at which it goes in; none where it only serves the proof. */
function realRow(
  { ruler, span }: Family,
  steps: readonly RowStep[],
  low: number,
  high: number,
): { readonly height: number; readonly row: LaidRow | null } {
  if (stepsFit(steps, high, span)) return { height: high, row: layRow(steps, high) };
  const variants = steps.map((step) => step.variant);
  for (let k = 0; ruler !== null && high - k * ruler >= low - 1e-9; k++) {
    const row = fitRow(variants, high - k * ruler, span);
    if (row) return { height: high - k * ruler, row };
  }
  return { height: high, row: null };
}

function choose(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  listed: readonly Listed[],
  seconds: number,
): Filling {
  const rows = [
    ...Array.from(master.demand, (n) => ({ lower: n, upper: Infinity, entries: [] as [number, number][] })),
    ...slots.map(({ count: n }) => ({ lower: -Infinity, upper: n, entries: [] as [number, number][] })),
  ];
  const columns: ProgrammeColumn[] = listed.map(({ column, slot }, x) => {
    for (const [b, n] of column.counts) rows[b]!.entries.push([x, n]);
    rows[master.demand.length + slot]!.entries.push([x, 1]);
    return { cost: 0, lower: 0, upper: slots[slot]!.count, integer: true };
  });
  if (rows.some((r) => r.lower > 0 && r.entries.length === 0)) return { plan: null, certain: true };
  const solved = solver.integer({ columns, rows: rows.filter((r) => r.entries.length > 0) }, seconds);
  if (solved.status === 'infeasible') return { plan: null, certain: true };
  if (solved.status !== 'optimal' && solved.status !== 'feasible') return { plan: null, certain: false };
  const strips = listed.flatMap(({ column }, x) => {
    const times = Math.round(solved.x[x]!);
    return times > 0 ? [{ column, times }] : [];
  });
  if (strips.some(({ column }) => !column.row)) {
    // Rows that only serve the proof have not proved anything: without them there may be a plan, but no answer for certain.
    const real = listed.filter(({ column }) => column.row);
    return { plan: choose(master, solver, slots, real, seconds).plan, certain: false };
  }
  return { plan: makePlan(master.job, master.families, master.demand, { strips, pieces: [] }), certain: true };
}
