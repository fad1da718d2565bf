/**
 * Plans from the linear programme: whole parts of its solution are fixed, some of them at random, what is left is priced
 * again, and the last few strips are chosen by the integer programme.
 */
import type { Solver } from '../programme/glpk.ts';
import { type Breath, generate } from './generate.ts';
import { type Chosen, makePlan, type Plan } from './plan.ts';
import { type Caps, StripMaster } from './strip-master.ts';

/** The integer programme takes over when so few blanks are left: sometimes sooner, sometimes later. */
const LAST_LEAST = 5;
const LAST_MOST = 50;
/** Rounds of pricing after each fixing: most columns serve again, so a few new ones do. */
const ROUNDS = 5;

/**
 * One dive from the columns of `root`, which is left as it is but for new columns that may serve again.
 * @param random 0 to 1 @param seconds for the integer programme at the end
 * @param caps no more of each cloth than this, whatever it costs: a dive without them knows lengths, not whole steps
 */
export async function dive(
  root: StripMaster,
  solver: Solver,
  random: () => number,
  breath: Breath,
  seconds: number,
  caps?: Caps,
): Promise<Plan | null> {
  const { job, families } = root;
  const demand = Int32Array.from(root.demand);
  const stock = [...root.stock];
  /** By cloth: length of strips, or pieces, taken so far. */
  const taken = root.stock.map(() => 0);
  const strips: Chosen['strips'][number][] = [];
  const pieces: Chosen['pieces'][number][] = [];
  const last = LAST_LEAST + (LAST_MOST - LAST_LEAST) * random() ** 2;
  const fixedSlots: { family: number; height: number; count: number }[] = [];
  for (;;) {
    const left = demand.reduce((a, b) => a + b, 0);
    if (left === 0) break;
    const sub = new StripMaster(solver, job, families, demand.slice(), stock.slice(), fixedSlots);
    for (const c of root.strips) if (c.row && [...c.counts].every(([b, n]) => n <= demand[b]!)) sub.addStrip(c);
    for (const p of root.pieces) sub.addPiece(p);
    const known = sub.strips.length;
    const room = caps?.map((most, cloth) => Math.max(0, most - taken[cloth]!));
    const made = await generate(sub, [], breath, { quick: true, rounds: ROUNDS, ...(room && { caps: room }) });
    for (const c of sub.strips.slice(known)) if (c.row) root.addStrip(c);
    for (const p of sub.pieces) root.addPiece(p);
    if (!made || (caps && made.solution.unplaced.some((u) => u > 1e-6))) return null;
    if (left <= last || !made.complete) {
      const real = sub.strips.filter((c) => c.row);
      const ending = sub.integer([], made.complete ? seconds : Math.min(seconds, 0.3), Infinity, real, room);
      if (!ending.solution) return null;
      const { solution } = ending;
      real.forEach((column, i) => {
        const times = Math.round(solution.strips[i]!);
        if (times > 0) strips.push({ column, times });
      });
      sub.pieces.forEach((p, i) => {
        const times = Math.round(solution.pieces[i]!);
        if (times > 0) pieces.push({ ...p, times });
      });
      break;
    }
    if (!fixSome(sub, made.solution.strips, made.solution.pieces, random)) return null;
  }
  return makePlan(job, families, root.demand, { strips, pieces });

  /** Fixes whole parts; where there is none, the likeliest strip once. */
  function fixSome(sub: StripMaster, x: Float64Array, y: Float64Array, chance: () => number): boolean {
    let fixed = 0;
    const take = (i: number, times: number) => {
      const column = sub.strips[i]!;
      let most = times;
      for (const [b, n] of column.counts) most = Math.min(most, Math.floor(demand[b]! / n));
      if (most <= 0 || !column.row) return;
      for (const [b, n] of column.counts) demand[b]! -= n * most;
      strips.push({ column, times: most });
      if (families[column.family]!.stack === null) taken[families[column.family]!.clothIndex]! += column.height * most;
      if (families[column.family]!.stack !== null)
        fixedSlots.push({ family: column.family, height: column.height, count: -most });
      fixed += most;
    };
    const takePiece = (i: number, times: number) => {
      const piece = sub.pieces[i]!;
      const cloth = families[piece.family]!.clothIndex;
      const most = families[piece.family]!.segment === null ? Math.min(times, stock[cloth]!) : times;
      if (most <= 0) return;
      stock[cloth]! -= families[piece.family]!.segment === null ? most : 0;
      taken[cloth]! += families[piece.family]!.segment === null ? most : most * families[piece.family]!.segment!;
      pieces.push({ ...piece, times: most });
      for (const [height, n] of piece.slots) fixedSlots.push({ family: piece.family, height, count: n * most });
      fixed += most;
    };
    y.forEach((value, i) => {
      if (value >= 1 - 1e-6) takePiece(i, Math.floor(value + 1e-6));
    });
    x.forEach((value, i) => {
      const whole = Math.floor(value + 1e-6);
      if (whole < 1) return;
      // Leaving out a part at random keeps dives different from one another.
      const kept = chance() < 0.2 ? Math.floor(whole * chance()) : whole;
      if (kept > 0) take(i, kept);
    });
    if (fixed > 0) return true;
    // Drawn before sorting: how often a sort compares is its own affair, and not the same in every browser.
    const likely = x.map((value) => value * (0.7 + 0.3 * chance()));
    const order = [...x.keys()]
      .filter((i) => x[i]! > 1e-6 && sub.strips[i]!.row)
      .sort((a, b) => likely[b]! - likely[a]!);
    for (const i of order) {
      take(i, 1);
      if (fixed > 0) return true;
    }
    const bestPiece = [...y.keys()].sort((a, b) => y[b]! - y[a]!)[0];
    if (bestPiece !== undefined && y[bestPiece]! > 1e-6) takePiece(bestPiece, 1);
    return fixed > 0;
  }
}
