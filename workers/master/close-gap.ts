/** From a bound and a plan that do not meet yet to ones that do, or to the end of the time. */
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { type Heights, mayCloseByHeights, plantHeights, workOnHeights } from './by-heights.ts';
import { choose } from './choose.ts';
import { dive } from './dive.ts';
import { enrich, lossOf } from './enrich.ts';
import type { Generated } from './generate.ts';
import type { Plan } from './plan.ts';
import { growPurchases, plantPurchases } from './purchase-tree.ts';
import { nextCheaper } from './round-cost.ts';
import type { HeightCut, StripMaster } from './strip-master.ts';
import { growTree, plantTree } from './tree.ts';

export interface Gap {
  readonly master: StripMaster;
  readonly solver: Solver;
  readonly cuts: readonly HeightCut[];
  readonly clock: Clock;
  readonly random: () => number;
  /** Whether the linear programme's value is a bound at all. */
  readonly provable: boolean;
  readonly offer: (plan: Plan | null) => void;
  readonly raise: (bound: number) => void;
  /** The same of a cost that plans can have: it is not rounded again. */
  readonly raiseCost: (cost: number) => void;
  readonly done: () => boolean;
  readonly best: () => Plan | null;
  readonly bound: () => number;
  /** The linear programme at the root, if it was solved. */
  readonly root: Generated | null;
  readonly say: (words: string) => void;
}

const MOST_COLUMNS = 400;
const SHAKES = 4;

export async function closeGap(gap: Gap): Promise<void> {
  const { master, clock, done } = gap;
  const tree = plantTree(gap.cuts);
  const purchases = gap.provable ? plantPurchases(gap) : null;
  const heights = gap.provable && gap.root && mayCloseByHeights(master) ? await plantHeights(gap, gap.root) : null;
  // One step from the proof, a better plan and none are as likely, and heights tell which.
  if (heights && !done() && lastStep(gap, heights)) {
    gap.say('proving');
    await workOnHeights(gap, heights, 2);
  }
  for (let round = 0; !done() && clock.left() > 0; round++) {
    // Where heights are at work on the last step, other ways to a plan seldom find one that they do not.
    if (!heights || !lastStep(gap, heights) || round % 2 === 0) {
      gap.say('choosing strips');
      if (gap.root) {
        for (let i = 0; i < SHAKES; i++)
          await enrich(master, gap.root.prices, roomFor(gap, gap.root), gap.random, clock.breath);
      }
      gap.offer(restricted(gap, [], Math.min(heights ? 0.2 + round : purchases ? 0.3 * 2 ** round : 1 + round, 3)));
      for (let i = 0; i < (heights && round === 0 ? 1 : 2) && !done() && clock.left() > 0; i++) {
        gap.offer(await dive(master, gap.solver, gap.random, clock.breath, Math.min((heights ? 0.2 : 0.5) + round, 3)));
      }
      if (done() || !(await clock.breath())) return;
    }
    if (gap.provable) {
      gap.say('proving');
      if (heights) await workOnHeights(gap, heights, 2 * 2 ** round);
      if (purchases) await growPurchases(gap, purchases, 4 * 2 ** round);
      else if (!done() && !(heights && round === 0)) await growTree(gap, tree, (heights ? 1 : 4) * 2 ** round);
    }
  }
}

/** Whether the plan costs one step more than is proved. */
function lastStep(gap: Gap, { unit }: Heights): boolean {
  return Math.round(((gap.best()?.cost ?? Infinity) - gap.bound()) / unit) === 1;
}

/** What the strips of a cheaper plan may all together cost above their worth; for any plan, where nothing is placed yet. */
function roomFor(gap: Gap, root: Generated): number {
  const { master } = gap;
  const best = gap.best();
  if (!best || best.unplaced.some((n) => n > 0)) return Infinity;
  return Math.max(0, nextCheaper(master.job, master.families, best.cost) - root.solution.value);
}

/** The integer programme over the strips found so far that cost least above their worth. */
function restricted(gap: Gap, cuts: readonly HeightCut[], seconds: number): Plan | null {
  const { master, root } = gap;
  const best = gap.best();
  const real = master.strips.filter((c) => c.row);
  const loss = root ? new Map(real.map((c) => [c, lossOf(root.prices, c)])) : null;
  if (loss) real.sort((a, b) => loss.get(a)! - loss.get(b)!);
  const whole = best?.unplaced.every((n) => n === 0);
  const most = best && whole ? nextCheaper(master.job, master.families, best.cost) : Infinity;
  return choose(master, real.slice(0, MOST_COLUMNS), cuts, seconds, most);
}
