/**
 * The same list as for boxes (list-rows.ts) where cuts may slant: every number of each blank that some row holds and that is worth
 * enough, whatever the order. Labels are a cut's slope and the counts before it, kept at their least place.
 */
import type { PricedRow } from './price-row.ts';
import { boundByRatio } from './ratio.ts';
import { type RowGraph, type RowStep, stepOf, tail } from './row-graph.ts';

export interface ListedRows {
  readonly rows: readonly PricedRow[];
  /** Labels looked at. */
  readonly looked: number;
}

interface Label {
  readonly at: number;
  readonly value: number;
  readonly slope: number;
  readonly counts: Uint16Array;
  readonly blank: number;
  readonly parent: Label | null;
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
  const tails = Float64Array.from({ length: m }, (_, s) => tail(graph, s));
  // The least place known for a slope and counts: what comes later is no use.
  const leastAt = new Map<string, number>();
  const rows = new Map<string, Label>();
  const heap: Label[] = [];
  heapIn(heap, { at: 0, value: 0, slope: graph.square, counts: new Uint16Array(kinds), blank: -1, parent: null });
  let looked = 0;
  for (let label = heapOut(heap); label; label = heapOut(heap)) {
    const counts = keyOf(label.counts);
    if (label.at > (leastAt.get(counts + String.fromCharCode(label.slope)) ?? Infinity)) continue;
    if (++looked > patience) return null;
    if (label.value >= least && !rows.has(counts)) {
      rows.set(counts, label);
      if (rows.size > mostRows) return null;
    }
    const s = label.slope;
    for (let k = 0; k < kinds; k++) {
      if (label.counts[k]! >= most[k]!) continue;
      const value = label.value + own[k]!;
      const row = (k * m + s) * m;
      let more: Uint16Array | null = null;
      let key = '';
      for (let t = 0; t < m; t++) {
        const at = label.at + graph.length[row + t]!;
        if (at + tails[t]! > fits || value + rate * (fits - at) + bonus[t]! < least) continue;
        if (!more) {
          more = label.counts.slice();
          more[k]!++;
          key = keyOf(more);
        }
        const full = key + String.fromCharCode(t);
        if (at >= (leastAt.get(full) ?? Infinity)) continue;
        leastAt.set(full, at);
        heapIn(heap, { at, value, slope: t, counts: more, blank: k, parent: label });
      }
    }
  }
  const found = maximal([...rows.values()]).map((label) => ({ steps: stepsTo(graph, label), value: label.value }));
  return { rows: found, looked };
}

function keyOf(counts: Uint16Array): string {
  return String.fromCharCode(...counts);
}

/** Those of which no other is more of everything. */
function maximal(labels: readonly Label[]): readonly Label[] {
  const total = (l: Label) => l.counts.reduce((a, b) => a + b, 0);
  const sorted = [...labels].sort((a, b) => total(b) - total(a));
  const kept: Label[] = [];
  for (const label of sorted) {
    if (!kept.some((k) => k.counts.every((n, i) => n >= label.counts[i]!))) kept.push(label);
  }
  return kept;
}

function stepsTo(graph: RowGraph, label: Label): readonly RowStep[] {
  const steps: RowStep[] = [];
  for (let l = label; l.parent; l = l.parent) steps.push(stepOf(graph, l.blank, l.parent.slope, l.slope));
  return steps.reverse();
}

function heapIn(heap: Label[], label: Label): void {
  let i = heap.push(label) - 1;
  while (i > 0) {
    const up = (i - 1) >> 1;
    if (heap[up]!.at <= label.at) break;
    heap[i] = heap[up]!;
    i = up;
  }
  heap[i] = label;
}

function heapOut(heap: Label[]): Label | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (!last || heap.length === 0) return top;
  let i = 0;
  for (;;) {
    let child = 2 * i + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && heap[child + 1]!.at < heap[child]!.at) child++;
    if (heap[child]!.at >= last.at) break;
    heap[i] = heap[child]!;
    i = child;
  }
  heap[i] = last;
  return top;
}
