/** Strips of given heights filled in whole rows: what the linear programme says most clearly is fixed, the rest asked again. */
import type { Solver } from '../programme/glpk.ts';
import type { Programme, ProgrammeColumn } from '../programme/programme.ts';
import { graphAt } from '../strips/family.ts';
import { priceRow } from '../strips/price-row.ts';
import type { StripColumn } from './column.ts';
import { addRow, type Breath } from './generate.ts';
import { makePlan, type Plan } from './plan.ts';
import { greatestShare, type Shared, type Slot } from './slots-programme.ts';
import type { StripMaster } from './strip-master.ts';

/** So many strips at the end are chosen together. */
const LAST = 8;
/** Rows to choose among at the end: those that lose least at the prices of what is left. */
const MOST_COLUMNS = 250;
/** Rounds of pricing for what is left. */
const ROUNDS = 6;
const SECONDS_TO_CHOOSE = 0.2;

/**
 * @param slots ascending by height
 * @param freshRows whether rows are looked for on the way, or those known must do, which is quicker
 * @returns null when the strips were not filled this time
 */
export async function packSlots(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  random: () => number,
  breath: Breath,
  freshRows = true,
): Promise<Plan | null> {
  const left = Int32Array.from(master.demand);
  const open = slots.map((s) => s.count);
  // Of few strips some are fixed too, or every attempt would be the same.
  const last = Math.min(LAST, Math.ceil(open.reduce((a, b) => a + b, 0) / 2));
  const strips: { column: StripColumn; times: number }[] = [];
  while (left.some((n) => n > 0)) {
    const now = slots.flatMap((s, i) => (open[i]! > 0 ? [{ height: s.height, count: open[i]! }] : []));
    const index = slots.flatMap((_, i) => (open[i]! > 0 ? [i] : []));
    if (now.length === 0) return null;
    const shared = await shareWithNewRows(master, solver, now, left, breath, freshRows ? ROUNDS : 0);
    if (!shared || shared.share < 1 - 1e-6) return null;
    const count = open.reduce((a, b) => a + b, 0);
    if (count <= last) {
      const ending = chooseLast(master, solver, now, left, shared);
      if (!ending) return null;
      for (const column of ending) strips.push({ column, times: 1 });
      break;
    }
    if (!fix(shared)) return null;
    function fix({ used, share }: Shared): boolean {
      let fixed = 0;
      const take = (u: Shared['used'][number], times: number) => {
        // The strip may lie in its own slot or a taller one that is still open.
        for (let s = u.slot; s < now.length && times > 0; s++) {
          const free = Math.min(times, open[index[s]!]!);
          if (free === 0) continue;
          open[index[s]!]! -= free;
          times -= free;
          fixed += free;
          strips.push({ column: u.column, times: free });
          for (const [b, n] of u.column.counts) left[b] = Math.max(0, left[b]! - n * free);
        }
      };
      for (const u of used) {
        const whole = Math.floor(u.times / Math.max(1, share) + 1e-6);
        // Leaving out a part at random keeps attempts different from one another.
        if (whole > 0) take(u, random() < 0.2 ? Math.floor(whole * random()) : whole);
      }
      if (fixed > 0) return true;
      const best = [...used]
        .map((u) => ({ u, key: u.times * (0.6 + 0.4 * random()) }))
        .sort((a, b) => b.key - a.key)[0];
      if (best) take(best.u, 1);
      return fixed > 0;
    }
  }
  return makePlan(master.job, master.families, master.demand, { strips, pieces: [] });
}

/**
 * The greatest share with rows priced for what is left, until quick looks find no more or `rounds` are over.
 * @returns null when time ran out
 */
export async function shareWithNewRows(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  demand: Int32Array,
  breath: Breath,
  rounds: number,
): Promise<Shared | null> {
  const family = master.families[0]!;
  for (let round = 0; ; round++) {
    const shared = greatestShare(
      solver,
      slots,
      master.strips.filter((c) => c.row),
      demand,
    );
    if (round >= rounds) return shared;
    let added = 0;
    for (const [s, slot] of slots.entries()) {
      const graph = graphAt(family, slot.height);
      const priced = priceRow(graph, shared.values, demand, shared.prices[s]! * (1 + 1e-6) + 1e-9, 'quick');
      if (priced.best && addRow(master, 0, slot.height, priced.best)) added++;
      if (!(await breath())) return null;
    }
    if (added === 0) return shared;
  }
}

/** The last few strips, by the integer programme over all rows known: fewest blanks left over, and none is wanted. */
function chooseLast(
  master: StripMaster,
  solver: Solver,
  slots: readonly Slot[],
  left: Int32Array,
  { values, prices }: Shared,
): readonly StripColumn[] | null {
  const columns: ProgrammeColumn[] = [];
  const rows = Array.from(left, (n) => ({ lower: n, upper: Infinity, entries: [] as [number, number][] }));
  let taller = 0;
  const slotRows = [...slots]
    .reverse()
    .map(({ count }) => {
      taller += count;
      return { lower: -Infinity, upper: taller, entries: [] as [number, number][] };
    })
    .reverse();
  const meant: StripColumn[] = [];
  const seen = new Set<string>();
  const able = master.strips.flatMap((column) => {
    if (!column.row) return [];
    const slot = slots.findIndex((s) => s.height >= column.height - 1e-9);
    if (slot < 0) return [];
    const held = [...column.counts].flatMap(([b, n]) => (left[b]! > 0 ? [[b, Math.min(n, left[b]!)] as const] : []));
    held.sort((a, b) => a[0] - b[0]);
    const key = `${slot}|${held.join(';')}`;
    if (held.length === 0 || seen.has(key)) return [];
    seen.add(key);
    const loss = held.reduce((rest, [b, n]) => rest - n * values[b]!, prices[slot]!);
    return [{ column, slot, held, loss }];
  });
  able.sort((a, b) => a.loss - b.loss);
  for (const { column, slot, held } of able.slice(0, MOST_COLUMNS)) {
    const x = columns.push({ cost: 0, lower: 0, upper: slots.reduce((n, s) => n + s.count, 0), integer: true }) - 1;
    for (const [b, n] of held) rows[b]!.entries.push([x, n]);
    for (let s = 0; s <= slot; s++) slotRows[s]!.entries.push([x, 1]);
    meant.push(column);
  }
  left.forEach((n, b) => {
    if (n === 0) return;
    const u = columns.push({ cost: 1, lower: 0, upper: n, integer: false }) - 1;
    rows[b]!.entries.push([u, 1]);
  });
  const wanted = rows.filter((_, b) => left[b]! > 0);
  const programme: Programme = { columns, rows: [...wanted, ...slotRows] };
  const solved = solver.integer(programme, SECONDS_TO_CHOOSE);
  if ((solved.status !== 'optimal' && solved.status !== 'feasible') || solved.value > 1e-6) return null;
  return meant.flatMap((column, i) => new Array<StripColumn>(Math.round(solved.x[i]!)).fill(column));
}
