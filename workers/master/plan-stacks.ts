/**
 * Three stages: the plan in two is made first, within a part of the time, and stands until one with stacks is better. Its strips are
 * where the programme over strips with stacks begins, and its length says how tall a strip can matter at all.
 *
 * Counts of tall strips (count-cuts.ts) hold for rows only, since one strip may stack two tall blanks: they are not used here.
 */
import type { LayoutAnswer, LayoutJob, Progress } from '../../src/plan/layout-job.ts';
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { allVariants, distinctAscending, type Family } from '../strips/family.ts';
import { barBound } from './bar-bound.ts';
import { choose } from './choose.ts';
import { closeStacks } from './close-stacks.ts';
import { generate } from './generate.ts';
import { better, type Plan } from './plan.ts';
import { FROM_AREA, FROM_BARS, inSteps, isPlaced, planStrips, type RowsFound, randomFrom } from './plan-strips.ts';
import { nextCheaper, roundCost } from './round-cost.ts';
import { simpleBound } from './simple-bound.ts';
import { mayLeaveOpen } from './slack.ts';
import { StripMaster } from './strip-master.ts';
import { writeAnswer } from './write-answer.ts';

const FROM_STACKS =
  'linear programme over strips of rows and stacks (whole subcuts, square or along a slant of the blanks or a ruler)';
/** Of the time, for the plan in two stages; what that does not need is there for three. */
const FOR_ROWS = 0.35;
/** Breaths that early pricing may take: counted and not timed, so that the same job takes the same way again. */
const EARLY_LOOKS = 600;
/** More heights than these are not asked one by one. */
const HEIGHTS_MOST = 480;

export async function planStacks(
  job: LayoutJob,
  solver: Solver,
  clock: Clock,
  report: (progress: Progress) => void,
): Promise<LayoutAnswer> {
  let rows: RowsFound | null = null;
  const inRows = await planStrips(
    { ...job, stages: 2 },
    solver,
    partOf(clock, FOR_ROWS),
    (p) => report({ ...p, bound: null, answer: p.answer && unproved(p.answer) }),
    (found) => {
      rows = found;
    },
  );
  return rows ? addStacks(job, solver, clock, report, rows) : inRows;
}

/** What is proved over rows is not proved over stacks, nor for other ways to share blocks out: then no bound is told. */
export function unproved(answer: LayoutAnswer): LayoutAnswer {
  if (answer.bound === null) return answer;
  return {
    ...answer,
    status: answer.cost <= 1e-6 ? 'optimal' : 'feasible',
    bound: 0,
    boundFrom: 'no cost is below nothing',
  };
}

async function addStacks(
  job: LayoutJob,
  solver: Solver,
  clock: Clock,
  report: (progress: Progress) => void,
  rows: RowsFound,
): Promise<LayoutAnswer> {
  const { demand, stock } = rows.master;
  const families = rows.master.families.map((family) => withStackRule(job, family, demand, rows.best));
  let best: Plan = rows.best;
  let bound = 0;
  let boundFrom = FROM_AREA;
  let doing = 'stacking blanks';
  const missing = (plan: Plan) => plan.unplaced.reduce((a, b) => a + b, 0);
  const answer = (): LayoutAnswer => {
    const from = inSteps(job, boundFrom);
    const written = writeAnswer(job, families, best, bound, from, clock.elapsed(), rows.impossible);
    // A plan without stacks is one of two stages, whichever way it was found.
    const inRows = holdsStacks(best) ? rows.best : best;
    return missing(inRows) === missing(best) ? { ...written, twoStageCost: inRows.cost } : written;
  };
  const whole = () => rows.impossible.length === 0 && isPlaced(best);
  const tell = () => report({ seconds: clock.elapsed(), doing, bound: whole() ? bound : null, answer: answer() });
  const offer = (plan: Plan | null) => {
    if (!plan || !better(plan, best)) return;
    best = plan;
    tell();
  };
  const raise = (value: number, from = FROM_STACKS) => {
    const rounded = roundCost(job, families, value, isPlaced(best) ? best.cost : Infinity);
    if (rounded <= bound + 1e-9) return;
    bound = rounded;
    boundFrom = from;
    tell();
  };
  const done = () => isPlaced(best) && best.cost <= bound + 1e-6;

  const master = new StripMaster(solver, job, families, demand, stock);
  raise(simpleBound(job, families, demand, master.fixedCost()), FROM_AREA);
  tell();
  if (!done()) raise(master.fixedCost() + (await barBound(solver, job, families, demand, clock.breath)), FROM_BARS);
  if (done()) return answer();
  for (const c of rows.master.strips) if (c.row) master.addStrip(c);
  for (const p of rows.master.pieces) master.addPiece(p);

  let looks = 0;
  const quick = await generate(master, [], async () => (await clock.breath()) && ++looks < EARLY_LOOKS, {
    quick: true,
  });
  offer(choose(master, master.strips, [], 1, Infinity));
  doing = 'proving';
  const provable = families.every((f) => f.segment === null);
  const slack = mayLeaveOpen(families) ? 0.002 : 0;
  const prove = clock.left() * 0.5;
  const proof = async () => (await clock.breath()) && clock.left() > prove;
  const root = provable && !done() ? await generate(master, [], proof, { slack, onBound: raise }) : null;
  if (root?.complete) raise(root.bound);
  doing = 'stacking blanks';
  const prices = (root ?? quick)?.prices ?? null;
  await closeStacks({
    master,
    solver,
    clock,
    random: randomFrom(job.seed ?? 1),
    prices,
    offer,
    done,
    best: () => best,
  });
  return answer();
}

/** Up to which height strips matter: none of a plan that costs less than the best known is taller than all of that plan. */
function withStackRule(job: LayoutJob, family: Family, demand: Int32Array, best: Plan): Family {
  const highest = new Float64Array(demand.length);
  for (const v of family.variants) highest[v.blank] = Math.max(highest[v.blank]!, v.height);
  let most = demand.reduce((sum, d, blank) => sum + d * highest[blank]!, 0) + (family.ruler ?? 0);
  if (family.stack !== null) {
    most = Math.min(most, family.stack);
  } else {
    const { cost = 1, squaring = 0 } = family.cloth;
    const cheaper = nextCheaper(job, [{ ...family, stacks: { top: 0, beyond: false, heights: [] } }], best.cost);
    if (isPlaced(best) && cost > 0) most = Math.min(most, cheaper / cost - squaring);
  }
  const { ruler, heights } = family;
  const tallest = heights.at(-1) ?? 0;
  if (ruler === null) {
    const named = allVariants(job, family.cloth, family.along).map((v) => v.height);
    return { ...family, stacks: { top: tallest, beyond: false, heights: distinctAscending(named) } };
  }
  const many = Math.max(tallest * 2, HEIGHTS_MOST * ruler);
  return { ...family, stacks: { top: Math.max(tallest, Math.min(most, many)), beyond: most > many, heights } };
}

const holdsStacks = (plan: Plan): boolean =>
  [...plan.strips, ...plan.pieces.flatMap((p) => p.strips)].some((s) => s.blanks.some((b) => b.stack !== undefined));

/** The same clock for a part of the time that is left. */
export function partOf(clock: Clock, share: number): Clock {
  const kept = clock.left() * (1 - share);
  const left = () => Math.max(0, clock.left() - kept);
  return { elapsed: clock.elapsed, left, breath: async () => (await clock.breath()) && left() > 0 };
}
