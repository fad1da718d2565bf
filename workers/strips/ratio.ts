/**
 * The best value per length of strip that an endless row could reach, and what each state adds to or takes from it at
 * the row's ends: together they bound what any row, however it goes on, can still be worth.
 * Policy iteration for the greatest cycle ratio (Howard 1960; Cochet-Terrasson et al. 1998).
 */
import type { RowGraph } from './row-graph.ts';

export interface RatioBound {
  /** Value per unit of length. */
  readonly rate: number;
  /** bonus[u]: a row that stands at state u with length `rest` left beyond u's place gains at most rate × rest + bonus[u]. */
  readonly bonus: Float64Array;
  /** The states of the best endless row. */
  readonly cycle: readonly number[];
}

/**
 * @param values of the states, all positive @param active indices of the states that may be used, at least one
 * @param share @param own lengths are share × advance + own[v]
 */
export function boundByRatio(graph: RowGraph, values: Float64Array, active: Int32Array, share: number, own: Float64Array): RatioBound {
  // A dense copy of the active part keeps the inner loops short.
  const m = active.length;
  const n = graph.states.length;
  const d = new Float64Array(m * m);
  const value = Float64Array.from(active, (u) => values[u]!);
  const tail = Float64Array.from(active, (u) => share * graph.tail[u]!);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) d[i * m + j] = share * graph.advances[active[i]! * n + active[j]!]! + own[active[j]!]!;
  }
  const found = greatestRatio(d, m, value);
  let rate = found.rate * (1 + 1e-9);
  // What is returned is checked here: settled bonuses are a certificate that no row gains more than they say.
  for (;;) {
    const settled = settle(d, m, value, tail, rate);
    if (settled) {
      const bonus = new Float64Array(n);
      active.forEach((u, i) => {
        bonus[u] = settled[i]!;
      });
      return { rate, bonus, cycle: found.cycle.map((i) => active[i]!) };
    }
    rate *= 1.001;
  }
}

function settle(d: Float64Array, m: number, value: Float64Array, tail: Float64Array, rate: number): Float64Array | undefined {
  const bonus = tail.map((t) => -rate * t);
  for (let round = 0; round <= m + 1; round++) {
    let changed = false;
    for (let u = 0; u < m; u++) {
      const before = bonus[u]!;
      let best = before;
      for (let v = 0; v < m; v++) {
        const through = value[v]! - rate * d[u * m + v]! + bonus[v]!;
        if (through > best) best = through;
      }
      if (best > before + 1e-10) {
        changed = true;
        bonus[u] = best;
      }
    }
    if (!changed) return bonus;
  }
  return undefined;
}

function greatestRatio(d: Float64Array, m: number, value: Float64Array): { rate: number; cycle: readonly number[] } {
  const next = new Int32Array(m);
  const potential = new Float64Array(m);
  for (let u = 0; u < m; u++) {
    let bestRate = -Infinity;
    for (let v = 0; v < m; v++) {
      const r = value[v]! / d[u * m + v]!;
      if (r > bestRate) {
        bestRate = r;
        next[u] = v;
      }
    }
  }
  let best: { rate: number; cycle: readonly number[] } = { rate: 0, cycle: [0] };
  for (let round = 0; round < 100; round++) {
    const found = bestCycle(d, m, value, next);
    if (found.rate > best.rate) best = found;
    const start = found.cycle[0]!;
    const { rate } = best;
    // States that lead to a lesser cycle are led to the best one, then every state's potential is read off its path.
    const far = distances(next, start, m);
    for (let u = 0; u < m; u++) {
      if (far[u] === -1) {
        next[u] = start;
        far[u] = 1;
      }
    }
    const order = [...far.keys()].sort((a, b) => far[a]! - far[b]!);
    potential[start] = 0;
    for (const u of order) {
      if (u === start) continue;
      const v = next[u]!;
      potential[u] = value[v]! - rate * d[u * m + v]! + potential[v]!;
    }
    let improved = false;
    for (let u = 0; u < m; u++) {
      let top = potential[u]! + 1e-9;
      for (let v = 0; v < m; v++) {
        const through = value[v]! - rate * d[u * m + v]! + potential[v]!;
        if (through > top) {
          top = through;
          next[u] = v;
          improved = true;
        }
      }
    }
    if (!improved) break;
  }
  return best;
}

function bestCycle(d: Float64Array, m: number, value: Float64Array, next: Int32Array): { rate: number; cycle: readonly number[] } {
  const seen = new Int32Array(m);
  let rate = -Infinity;
  let cycle: number[] = [0];
  for (let from = 0, mark = 1; from < m; from++, mark++) {
    let u = from;
    while (seen[u] === 0) {
      seen[u] = mark;
      u = next[u]!;
    }
    if (seen[u] !== mark) continue;
    let worth = 0;
    let length = 0;
    const states: number[] = [];
    let w = u;
    do {
      const v = next[w]!;
      worth += value[v]!;
      length += d[w * m + v]!;
      states.push(w);
      w = v;
    } while (w !== u);
    if (worth / length > rate) {
      rate = worth / length;
      cycle = states;
    }
  }
  return { rate, cycle };
}

/** Steps from each state to the goal along `next`; −1 where it is never reached. */
function distances(next: Int32Array, goal: number, m: number): Int32Array {
  const UNSEEN = -2, PENDING = -3;
  const far = new Int32Array(m).fill(UNSEEN);
  far[goal] = 0;
  for (let from = 0; from < m; from++) {
    const path: number[] = [];
    let u = from;
    while (far[u] === UNSEEN) {
      far[u] = PENDING;
      path.push(u);
      u = next[u]!;
    }
    let steps = far[u]! < 0 ? -1 : far[u]!;
    for (let i = path.length - 1; i >= 0; i--) {
      if (steps >= 0) steps++;
      far[path[i]!] = steps;
    }
  }
  return far;
}
