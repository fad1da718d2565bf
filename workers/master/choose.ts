/** A plan by the integer programme over strips found so far. */
import type { StripColumn } from './column.ts';
import { makePlan, type Plan } from './plan.ts';
import { demandOf } from './shares.ts';
import type { HeightCut, MasterSolution, StripMaster } from './strip-master.ts';

/** @param most plans that cost more are not wanted; null when none was found */
export function choose(
  master: StripMaster,
  strips: readonly StripColumn[],
  cuts: readonly HeightCut[],
  seconds: number,
  most: number,
): Plan | null {
  const real = strips.filter((c) => c.row);
  const { solution } = master.integer(cuts, seconds, most, real);
  return solution ? planFrom(master, real, solution) : null;
}

/** @param strips that the solution speaks of, in its order */
export function planFrom(master: StripMaster, strips: readonly StripColumn[], solution: MasterSolution): Plan | null {
  const split = master.shares.length === 0 ? null : solution.split.map((ways) => ways.map(Math.round));
  const demand = split ? demandOf(master.certain, master.shares, split) : master.demand;
  const plan = makePlan(master.job, master.families, demand, {
    strips: strips.flatMap((column, i) => {
      const times = Math.round(solution.strips[i]!);
      return times > 0 ? [{ column, times }] : [];
    }),
    pieces: master.pieces.flatMap((piece, i) => {
      const times = Math.round(solution.pieces[i]!);
      return times > 0 ? [{ ...piece, times }] : [];
    }),
  });
  return plan && split ? { ...plan, split } : plan;
}
