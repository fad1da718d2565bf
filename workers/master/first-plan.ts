/** The plan that is there at once, before anything is priced. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { boxRows } from '../strips/box-rows.ts';
import type { Family } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import type { StripColumn } from './column.ts';
import { count } from './generate.ts';
import { makePlan, type Plan } from './plan.ts';
import { isBolt } from './strip-master.ts';

export interface FirstPlan {
  readonly plan: Plan;
  readonly columns: readonly StripColumn[];
}

/** Boxed strips off the bolts where bolts can serve, else off the pieces, first fit. */
export function firstPlan(job: LayoutJob, families: readonly Family[], demand: Int32Array): FirstPlan {
  const bolts = [...families.keys()]
    .filter((f) => families[f]!.stack === null)
    .sort((a, b) => cheapness(families[a]!) - cheapness(families[b]!));
  const others = [...families.keys()].filter((f) => families[f]!.stack !== null && families[f]!.segment === null);
  const rows = boxRows(families, [...bolts, ...others], demand);
  const columns: StripColumn[] = rows.map((r) => ({
    family: r.family,
    height: r.height,
    counts: count(r.variants.map((v) => v.blank)),
    row: layRow(
      r.variants.map((variant) => ({ variant, rise: 0, slope: 0 })),
      r.height,
    ),
  }));
  const left = job.cloths.map((c) => (isBolt(c) ? 0 : c.count === undefined ? 1 : (c.count ?? Infinity)));
  const open: { family: number; room: number; slots: Map<number, number> }[] = [];
  const chosen: StripColumn[] = [];
  for (const column of [...columns].sort((a, b) => b.height - a.height)) {
    const family = families[column.family]!;
    if (family.stack === null) {
      chosen.push(column);
      continue;
    }
    let piece = open.find((p) => p.family === column.family && p.room >= column.height - 1e-9);
    if (!piece && left[family.clothIndex]! > 0) {
      left[family.clothIndex]!--;
      piece = { family: column.family, room: family.stack, slots: new Map() };
      open.push(piece);
    }
    if (!piece) continue;
    piece.room -= column.height;
    piece.slots.set(column.height, (piece.slots.get(column.height) ?? 0) + 1);
    chosen.push(column);
  }
  const plan = makePlan(job, families, demand, {
    strips: chosen.map((column) => ({ column, times: 1 })),
    pieces: open.map((p) => ({ family: p.family, slots: p.slots, times: 1 })),
  });
  return { plan: plan!, columns };
}

function cheapness(family: Family): number {
  return ((family.cloth.cost ?? 1) / family.cloth.width) * 1e6 + family.clothIndex;
}
