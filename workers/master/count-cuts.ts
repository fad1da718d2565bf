/**
 * How many strips must be at least so tall: as many as it takes to hold the blanks that cannot lie in a lower one. Strips
 * share nothing, so this is bin packing with the strip's length as the bin, bounded by its own linear programme over rows and
 * rounded up (Gilmore & Gomory 1961). These counts cut off most of what the linear programme over strips leaves open.
 */
import type { Solver } from '../programme/glpk.ts';
import type { Programme } from '../programme/programme.ts';
import { graphAt, stripHeight } from '../strips/family.ts';
import { priceRow } from '../strips/price-row.ts';
import { type Breath, count } from './generate.ts';
import type { HeightCut, StripMaster } from './strip-master.ts';

/** The cuts that say more than a lower one with the same count. Ends early, with those found, when time is up. */
export async function countCuts(solver: Solver, master: StripMaster, breath: Breath): Promise<readonly HeightCut[]> {
  // Where cuts slant, a strip taller or lower than the tallest blank's may hold more, and one height says nothing of the rest.
  if (master.families.some((f) => f.slopes.length > 1)) return [];
  const needs = neededHeights(master);
  const thresholds = [...new Set(needs.filter((h) => h < Infinity && h > 0))].sort((a, b) => a - b);
  const cuts: HeightCut[] = [];
  for (const height of thresholds) {
    const demand = master.demand.map((d, blank) =>
      needs[blank]! >= height - 1e-9 && needs[blank]! < Infinity ? d : 0,
    );
    const least = await leastRows(solver, master, demand, breath);
    if (least > 0) cuts.push({ height, least, most: Infinity });
    if (!(await breath())) break;
  }
  return cuts.filter((cut, i) => i === cuts.length - 1 || cuts[i + 1]!.least < cut.least);
}

/** By blank, the lowest strip that can hold it on any cloth. */
function neededHeights(master: StripMaster): number[] {
  const needs = Array.from(master.demand, () => Infinity);
  for (const family of master.families) {
    for (const v of family.variants) needs[v.blank] = Math.min(needs[v.blank]!, stripHeight(v.height, family.ruler));
  }
  return needs;
}

/** A proved least number of strips, of whatever height, that hold these blanks. */
async function leastRows(solver: Solver, master: StripMaster, demand: Int32Array, breath: Breath): Promise<number> {
  const wanted = [...demand.keys()].filter((b) => demand[b]! > 0);
  if (wanted.length === 0) return 0;
  const graphs = master.families
    .filter((f) => f.variants.length > 0)
    .map((family) => graphAt(family, family.heights.at(-1)!));
  const rows: ReadonlyMap<number, number>[] = wanted.map((b) => new Map([[b, 1]]));
  let bound = 0;
  for (let round = 0; round < 200; round++) {
    const programme: Programme = {
      columns: rows.map(() => ({ cost: 1, lower: 0, upper: Infinity, integer: false })),
      rows: wanted.map((b) => ({
        lower: demand[b]!,
        upper: Infinity,
        entries: rows.flatMap((r, i) => (r.has(b) ? [[i, r.get(b)!] as const] : [])),
      })),
    };
    const solved = solver.linear(programme);
    if (solved.status !== 'optimal') return Math.ceil(bound - 1e-6);
    const values = new Float64Array(demand.length);
    wanted.forEach((b, i) => {
      values[b] = Math.max(0, solved.duals[i]!);
    });
    let most = 1;
    let added = false;
    for (const graph of graphs) {
      const priced = priceRow(graph, values, demand, 1 + 1e-7);
      most = Math.max(most, priced.bound);
      if (priced.best) {
        rows.push(count(priced.best.steps.map((s) => s.variant.blank)));
        added = true;
      }
    }
    bound = Math.max(bound, solved.value / most);
    // The count is rounded up, so a bound that already rounds to the programme's own value cannot grow further.
    if (!(await breath())) break;
    if (!added || Math.ceil(bound - 1e-6) >= Math.ceil(solved.value - 1e-6)) break;
  }
  return Math.ceil(bound - 1e-6);
}
