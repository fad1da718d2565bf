/**
 * The strips method from job to answer: a plan at once, then a bound and better plans in turn, until they meet or time is up.
 */
import type { LayoutAnswer, LayoutJob, Progress, Unplaced } from '../../src/plan/layout-job.ts';
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { choicesOn, type Family, makeFamily } from '../strips/family.ts';
import { acrossFirst } from './across-first.ts';
import { segmentLengths } from './along-plan.ts';
import { barBound } from './bar-bound.ts';
import { mayCloseByHeights } from './by-heights.ts';
import { choose } from './choose.ts';
import { closeGap } from './close-gap.ts';
import { countCuts } from './count-cuts.ts';
import { firstPlan } from './first-plan.ts';
import { generate } from './generate.ts';
import { lessCloth } from './less-cloth.ts';
import { better, type Plan } from './plan.ts';
import { roundCost } from './round-cost.ts';
import { roundPlan } from './round-plan.ts';
import { simpleBound } from './simple-bound.ts';
import { mayLeaveOpen } from './slack.ts';
import { isBolt, StripMaster } from './strip-master.ts';
import { whyImpossible } from './why-impossible.ts';
import { writeAnswer } from './write-answer.ts';

const FROM_STRIPS =
  'linear programme over strips (whole subcuts, square or along a slant of the blanks or a ruler) with counts of tall strips';
export const FROM_BARS = 'linear programme over what can lie side by side across the width';
export const FROM_AREA = 'area of the blanks and the longest of them';

/** At so many heights strips are looked for before the first choice among them; a job of twelve kinds needs 100 to 300. */
const EARLY_LOOKS = 600;

/** What planning in two stages leaves to those who go on from there. */
export interface RowsFound {
  readonly master: StripMaster;
  readonly best: Plan;
  readonly impossible: readonly Unplaced[];
}

/** @param keep hears of the plan and its strips once it is made */
export async function planStrips(
  job: LayoutJob,
  solver: Solver,
  clock: Clock,
  report: (progress: Progress) => void,
  keep: (found: RowsFound) => void = () => {},
): Promise<LayoutAnswer> {
  const families = familiesOf(job);
  const demand = Int32Array.from(job.blanks, (b) => b.demand);
  const impossible: Unplaced[] = [];
  job.blanks.forEach((blank, i) => {
    if (demand[i]! === 0 || families.some((f) => f.variants.some((v) => v.blank === i))) return;
    impossible.push({ blank: blank.id, count: demand[i]!, why: whyImpossible(job, blank) });
    demand[i] = 0;
  });
  const stock = job.cloths.map((c) => (isBolt(c) ? Infinity : c.count === undefined ? 1 : (c.count ?? Infinity)));
  const master = new StripMaster(solver, job, families, demand, stock);

  let best: Plan | null = null;
  let bound = 0;
  let boundFrom = FROM_AREA;
  let doing = 'laying boxes';
  const answer = (plan: Plan) =>
    writeAnswer(job, families, plan, bound, inSteps(job, boundFrom), clock.elapsed(), impossible);
  const tell = () =>
    report({
      seconds: clock.elapsed(),
      doing,
      bound: best && isWhole(best) ? bound : null,
      answer: best ? answer(best) : null,
    });
  const offer = (plan: Plan | null) => {
    if (plan && better(plan, best)) {
      best = plan;
      tell();
    }
  };
  const raise = (value: number, from = FROM_STRIPS) =>
    raiseCost(roundCost(job, families, value, best && isPlaced(best) ? best.cost : Infinity), from);
  const raiseCost = (rounded: number, from = FROM_STRIPS) => {
    if (rounded > bound + 1e-9) {
      bound = rounded;
      boundFrom = from;
      tell();
    }
  };
  const isWhole = (plan: Plan) => impossible.length === 0 && isPlaced(plan);
  const done = () => best !== null && isPlaced(best) && best.cost <= bound + 1e-6;

  // A bolt cut along its length is planned in lengths chosen beforehand, which proves nothing about other lengths.
  const provable = families.every((f) => f.segment === null);
  for (const alongFirst of provable ? [false] : [false, true]) {
    const first = firstPlan(job, families, demand, alongFirst);
    for (const c of first.columns) master.addStrip(c);
    offer(first.plan);
  }
  if (demand.every((d) => d === 0)) return answer(best!);

  raise(simpleBound(job, families, demand, master.fixedCost()), FROM_AREA);
  if (!provable) {
    raise(master.fixedCost() + (await barBound(solver, job, families, demand, clock.breath)), FROM_BARS);
    offer(await acrossFirst(master, solver, clock, randomFrom(job.seed ?? 1)));
  }
  doing = 'pricing strips';
  // Good strips come early; the last of them only matter to the proof, and a plan should not wait for it. Looks are counted and
  // not timed, so that the same job takes the same way again.
  let looks = 0;
  const quick = await generate(master, [], async () => (await clock.breath()) && ++looks < EARLY_LOOKS, {
    quick: true,
  });
  doing = 'choosing strips';
  if (quick) offer(await roundPlan(master, quick.solution, quick.prices, clock.breath));
  offer(choose(master, master.strips, [], 0.3, Infinity));

  doing = 'proving';
  const slack = mayLeaveOpen(families) ? 0.002 : 0;
  const cuts = await countCuts(solver, master, clock.breath);
  // Heights prove what prices say by themselves, so that prices need not be exact.
  const quickly = mayCloseByHeights(master);
  const root = provable ? await generate(master, cuts, clock.breath, { slack, onBound: raise, quick: quickly }) : null;
  if (root?.complete && !quickly) raise(root.bound);

  await closeGap({
    master,
    solver,
    cuts,
    clock,
    random: randomFrom(job.seed ?? 1),
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
  });
  if (done()) offer(lessCloth(master, best!));
  keep({ master, best: best!, impossible });
  return answer(best!);
}

export const isPlaced = (plan: Plan): boolean => plan.unplaced.every((n) => n === 0);

export function inSteps(job: LayoutJob, boundFrom: string): string {
  const stepped = job.cloths.some((c) => isBolt(c) && c.step !== undefined);
  return stepped ? `${boundFrom}, in whole selling steps` : boundFrom;
}

export function familiesOf(job: LayoutJob): readonly Family[] {
  return job.cloths.flatMap((cloth, i) => {
    if (!job.blanks.some((b) => b.demand > 0 && choicesOn(b, cloth.id).length > 0)) return [];
    const ways = cloth.firstCut === 'either' ? [false, true] : [cloth.firstCut === 'along'];
    return ways.flatMap((along) => {
      if (!isBolt(cloth)) {
        const [span, stack] = along ? [cloth.length!, cloth.width] : [cloth.width, cloth.length!];
        return [makeFamily(job, i, { along, span, stack, segment: null })];
      }
      if (!along) return [makeFamily(job, i, { along, span: cloth.width, stack: null, segment: null })];
      return segmentLengths(job, i).map((segment) =>
        makeFamily(job, i, { along, span: segment, stack: cloth.width, segment }),
      );
    });
  });
}

/** Mulberry32: small, seeded, the same everywhere. */
export function randomFrom(seed: number): () => number {
  let a = seed | 0;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
