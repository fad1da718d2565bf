/**
 * The integer programme over listed strips, within a purchase: steps of bolts, strips, and pieces either parted in one of the
 * listed ways or, where those are too many and the pieces few, each with its own strips. If the lists are complete, so is its word.
 */

import type { Solver } from '../programme/glpk.ts';
import type { ProgrammeColumn, ProgrammeResult } from '../programme/programme.ts';
import type { StripColumn } from './column.ts';
import type { Listed } from './list-purchased.ts';
import type { Chosen } from './plan.ts';
import { type PurchaseBox, type Supply, usableOf } from './purchases.ts';
import { type Split, type SplitBox, wholeSplitBox } from './shares.ts';
import { type HeightCut, isBolt, type StripMaster } from './strip-master.ts';

const SAME = 1e-9;
/** More pieces of a kind than this are not told apart. */
const MOST_APART = 4;
const MOST_COLUMNS = 9000;

export interface Choice {
  /** `infeasible`: no plan within the purchase holds only what is listed. `none`: nothing is known. */
  readonly status: ProgrammeResult['status'];
  readonly chosen: Chosen | null;
  readonly split: Split;
}

/** @param target plans that cost more are not wanted */
export function chooseWhole(
  solver: Solver,
  master: StripMaster,
  supplies: readonly Supply[],
  box: PurchaseBox,
  cuts: readonly HeightCut[],
  listed: Listed,
  target: number,
  seconds: number,
  splits?: SplitBox,
): Choice {
  const { families, job } = master;
  const columns: ProgrammeColumn[] = [];
  const rows: { lower: number; upper: number; entries: [number, number][] }[] = [];
  const variable = (cost: number, lower = 0, upper = Infinity) =>
    columns.push({ cost, lower, upper, integer: true }) - 1;
  const row = (lower: number, upper: number) => rows.push({ lower, upper, entries: [] }) - 1;
  const put = (r: number, c: number, value: number) => rows[r]!.entries.push([c, value]);

  const demandRows = Array.from(master.certain, (d) => row(d, Infinity));
  const within = splits ?? wholeSplitBox(master.shares);
  const splitVars = master.shares.map((share, s) => {
    const whole = row(share.total, share.total);
    return share.ways.map((way, w) => {
      const z = variable(0, within.least[s]![w]!, within.most[s]![w]!);
      put(whole, z, 1);
      for (const [blank, n] of way) put(demandRows[blank]!, z, -n);
      return z;
    });
  });
  const cutRows = cuts.map((cut) => row(cut.least > 0 ? cut.least : -Infinity, cut.most));
  const costRow = row(-Infinity, target + 1e-6);
  const holds = (x: number, strip: StripColumn) => {
    for (const [blank, n] of strip.counts) put(demandRows[blank]!, x, n);
    cuts.forEach((cut, i) => {
      if (strip.height >= cut.height - SAME) put(cutRows[i]!, x, 1);
    });
  };
  const byFamily = families.map((_, f) => listed.strips.filter((s) => s.family === f && s.row));
  const taken: { x: number; strip: StripColumn; piece: number }[] = [];
  const parted: { y: number; family: number; slots: ReadonlyMap<number, number> }[] = [];
  let apart = 0;

  for (const supply of supplies) {
    const cloth = job.cloths[supply.cloth]!;
    const mine = [...families.keys()].filter((f) => families[f]!.clothIndex === supply.cloth);
    const least = box.least[supply.cloth]!;
    const most = Math.min(box.most[supply.cloth]!, supply.stock);
    if (isBolt(cloth)) {
      const length = row(-Infinity, 0);
      for (const f of mine)
        for (const strip of byFamily[f]!) {
          const x = variable(0);
          holds(x, strip);
          put(length, x, strip.height);
          taken.push({ x, strip, piece: -1 });
        }
      const units = variable(supply.unit, least, most);
      put(length, units, -supply.size);
      if (supply.unit > 0) put(costRow, units, supply.unit);
      if (supply.lost === 0 && supply.first === 0) continue;
      // Squaring is lost, or paid for, as soon as any of the bolt is bought.
      const any = variable(supply.first, least > 0 ? 1 : 0, 1);
      if (supply.lost > 0) put(length, any, supply.lost);
      if (supply.first > 0) put(costRow, any, supply.first);
      if (least > 0) continue;
      const link = row(-Infinity, 0);
      put(link, units, 1);
      put(link, any, -Math.min(most, unitsInAll(master, supply)));
      continue;
    }
    if (most <= 0) continue;
    const ways = mine.every((f) => listed.pieces[f] !== null);
    if (!ways && most > MOST_APART) return { status: 'none', chosen: null, split: [] };
    if (ways) {
      const stock = row(-Infinity, most);
      for (const f of mine) {
        const heights = [...new Set(byFamily[f]!.map((s) => s.height))].sort((a, b) => a - b);
        const slotRows = heights.map((height) => ({ height, row: row(0, Infinity) }));
        for (const strip of byFamily[f]!) {
          const x = variable(0);
          holds(x, strip);
          for (const slot of slotRows) if (slot.height <= strip.height + SAME) put(slot.row, x, -1);
          taken.push({ x, strip, piece: -1 });
        }
        for (const { slots } of listed.pieces[f]!) {
          const y = variable(supply.unit);
          put(stock, y, 1);
          if (supply.unit > 0) put(costRow, y, supply.unit);
          for (const slot of slotRows) {
            let n = 0;
            for (const [height, count] of slots) if (height >= slot.height - SAME) n += count;
            if (n > 0) put(slot.row, y, n);
          }
          parted.push({ y, family: f, slots });
        }
      }
      continue;
    }
    for (let k = 0; k < most; k++) {
      const once = row(-Infinity, 1);
      for (const f of mine) {
        const way = variable(supply.unit, 0, 1);
        put(once, way, 1);
        if (supply.unit > 0) put(costRow, way, supply.unit);
        const room = row(-Infinity, 0);
        put(room, way, -families[f]!.stack! * (1 + SAME));
        for (const strip of byFamily[f]!) {
          const x = variable(0);
          holds(x, strip);
          put(room, x, strip.height);
          taken.push({ x, strip, piece: apart });
        }
        apart++;
      }
    }
  }
  if (columns.length > MOST_COLUMNS) return { status: 'none', chosen: null, split: [] };
  const used = rows.filter((r) => r.entries.length > 0 || r.lower > 0);
  const result = solver.integer({ columns, rows: used }, seconds);
  if (result.status !== 'optimal' && result.status !== 'feasible')
    return { status: result.status, chosen: null, split: [] };
  const times = (c: number) => Math.round(result.x[c]!);
  const strips = taken.flatMap(({ x, strip }) => (times(x) > 0 ? [{ column: strip, times: times(x) }] : []));
  const pieces = parted.flatMap(({ y, family, slots }) => (times(y) > 0 ? [{ family, slots, times: times(y) }] : []));
  for (let k = 0; k < apart; k++) {
    const own = taken.filter((t) => t.piece === k && times(t.x) > 0);
    if (own.length === 0) continue;
    const slots = new Map<number, number>();
    for (const { strip, x } of own) slots.set(strip.height, (slots.get(strip.height) ?? 0) + times(x));
    pieces.push({ family: own[0]!.strip.family, slots, times: 1 });
  }
  return { status: result.status, chosen: { strips, pieces }, split: splitVars.map((vars) => vars.map(times)) };
}

/** More units than any plan needs: every blank in a strip of its own, and what squaring takes. */
function unitsInAll(master: StripMaster, supply: Supply): number {
  const tallest = master.families
    .filter((f) => f.clothIndex === supply.cloth)
    .reduce((most, f) => Math.max(most, (f.heights.at(-1) ?? 0) + (f.ruler ?? 0)), 0);
  const length = master.demand.reduce((sum, d) => sum + d, 0) * tallest + supply.lost;
  let units = supply.size > 0 ? Math.ceil(length / supply.size) + 1 : 1;
  while (usableOf(supply, units) < length - supply.lost && units < 1e6) units++;
  return units;
}
