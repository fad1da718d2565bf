/**
 * A plan from the linear programme without another: whole parts of its solution are cut as they are, and what is left is
 * filled strip by strip, each time the strip worth most for its height at the programme's prices.
 */
import { graphAt, stripHeight } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { goodRow, type PricedRow } from '../strips/price-row.ts';
import type { StripColumn } from './column.ts';
import { type Breath, count } from './generate.ts';
import { makePlan, type Plan } from './plan.ts';
import type { MasterPrices, MasterSolution, StripMaster } from './strip-master.ts';

/** Null where strips come off pieces, or time ran out. */
export async function roundPlan(
  master: StripMaster,
  solution: MasterSolution,
  prices: MasterPrices,
  breath: Breath,
): Promise<Plan | null> {
  if (master.families.some((f) => f.stack !== null)) return null;
  const left = Int32Array.from(master.demand);
  const strips: { column: StripColumn; times: number }[] = [];
  const take = (column: StripColumn, wanted: number) => {
    let times = wanted;
    for (const [b, n] of column.counts) times = Math.min(times, Math.floor(left[b]! / n));
    if (times < 1 || !column.row) return;
    for (const [b, n] of column.counts) left[b]! -= n * times;
    strips.push({ column, times });
  };
  solution.strips.forEach((x, i) => {
    if (x >= 1) take(master.strips[i]!, Math.floor(x + 1e-6));
  });
  // Even a blank of no price must be cut, so each is worth a little of its area.
  const values = prices.blank.map((v, b) => Math.max(v, 0.2 * areaOf(master, b)));
  while (left.some((n) => n > 0)) {
    const column = bestStrip(master, values, left);
    if (!column) return null;
    const times = Math.min(...[...column.counts].map(([b, n]) => Math.floor(left[b]! / n)));
    take(column, Math.max(1, times));
    if (!(await breath())) return null;
  }
  return makePlan(master.job, master.families, master.demand, { strips, pieces: [] });
}

/** Of the heights that blanks still to be cut ask for, tallest first, the one whose row is worth most for its height. */
function bestStrip(master: StripMaster, values: Float64Array, left: Int32Array): StripColumn | null {
  let best: { family: number; height: number; row: PricedRow } | null = null;
  let most = 0;
  for (const [f, family] of master.families.entries()) {
    const wanted = family.variants.filter((v) => left[v.blank]! > 0);
    const heights = [...new Set(wanted.map((v) => stripHeight(v.height, family.ruler)))].sort((a, b) => b - a);
    const tallestNeeded = Math.max(0, ...needs(wanted, family.ruler));
    for (const height of heights.filter((h) => h >= tallestNeeded - 1e-9).slice(-TRIED)) {
      const graph = graphAt(family, family.heights.find((h) => Math.abs(h - height) < 1e-9) ?? height);
      const row = goodRow(graph, values, left);
      const rate = row ? row.value / (height * (family.cloth.cost ?? 1)) : 0;
      if (row && rate > most) {
        most = rate;
        best = { family: f, height, row };
      }
    }
  }
  if (!best) return null;
  const counts = count(best.row.steps.map((s) => s.variant.blank));
  return { family: best.family, height: best.height, counts, row: layRow(best.row.steps, best.height) };
}

const TRIED = 3;

/** The lowest strip that each blank can do with. */
function needs(variants: readonly { blank: number; height: number }[], ruler: number | null): readonly number[] {
  const least = new Map<number, number>();
  for (const v of variants) least.set(v.blank, Math.min(least.get(v.blank) ?? Infinity, stripHeight(v.height, ruler)));
  return [...least.values()];
}

function areaOf(master: StripMaster, blank: number): number {
  for (const f of master.families) {
    const v = f.variants.find((x) => x.blank === blank);
    if (v) return (v.area * (f.cloth.cost ?? 1)) / f.cloth.width;
  }
  return 0;
}
