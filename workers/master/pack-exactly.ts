/**
 * Whether strips of given heights can be filled at all. At the prices of the linear programme a row that is worth much less than
 * its strip has no place in any filling, since all rows together must reach what is wanted; the rest are listed, and the integer
 * programme's answer over a complete list is a proof.
 */
import type { Solver } from '../programme/glpk.ts';
import type { ProgrammeColumn } from '../programme/programme.ts';
import { graphAt } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { listSlantedRows } from '../strips/list-slanted-rows.ts';
import { priceRow } from '../strips/price-row.ts';
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
  const worths: number[] = [];
  for (const { height } of slots) {
    let worth = 0;
    for (;;) {
      const priced = priceRow(graphAt(family, height), values, master.demand, worth + LOOSE, 'exact');
      if (!priced.best || priced.bound <= priced.best.value + LOOSE) {
        worths.push(Math.max(priced.bound, 0));
        if (priced.best) addRow(master, 0, height, priced.best);
        break;
      }
      addRow(master, 0, height, priced.best);
      worth = priced.best.value;
    }
    if (!(await breath())) return null;
  }
  const room = slots.reduce((sum, slot, s) => sum + slot.count * worths[s]!, 0) - 1 + LOOSE;
  if (room < 0) return 'none';
  const listed: Listed[] = [];
  let left = patience;
  for (const [s, { height }] of slots.entries()) {
    const least = worths[s]! - room;
    const list = listSlantedRows(
      graphAt(family, height),
      values,
      master.demand,
      least,
      left,
      MOST_ROWS - listed.length,
    );
    if (!list) return 'many';
    left -= list.looked;
    for (const row of list.rows) {
      const counts = count(row.steps.map((step) => step.variant.blank));
      listed.push({ column: { family: 0, height, counts, row: layRow(row.steps, height) }, slot: s });
    }
    if (!(await breath())) return null;
  }
  return listed;
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
  return { plan: makePlan(master.job, master.families, master.demand, { strips, pieces: [] }), certain: true };
}
