/**
 * Blocks of one cloth each in three stages: how they are shared out is chosen with rows, and stacks are looked for with that
 * settled. Another way to share them out might do better with stacks, so no bound is told but that no cost is below nothing.
 */
import type { LayoutAnswer, LayoutJob, Progress } from '../../src/plan/layout-job.ts';
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { collapse, type Expanded } from './expand-one-cloth.ts';
import type { Plan } from './plan.ts';
import { planOneCloth } from './plan-one-cloth.ts';
import { partOf, planStacks, unproved } from './plan-stacks.ts';
import { demandOf } from './shares.ts';

/** Of the time, for how blocks are shared out. */
const FOR_SHARES = 0.4;

export async function planOneClothStacked(
  job: LayoutJob,
  solver: Solver,
  clock: Clock,
  report: (progress: Progress) => void,
): Promise<LayoutAnswer> {
  const told = (answer: LayoutAnswer | null) => answer && unproved(answer);
  let found: { readonly expanded: Expanded; readonly best: Plan } | null = null;
  const inRows = await planOneCloth(
    { ...job, stages: 2 },
    solver,
    partOf(clock, FOR_SHARES),
    (p) => report({ ...p, bound: null, answer: told(p.answer) }),
    (kept) => {
      found = kept;
    },
  );
  if (!found || inRows.unplaced.length > 0) return unproved(inRows);
  return withStacks(job, inRows, found, (settled, told) => planStacks(settled, solver, clock, told), report);
}

async function withStacks(
  job: LayoutJob,
  inRows: LayoutAnswer,
  { expanded, best }: { readonly expanded: Expanded; readonly best: Plan },
  plan: (job: LayoutJob, told: (progress: Progress) => void) => Promise<LayoutAnswer>,
  report: (progress: Progress) => void,
): Promise<LayoutAnswer> {
  const split = best.split ?? [];
  const demand = demandOf(expanded.certain, expanded.shares, split);
  const blanks = expanded.job.blanks.map((blank, b) => ({ ...blank, demand: demand[b]! }));
  /** As it is told: never costlier than the plan in rows, whose cost it carries. */
  const asWhole = (answer: LayoutAnswer): LayoutAnswer => {
    const whole = unproved(collapse(job, expanded, answer, split));
    const cheaper = answer.unplaced.length === 0 && whole.cost < inRows.cost - 1e-6;
    const twoStageCost = Math.min(inRows.cost, answer.twoStageCost ?? inRows.cost);
    return { ...(cheaper ? whole : unproved(inRows)), seconds: answer.seconds, twoStageCost };
  };
  const answer = await plan({ ...expanded.job, stages: 3, blanks }, (progress) =>
    report({ ...progress, bound: null, answer: progress.answer && asWhole(progress.answer) }),
  );
  return asWhole(answer);
}
