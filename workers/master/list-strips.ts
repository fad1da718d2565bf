/** Every strip that a plan cheaper than the best could hold. A complete list makes GLPK's choice among them a proof. */
import { gainsByRaising, graphAt, passingGraphAt, stripHeight } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { listRows } from '../strips/list-rows.ts';
import { listSlantedRows } from '../strips/list-slanted-rows.ts';
import type { StripColumn } from './column.ts';
import { type Breath, count, type Generated } from './generate.ts';
import type { StripMaster } from './strip-master.ts';

const MOST_LISTED = 3000;

/**
 * At prices scaled so that no strip is worth more than it costs, a plan costs the bound and what its strips cost above their
 * worth; so none of a cheaper plan's strips costs more above its worth than the plan may above the bound.
 * @param target the most that a plan of interest costs
 * @param patience labels of slanted rows to look at before giving up
 * @returns null when there are too many, or strips come off pieces
 */
export async function listStrips(
  master: StripMaster,
  made: Generated,
  target: number,
  patience: number,
  breath: Breath,
): Promise<readonly StripColumn[] | null> {
  if (master.families.some((f) => f.stack !== null)) return null;
  const room = target - made.bound + 1e-6;
  const { prices, scale } = made;
  const values = prices.blank.map((v) => v * scale);
  const columns: StripColumn[] = [];
  let left = patience;
  for (const [f, family] of master.families.entries()) {
    const rate = family.cloth.cost ?? 1;
    const ruler = family.ruler ?? 1;
    const heights = gainsByRaising(family) ? everyHeight(family.heights, ruler) : family.heights;
    for (const height of heights) {
      const least = rate * height - scale * (prices.bare(f, height) - prices.strip(f, height)) - room;
      const graph = family.heights.includes(height) ? graphAt(family, height) : passingGraphAt(family, height);
      const slanted = graph.slopes.length > 1;
      const listed = slanted
        ? listSlantedRows(graph, values, master.demand, least, left, MOST_LISTED)
        : listRows(graph, values, master.demand, least, MOST_LISTED);
      const rows = listed && ('rows' in listed ? listed.rows : listed);
      if (listed && 'rows' in listed) left -= listed.looked;
      if (!rows || columns.length + rows.length > MOST_LISTED || !(await breath())) return null;
      for (const row of rows) {
        // A row of boxes that would fit a lower strip is listed there.
        const tallest = Math.max(...row.steps.map((s) => s.variant.height));
        if (!slanted && stripHeight(tallest, family.ruler) < height - 1e-9) continue;
        const counts = count(row.steps.map((s) => s.variant.blank));
        columns.push({ family: f, height, counts, row: layRow(row.steps, height) });
      }
    }
  }
  return columns;
}

/** Multiples of the ruler up to where a strip may as well be two, those that blanks ask for as they stand. */
function everyHeight(asked: readonly number[], ruler: number): readonly number[] {
  const known = new Map(asked.map((h) => [Math.round(h / ruler), h]));
  const first = Math.round(asked[0]! / ruler);
  const last = 2 * Math.round(asked.at(-1)! / ruler) - 1;
  return Array.from({ length: last - first + 1 }, (_, i) => known.get(first + i) ?? (first + i) * ruler);
}
