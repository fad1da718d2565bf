/**
 * The best row count by count: rows begun that hold the same blanks are kept together, whatever their order, and of each slope of the last
 * cut only the shortest is gone on from. Where a row holds nearly all there is of some blanks, orders of the same blanks are what
 * swamps a search by single rows (best-row.ts); here they meet.
 */
import { boundByRatio } from './ratio.ts';
import { makeRestTable, restOf } from './rest-table.ts';
import { usableArcs } from './row-arcs.ts';
import { dropBehind, radices } from './row-counts.ts';
import { type RowStep, stepOf, tail } from './row-graph.ts';
import { type BestRow, LOOSE, type RowSearch, scarceBlanks } from './row-search.ts';
import { leadsByTurning } from './turning.ts';

/** Rows begun of the same counts. */
interface Group {
  readonly counts: Uint16Array;
  readonly value: number;
  /** Rent of the scarce blanks not used yet. */
  readonly back: number;
  /** By slope of the last cut, the least place; Infinity where no row ends so. */
  readonly places: Float64Array;
  /** By slope, the step that led there: an index of the trail. */
  readonly steps: Int32Array;
}

/** @param search its `labelsByCounts` are slopes of groups to go on from */
export function bestByCounts(search: RowSearch): BestRow {
  const { graph, values, most, threshold } = search;
  const m = graph.slopes.length;
  const none: BestRow = { steps: [], value: 0, bound: Infinity };
  const radix = radices(graph, most);
  if (!radix) return none;
  const scarce = scarceBlanks(graph, values, most);
  const rent = new Float64Array(values.length);
  for (const k of scarce) rent[k] = Math.min(search.rent[k]!, values[k]!);
  const worth = values.map((v, k) => (v > 0 ? Math.max(LOOSE * v, v - rent[k]!) : 0));
  const ratio = boundByRatio(graph, worth);
  const fits = graph.span * (1 + 1e-9) + 1e-9;
  const back = scarce.reduce((sum, k) => sum + rent[k]! * most[k]!, 0);
  const lead = ratio.rate * fits + ratio.bonus[graph.square]! + back - threshold;
  if (lead <= 0) return { ...none, bound: threshold };
  const arcs = usableArcs(graph, worth, ratio, lead, false);
  const table = makeRestTable(graph, arcs, 'fine');
  const ahead = leadsByTurning(graph);
  const tails = Float64Array.from({ length: m }, (_, s) => tail(graph, s));
  const rest = (at: number, s: number) => restOf(table, ratio, Math.max(0, fits - at), s, m);
  const trail = { before: [] as number[], blank: [] as number[], from: [] as number[], to: [] as number[] };
  let best = threshold;
  let bestStep = -1;
  let looked = 0;
  const steps = (): readonly RowStep[] => {
    const reversed: RowStep[] = [];
    for (let i = bestStep; i >= 0; i = trail.before[i]!)
      reversed.push(stepOf(graph, trail.blank[i]!, trail.from[i]!, trail.to[i]!));
    return reversed.reverse();
  };
  const mostOf = ({ places, value, back: rents }: Group): number =>
    places.reduce((top, at, s) => (at < Infinity ? Math.max(top, value + rest(at, s) + rents) : top), 0);
  const first: Group = {
    counts: new Uint16Array(values.length),
    value: 0,
    back,
    places: new Float64Array(m).fill(Infinity),
    steps: new Int32Array(m).fill(-1),
  };
  first.places[graph.square] = 0;
  // Rows of as many blanks are gone on from together: every way to the same counts has been seen by then.
  for (let layer = new Map([[0, first]]); layer.size > 0; ) {
    const next = new Map<number, Group>();
    for (const [code, group] of layer) {
      const { counts, places } = group;
      dropBehind(places, ahead, m);
      for (let s = 0; s < m; s++) {
        const at = places[s]!;
        if (at === Infinity || group.value + rest(at, s) + group.back <= best * (1 + LOOSE)) continue;
        looked++;
        const { blank, to, length } = arcs[s]!;
        for (let i = 0; i < to.length; i++) {
          const k = blank[i]!;
          const t = to[i]!;
          const place = at + length[i]!;
          if (counts[k]! >= most[k]! || place + tails[t]! > fits) continue;
          const key = code + radix[k]!;
          let there = next.get(key);
          if (there && place >= there.places[t]!) continue;
          const value = group.value + values[k]!;
          const rents = group.back - rent[k]!;
          if (value + rest(place, t) + rents <= best) continue;
          if (!there) {
            const more = counts.slice();
            more[k]!++;
            const nowhere = new Float64Array(m).fill(Infinity);
            there = { counts: more, value, back: rents, places: nowhere, steps: new Int32Array(m).fill(-1) };
            next.set(key, there);
          }
          there.places[t] = place;
          there.steps[t] = trail.before.push(group.steps[s]!) - 1;
          trail.blank.push(k);
          trail.from.push(s);
          trail.to.push(t);
          if (value > best) {
            best = value;
            bestStep = there.steps[t]!;
          }
        }
      }
      if (looked > search.labelsByCounts) {
        let open = best;
        for (const each of [layer, next]) for (const one of each.values()) open = Math.max(open, mostOf(one));
        return { steps: steps(), value: bestStep < 0 ? 0 : best, bound: open };
      }
    }
    layer = next;
  }
  return { steps: steps(), value: bestStep < 0 ? 0 : best, bound: best * (1 + LOOSE) };
}
