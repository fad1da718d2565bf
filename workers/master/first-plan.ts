/** The plan that is there at once, before anything is priced. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { boxRows } from '../strips/box-rows.ts';
import type { Family } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { alongFamily, boxedLengths } from './along-plan.ts';
import type { StripColumn } from './column.ts';
import { count } from './generate.ts';
import { makePlan, type Plan } from './plan.ts';
import { isBolt } from './strip-master.ts';

export interface FirstPlan {
  readonly plan: Plan;
  readonly columns: readonly StripColumn[];
}

/**
 * Boxed strips off the bolts where bolts can serve, else off the pieces, first fit.
 * @param alongFirst whether bolts that may be cut along are, before others are thought of
 */
export function firstPlan(
  job: LayoutJob,
  families: readonly Family[],
  demand: Int32Array,
  alongFirst = false,
): FirstPlan {
  const bolts = [...families.keys()]
    .filter((f) => families[f]!.stack === null)
    .sort((a, b) => cheapness(families[a]!) - cheapness(families[b]!));
  const others = [...families.keys()].filter((f) => families[f]!.stack !== null && families[f]!.segment === null);
  const rest = Int32Array.from(demand);
  const onBolts = rest.map((d, b) => (bolts.some((f) => families[f]!.variants.some((v) => v.blank === b)) ? d : 0));
  const lengths = cutAlong(job, families, alongFirst ? rest : rest.map((d, b) => d - onBolts[b]!));
  for (const { column } of lengths.flatMap((l) => l.strips)) for (const [b, n] of column.counts) rest[b]! -= n;
  const rows = boxRows(families, [...bolts, ...others], rest);
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
  const strips = [...chosen.map((column) => ({ column, times: 1 })), ...lengths.flatMap((l) => l.strips)];
  const plan = makePlan(job, families, demand, {
    strips,
    pieces: [...open, ...lengths].map((p) => ({ family: p.family, slots: p.slots, times: 1 })),
  });
  return { plan: plan!, columns: [...columns, ...lengths.flatMap((l) => l.strips.map((s) => s.column))] };
}

interface CutLength {
  readonly family: number;
  readonly slots: ReadonlyMap<number, number>;
  readonly strips: readonly { readonly column: StripColumn; readonly times: 1 }[];
}

/** Lengths of bolts cut along, cheapest bolt first. */
function cutAlong(job: LayoutJob, families: readonly Family[], demand: Int32Array): readonly CutLength[] {
  const cloths = [...new Set(families.flatMap((f) => (f.segment === null ? [] : [f.clothIndex])))];
  const left = Int32Array.from(demand);
  const rate = (cloth: number) => (job.cloths[cloth]!.cost ?? 1) / job.cloths[cloth]!.width;
  return cloths
    .sort((a, b) => rate(a) - rate(b) || a - b)
    .flatMap((cloth) =>
      boxedLengths(alongFamily(job, cloth), job.cloths[cloth]!.width, left).flatMap(({ length, rows }) => {
        const family = families.findIndex((f) => f.clothIndex === cloth && f.segment === length);
        if (family < 0) return [];
        const slots = new Map<number, number>();
        const strips = rows.map(({ height, variants }) => {
          const counts = count(variants.map((v) => v.blank));
          for (const [b, n] of counts) left[b]! -= n;
          slots.set(height, (slots.get(height) ?? 0) + 1);
          const row = layRow(
            variants.map((variant) => ({ variant, rise: 0, slope: 0 })),
            height,
          );
          return { column: { family, height, counts, row }, times: 1 as const };
        });
        return [{ family, slots, strips }];
      }),
    );
}

function cheapness(family: Family): number {
  return ((family.cloth.cost ?? 1) / family.cloth.width) * 1e6 + family.clothIndex;
}
