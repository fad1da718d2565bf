/** Better plans with stacks until they meet the bound or time is up: strips at shaken prices, whole choices among them, dives. */
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { choose } from './choose.ts';
import { dive } from './dive.ts';
import { lossOf } from './enrich.ts';
import { greedyStacks } from './greedy-stacks.ts';
import type { Plan } from './plan.ts';
import { isPlaced } from './plan-strips.ts';
import { priceStacks } from './price-stacks.ts';
import { nextCheaper } from './round-cost.ts';
import type { MasterPrices, StripMaster } from './strip-master.ts';

export interface StackGap {
  readonly master: StripMaster;
  readonly solver: Solver;
  readonly clock: Clock;
  readonly random: () => number;
  /** Of the linear programme, if it was solved. */
  readonly prices: MasterPrices | null;
  readonly offer: (plan: Plan | null) => void;
  readonly done: () => boolean;
  readonly best: () => Plan;
}

const MOST_COLUMNS = 500;
const SHAKES = 4;
const GREEDY = 6;
const SHAKE = 0.15;
/** Some blanks are left out of all strips of a shake, so that these are filled with others. */
const LEFT_OUT = 0.15;

export async function closeStacks(gap: StackGap): Promise<void> {
  const { master, clock, done, random } = gap;
  for (let round = 0; !done() && clock.left() > 0; round++) {
    for (let i = 0; i < SHAKES && gap.prices; i++) if (!(await shake(gap, gap.prices))) return;
    for (let i = 0; i < GREEDY && !done(); i++) {
      gap.offer(greedyStacks(master, random));
      if (!(await clock.breath())) return;
    }
    gap.offer(restricted(gap, Math.min(1 + round, 3)));
    for (let i = 0; i < 2 && !done() && clock.left() > 0; i++) {
      gap.offer(await dive(master, gap.solver, random, clock.breath, Math.min(0.5 + round, 3)));
    }
    if (!(await clock.breath())) return;
  }
}

/** Adds strips worth having at prices a little off; false when time ran out. */
async function shake({ master, clock, random }: StackGap, prices: MasterPrices): Promise<boolean> {
  const blank = prices.blank.map((v) => (random() < LEFT_OUT ? 0 : v * (1 + SHAKE * (2 * random() - 1))));
  // A strip need not be worth all it costs to be of use in a whole plan.
  const strip = (f: number, height: number) => 0.9 * prices.strip(f, height);
  const round = { exact: false, slack: 0, added: 0, worths: [] };
  for (const f of master.families.keys()) {
    const turn = Math.floor(random() * 1000);
    if (!(await priceStacks(master, f, { ...prices, blank, strip }, 0, { ...round }, clock.breath, turn))) return false;
  }
  return true;
}

/** The integer programme over the strips found so far that cost least above their worth. */
function restricted({ master, prices, best }: StackGap, seconds: number): Plan | null {
  const real = master.strips.filter((c) => c.row);
  if (prices) {
    const loss = new Map(real.map((c) => [c, lossOf(prices, c)]));
    real.sort((a, b) => loss.get(a)! - loss.get(b)!);
  }
  const known = best();
  const most = isPlaced(known) ? nextCheaper(master.job, master.families, known.cost) : Infinity;
  return choose(master, real.slice(0, MOST_COLUMNS), [], seconds, most);
}
