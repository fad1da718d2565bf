/**
 * The same list as for boxes (list-rows.ts) where cuts may slant: every number of each blank that some row holds and that is worth
 * enough, whatever the order. Labels are a cut's slope and the counts before it, kept at their least place.
 */
import type { PricedRow } from './price-row.ts';
import { boundByRatio, type RatioBound } from './ratio.ts';
import { usableArcs } from './row-arcs.ts';
import { dropBehind, radices } from './row-counts.ts';
import { type RowGraph, type RowStep, stepOf, tail } from './row-graph.ts';
import { leadsByTurning } from './turning.ts';

export interface ListedRows {
  readonly rows: readonly PricedRow[];
  /** Labels looked at. */
  readonly looked: number;
}

/** Rows begun: those of the same counts together. */
interface Group {
  readonly counts: Uint16Array;
  readonly value: number;
  /** By slope of the last cut, the least place; Infinity where no row ends so. */
  readonly places: Float64Array;
  /** By slope, the step that led there: an index of the trail. */
  readonly steps: Int32Array;
}

/** Steps taken, each with the one before it: -1 at the start. */
interface Trail {
  readonly before: number[];
  readonly blank: number[];
  readonly from: number[];
  readonly to: number[];
}

/**
 * @param values by blank of the job @param least value that a listed row must have
 * @param patience labels to look at before giving up; null is answered then, and where more rows than `mostRows` are found
 */
export function listSlantedRows(
  graph: RowGraph,
  values: Float64Array,
  demand: Int32Array,
  least: number,
  patience: number,
  mostRows: number,
): ListedRows | null {
  const m = graph.slopes.length;
  const kinds = graph.blanks.length;
  const own = Float64Array.from(graph.blanks, (b) => (demand[b]! > 0 ? Math.max(0, values[b]!) : 0));
  const most = Uint16Array.from(graph.blanks, (b) => demand[b]!);
  if (own.every((v) => v <= 0)) return least > 0 ? { rows: [], looked: 0 } : null;
  const { rate, bonus } = boundByRatio(graph, own);
  const fits = graph.span * (1 + 1e-9) + 1e-9;
  if (rate * fits + bonus[graph.square]! < least) return { rows: [], looked: 0 };
  const rest = restByPlace(graph, own, { rate, bonus }, least);
  const tails = Float64Array.from({ length: m }, (_, s) => tail(graph, s));
  const ahead = leadsByTurning(graph);
  // Counts of one row are told by one number.
  const radix = radices(graph, most);
  if (!radix) return null;
  const trail: Trail = { before: [], blank: [], from: [], to: [] };
  const start: Group = {
    counts: new Uint16Array(kinds),
    value: 0,
    places: new Float64Array(m).fill(Infinity),
    steps: new Int32Array(m).fill(-1),
  };
  start.places[graph.square] = 0;
  const rows: { counts: Uint16Array; value: number; step: number }[] = [];
  let looked = 0;
  // Rows of as many blanks are looked at together: every way to the same counts has been seen by then.
  for (let layer = new Map([[0, start]]); layer.size > 0; ) {
    const next = new Map<number, Group>();
    for (const [code, group] of layer) {
      const { counts, places, steps } = group;
      dropBehind(places, ahead, m);
      let end = -1;
      for (let s = 0; s < m; s++) {
        if (places[s] === Infinity) continue;
        looked++;
        end = s;
      }
      if (looked > patience) return null;
      if (end >= 0 && steps[end]! >= 0 && group.value >= least) {
        rows.push({ counts, value: group.value, step: steps[end]! });
        if (rows.length > MOST_KEPT * mostRows) return null;
      }
      for (let k = 0; k < kinds; k++) {
        if (counts[k]! >= most[k]!) continue;
        const value = group.value + own[k]!;
        const key = code + radix[k]!;
        let there = next.get(key);
        for (let s = 0; s < m; s++) {
          const from = places[s]!;
          if (from === Infinity) continue;
          const row = (k * m + s) * m;
          for (let t = 0; t < m; t++) {
            const at = from + graph.length[row + t]!;
            if (there && at >= there.places[t]!) continue;
            if (at + tails[t]! > fits || value + rate * (fits - at) + bonus[t]! < least) continue;
            if (rest && value + rest.most[Math.ceil((fits - at) / rest.cell) * m + t]! < least) continue;
            if (!there) {
              const more = counts.slice();
              more[k]!++;
              there = {
                counts: more,
                value,
                places: new Float64Array(m).fill(Infinity),
                steps: new Int32Array(m).fill(-1),
              };
              next.set(key, there);
            }
            there.places[t] = at;
            there.steps[t] = trail.before.push(steps[s]!) - 1;
            trail.blank.push(k);
            trail.from.push(s);
            trail.to.push(t);
          }
        }
      }
    }
    layer = next;
  }
  const listed = maximal(rows);
  if (listed.length > mostRows) return null;
  return { rows: listed.map(({ step, value }) => ({ steps: stepsTo(graph, trail, step), value })), looked };
}

/** Of the rows wanted: rows that others are more of are left out only at the end. */
const MOST_KEPT = 20;

/** Cells to a strip in the table of what the rest of a row can be worth. */
const CELLS = 1000;

/**
 * By what is left of the strip, in cells rounded up, and the slope of the last cut: the most that the rest of a row can be worth,
 * lengths rounded down. Null where a step is shorter than a cell, so that rounding down would make it nothing.
 */
function restByPlace(graph: RowGraph, values: Float64Array, ratio: RatioBound, least: number) {
  const m = graph.slopes.length;
  const cell = graph.span / CELLS;
  const lead = ratio.rate * graph.span * (1 + 1e-9) + ratio.bonus[graph.square]! - least;
  const arcs = usableArcs(graph, values, ratio, Math.max(0, lead) + 1e-9, false);
  const cells = arcs.map(({ length }) => length.map((l) => Math.floor(l / cell + 1e-9)));
  if (cells.some((each) => each.some((c) => c < 1))) return null;
  const end = CELLS + 2;
  const most = new Float64Array((end + 1) * m).fill(-Infinity);
  for (let c = 0; c <= end; c++) {
    for (let s = 0; s < m; s++) {
      let best = tail(graph, s) <= c * cell + 1e-9 ? 0 : -Infinity;
      const { to, value } = arcs[s]!;
      const far = cells[s]!;
      for (let i = 0; i < to.length; i++) {
        if (far[i]! > c) continue;
        const sum = value[i]! + most[(c - far[i]!) * m + to[i]!]!;
        if (sum > best) best = sum;
      }
      most[c * m + s] = best;
    }
  }
  return { cell, most };
}

/** Those of which no other is more of everything. */
function maximal<T extends { readonly counts: Uint16Array }>(rows: readonly T[]): readonly T[] {
  const total = (r: T) => r.counts.reduce((a, b) => a + b, 0);
  const sorted = [...rows].sort((a, b) => total(b) - total(a));
  const kept: T[] = [];
  for (const row of sorted) {
    if (!kept.some((k) => k.counts.every((n, i) => n >= row.counts[i]!))) kept.push(row);
  }
  return kept;
}

function stepsTo(graph: RowGraph, trail: Trail, last: number): readonly RowStep[] {
  const steps: RowStep[] = [];
  for (let i = last; i >= 0; i = trail.before[i]!)
    steps.push(stepOf(graph, trail.blank[i]!, trail.from[i]!, trail.to[i]!));
  return steps.reverse();
}
