/** For bolts that may be cut either way: the plan that cutting them across alone would give, so that the choice never costs more. */
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { choose } from './choose.ts';
import { closeGap } from './close-gap.ts';
import { countCuts } from './count-cuts.ts';
import { generate } from './generate.ts';
import { better, type Plan } from './plan.ts';
import { roundCost } from './round-cost.ts';
import { mayLeaveOpen } from './slack.ts';
import { StripMaster } from './strip-master.ts';

/** Works until that plan is proved for cutting across, or half of the time left is over. Null where it finds none. */
export async function acrossFirst(
  whole: StripMaster,
  solver: Solver,
  clock: Clock,
  random: () => number,
): Promise<Plan | null> {
  const { job } = whole;
  const families = whole.families.filter((f) => f.segment === null);
  if (families.length === 0) return null;
  const served = whole.demand.map((d, b) => (families.some((f) => f.variants.some((v) => v.blank === b)) ? d : 0));
  if (served.some((d, b) => d < whole.demand[b]!)) return null;
  const half = clock.left() / 2;
  const own: Clock = {
    elapsed: clock.elapsed,
    left: () => Math.max(0, clock.left() - half),
    breath: async () => (await clock.breath()) && clock.left() > half,
  };
  const master = new StripMaster(solver, job, families, served, whole.stock);
  let best: Plan | null = null;
  let bound = 0;
  const offer = (plan: Plan | null) => {
    if (plan && better(plan, best)) best = plan;
  };
  const raiseCost = (cost: number) => {
    bound = Math.max(bound, cost);
  };
  const raise = (value: number) => raiseCost(roundCost(job, families, value));
  const quick = await generate(master, [], own.breath, { quick: true });
  if (quick) offer(choose(master, master.strips, [], 0.3, Infinity));
  const slack = mayLeaveOpen(families) ? 0.002 : 0;
  const cuts = await countCuts(solver, master, own.breath);
  const root = await generate(master, cuts, own.breath, { slack, onBound: raise });
  await closeGap({
    master,
    solver,
    cuts,
    clock: own,
    random,
    provable: true,
    offer,
    raise,
    raiseCost,
    done: () => (best?.unplaced.every((n) => n === 0) ?? false) && best!.cost <= bound + 1e-6,
    root,
    best: () => best,
    bound: () => bound,
    say: () => {},
  });
  return best && inFamiliesOf(whole, families, best);
}

function inFamiliesOf(whole: StripMaster, own: StripMaster['families'], plan: Plan): Plan {
  const at = own.map((family) => whole.families.indexOf(family));
  return {
    ...plan,
    strips: plan.strips.map((s) => ({ ...s, family: at[s.family]! })),
    pieces: plan.pieces.map((p) => ({
      family: at[p.family]!,
      strips: p.strips.map((s) => ({ ...s, family: at[s.family]! })),
    })),
  };
}
