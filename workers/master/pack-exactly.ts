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

export type Filling = { readonly plan: Plan | null; readonly certain: boolean };

/**
 * @param slots ascending by height @param patience labels of rows to look at @param seconds limit of work for the choice
 * @returns a plan, or none: for certain or not; null when time ran out
 */
export async function packExactly(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  patience: number,
  seconds: number,
  breath: Breath,
): Promise<Filling | null> {
  const family = master.families[0]!;
  const graphOf = (height: number) => graphAt(family, height);
  const unknown: Filling = { plan: null, certain: false };
  for (let round = 0; round < 30; round++) {
    const shared = await shareWithNewRows(master, solver, slots, master.demand, breath, Infinity);
    if (!shared) return null;
    const worths: number[] = [];
    let added = false;
    for (const [s, slot] of slots.entries()) {
      const priced = priceRow(graphOf(slot.height), shared.values, master.demand, shared.prices[s]! + LOOSE, 'exact');
      if (priced.best && addRow(master, 0, slot.height, priced.best)) added = true;
      worths.push(Math.max(priced.bound, 0));
      if (!(await breath())) return null;
    }
    if (added) continue;
    const room = slots.reduce((sum, slot, s) => sum + slot.count * worths[s]!, 0) - 1 + LOOSE;
    if (room < 0) return { plan: null, certain: true };
    const listed: { column: StripColumn; slot: number }[] = [];
    let left = patience;
    for (const [s, { height }] of slots.entries()) {
      const graph = graphOf(height);
      const list = listSlantedRows(
        graph,
        shared.values,
        master.demand,
        worths[s]! - room,
        left,
        MOST_ROWS - listed.length,
      );
      if (!list) return unknown;
      left -= list.looked;
      for (const row of list.rows) {
        const counts = count(row.steps.map((step) => step.variant.blank));
        listed.push({ column: { family: 0, height, counts, row: layRow(row.steps, height) }, slot: s });
      }
      if (!(await breath())) return null;
    }
    return choose(master, solver, slots, listed, seconds);
  }
  return unknown;
}

function choose(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  listed: readonly { column: StripColumn; slot: number }[],
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
