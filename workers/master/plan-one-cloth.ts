/** Jobs with blocks that are to be of one cloth each: how the blocks are shared out among cloths is chosen with all the rest. */
import type { LayoutAnswer, LayoutJob, Progress } from '../../src/plan/layout-job.ts';
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { choose } from './choose.ts';
import type { Gap } from './close-gap.ts';
import { dive } from './dive.ts';
import { enrich } from './enrich.ts';
import { collapse, type Expanded, expandOneCloth } from './expand-one-cloth.ts';
import { firstPlan } from './first-plan.ts';
import { generate } from './generate.ts';
import { lessCloth } from './less-cloth.ts';
import { better, type Plan } from './plan.ts';
import { familiesOf, inSteps, isPlaced, randomFrom } from './plan-strips.ts';
import { growPurchases, plantPurchases } from './purchase-tree.ts';
import { nextCheaper, roundCost } from './round-cost.ts';
import { demandOf, roundSplit, type Split } from './shares.ts';
import { mayLeaveOpen } from './slack.ts';
import { isBolt, StripMaster } from './strip-master.ts';
import { writeAnswer } from './write-answer.ts';

const FROM =
  'linear programme over strips (whole subcuts, square or along a slant of the blanks or a ruler) and over how blocks are shared out';
/** Breaths that early pricing may take: counted and not timed, so that the same job takes the same way again. */
const EARLY_LOOKS = 600;
const SHAKES = 2;
const MOST_FIRST = 8;

/** @param keep hears of the plan and how its blocks are shared out once it is made */
export async function planOneCloth(
  job: LayoutJob,
  solver: Solver,
  clock: Clock,
  report: (progress: Progress) => void,
  keep: (found: { readonly expanded: Expanded; readonly best: Plan }) => void = () => {},
): Promise<LayoutAnswer> {
  const expanded = expandOneCloth(job, familiesOf);
  const { families, shares, certain, impossible } = expanded;
  const stock = job.cloths.map((c) => (isBolt(c) ? Infinity : c.count === undefined ? 1 : (c.count ?? Infinity)));
  const master = new StripMaster(solver, expanded.job, families, certain, stock, [], shares);
  const random = randomFrom(job.seed ?? 1);

  let best: Plan | null = null;
  let bound = 0;
  let doing = 'laying boxes';
  const answer = (plan: Plan) => {
    const from = inSteps(job, FROM);
    const whole = writeAnswer(expanded.job, families, plan, bound, from, clock.elapsed(), impossible);
    return collapse(job, expanded, whole, plan.split ?? []);
  };
  const isWhole = (plan: Plan) => impossible.length === 0 && isPlaced(plan);
  const tell = () => {
    const shown = best;
    report({
      seconds: clock.elapsed(),
      doing,
      bound: shown && isWhole(shown) ? bound : null,
      answer: shown ? answer(shown) : null,
    });
  };
  const offer = (plan: Plan | null) => {
    if (!plan || !better(plan, best)) return;
    best = plan;
    tell();
  };
  const raiseCost = (cost: number) => {
    if (cost <= bound + 1e-9) return;
    bound = cost;
    tell();
  };
  const known = () => (best && isPlaced(best) ? best.cost : Infinity);
  const raise = (value: number) => raiseCost(roundCost(expanded.job, families, value, known()));
  const done = () => best !== null && isPlaced(best) && best.cost <= bound + 1e-6;
  const settled = (split: Split) => settle(master, solver, split);

  for (const split of firstSplits(master)) {
    const first = firstPlan(expanded.job, families, demandOf(certain, shares, split));
    for (const c of first.columns) master.addStrip(c);
    offer({ ...first.plan, split });
  }
  doing = 'pricing strips';
  let looks = 0;
  const early = async () => (await clock.breath()) && ++looks < EARLY_LOOKS;
  const quick = await generate(master, [], early, { quick: true });
  doing = 'choosing strips';
  offer(choose(master, master.strips, [], 0.3, Infinity));

  doing = 'proving';
  const provable = families.every((f) => f.segment === null);
  const slack = mayLeaveOpen(families) ? 0.002 : 0;
  const root = provable ? await generate(master, [], clock.breath, { slack, onBound: raise }) : null;
  const gap: Gap = {
    master,
    solver,
    cuts: [],
    clock,
    random,
    provable,
    offer,
    raise,
    raiseCost,
    done,
    root,
    best: () => best,
    bound: () => bound,
    say: (words) => {
      doing = words;
      tell();
    },
  };
  const tree = provable ? plantPurchases(gap) : null;
  const from = root ?? quick;
  for (let round = 0; !done() && clock.left() > 0; round++) {
    gap.say('choosing strips');
    for (let i = 0; i < SHAKES && from; i++) await enrich(master, from.prices, Infinity, random, clock.breath);
    const real = master.strips.filter((c) => c.row).slice(-400);
    const most = known() === Infinity ? Infinity : nextCheaper(expanded.job, families, known());
    offer(choose(master, real, [], Math.min(1 + round, 3), most));
    const near = from ? roundSplit(shares, from.solution.split, random) : best!.split!;
    const split = round % 2 === 0 ? near : best!.split!;
    if (!done()) {
      const dived = await dive(settled(split), solver, random, clock.breath, Math.min(0.5 + round, 3));
      offer(dived && { ...dived, split });
    }
    if (done() || !(await clock.breath())) break;
    if (tree) {
      gap.say('proving');
      await growPurchases(gap, tree, 4 * 2 ** round);
    }
  }
  keep({ expanded, best: best! });
  if (done()) offer(lessCloth(master, best!));
  return answer(best!);
}

/** A master for which it is settled how blocks are shared out, with the strips known so far that it can use. */
function settle(whole: StripMaster, solver: Solver, split: Split): StripMaster {
  const demand = demandOf(whole.certain, whole.shares, split);
  const master = new StripMaster(solver, whole.job, whole.families, demand, whole.stock);
  for (const c of whole.strips) if (c.row && [...c.counts].every(([b, n]) => n <= demand[b]!)) master.addStrip(c);
  for (const p of whole.pieces) master.addPiece(p);
  return master;
}

/** Every share to its first way, every share to its second, and so on. */
function firstSplits({ shares }: StripMaster): readonly Split[] {
  const most = Math.min(MOST_FIRST, Math.max(1, ...shares.map((s) => s.ways.length)));
  return Array.from({ length: most }, (_, k) =>
    shares.map(({ total, ways }) => ways.map((_, w) => (w === k % ways.length ? total : 0))),
  );
}
