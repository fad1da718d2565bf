/** From a bound and a plan that do not meet yet to ones that do, or to the end of the time. */
import type { Clock } from '../clock.ts';
import type { Solver } from '../programme/glpk.ts';
import { graphAt, stripHeight } from '../strips/family.ts';
import { layRow } from '../strips/lay-row.ts';
import { listRows } from '../strips/list-rows.ts';
import { choose, planFrom } from './choose.ts';
import type { StripColumn } from './column.ts';
import { dive } from './dive.ts';
import { enrich, lossOf } from './enrich.ts';
import { count, type Generated, generate } from './generate.ts';
import type { Plan } from './plan.ts';
import { leastSaving, roundCost } from './round-cost.ts';
import { mayLeaveOpen } from './slack.ts';
import type { HeightCut, StripMaster } from './strip-master.ts';

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
  for (let round = 0; !done() && clock.left() > 0; round++) {
    gap.say('choosing strips');
    if (gap.root) {
      for (let i = 0; i < SHAKES; i++)
        await enrich(master, gap.root.prices, roomFor(gap, gap.root), gap.random, clock.breath);
    }
    gap.offer(restricted(gap, [], Math.min(1 + round, clock.left() / 4)));
    for (let i = 0; i < 2 && !done() && clock.left() > 0; i++) {
      gap.offer(await dive(master, gap.solver, gap.random, clock.breath, Math.min(0.5 + round, clock.left() / 4)));
    }
    if (done() || !(await clock.breath())) return;
    if (gap.provable) {
      gap.say('proving');
      await listed(gap, 2 + 2 * round);
      if (done() || !(await clock.breath())) return;
      await tree(gap, 4 * 2 ** round);
    }
  }
}

/** What the strips of a cheaper plan may all together cost above their worth; for any plan, where nothing is placed yet. */
function roomFor(gap: Gap, root: Generated): number {
  const { master } = gap;
  const best = gap.best();
  if (!best || best.unplaced.some((n) => n > 0)) return Infinity;
  return Math.max(0, best.cost - leastSaving(master.job, master.families) - root.solution.value);
}

/** The integer programme over the strips found so far that cost least above their worth. */
function restricted(gap: Gap, cuts: readonly HeightCut[], seconds: number): Plan | null {
  const { master, root } = gap;
  const best = gap.best();
  const real = master.strips.filter((c) => c.row);
  const loss = root ? new Map(real.map((c) => [c, lossOf(root.prices, c)])) : null;
  if (loss) real.sort((a, b) => loss.get(a)! - loss.get(b)!);
  const whole = best?.unplaced.every((n) => n === 0);
  const most = best && whole ? best.cost - leastSaving(master.job, master.families) : Infinity;
  return choose(master, real.slice(0, MOST_COLUMNS), cuts, seconds, most);
}

interface Node {
  readonly cuts: readonly HeightCut[];
  readonly bound: number;
}

/**
 * Branches on how many strips are at least so tall, best bound first. A branch only changes what strips of a height cost, so
 * pricing is untouched. Every open branch's bound is a bound on every plan; the least of them is the proof so far.
 */
async function tree(gap: Gap, most: number): Promise<void> {
  const { master, clock } = gap;
  const open: Node[] = [{ cuts: gap.cuts, bound: gap.bound() }];
  const rounded = (v: number) => roundCost(master.job, master.families, v);
  const slack = mayLeaveOpen(master.families) ? 0.0005 : 0;
  for (let i = 0; i < most && open.length > 0 && clock.left() > 0 && !gap.done(); i++) {
    open.sort((a, b) => a.bound - b.bound);
    const node = open.shift()!;
    const made = await generate(master, node.cuts, clock.breath, { slack });
    if (made && !made.complete) return;
    const plan = restricted(gap, node.cuts, Math.min(0.5, clock.left() / 4));
    gap.offer(plan);
    if (made?.solution.unplaced.every((u) => u < 1e-6)) {
      const bound = Math.max(node.bound, made.bound);
      const cost = gap.best()?.cost ?? Infinity;
      if (rounded(bound) < cost - 1e-6) {
        const branch = branchHeight(master, made.solution.strips);
        if (!branch) return;
        const below = Math.floor(branch.sum + 1e-6);
        open.push({ cuts: [...node.cuts, { height: branch.height, least: 0, most: below }], bound });
        open.push({ cuts: [...node.cuts, { height: branch.height, least: below + 1, most: Infinity }], bound });
      } else {
        open.push({ cuts: node.cuts, bound: Infinity });
      }
    }
    const live = open.filter((n) => n.bound < Infinity);
    const least = live.length > 0 ? Math.min(...live.map((n) => n.bound)) : (gap.best()?.cost ?? 0);
    open.splice(0, open.length, ...live);
    gap.raise(Math.min(least, gap.best()?.cost ?? Infinity));
    if (!(await clock.breath())) return;
  }
}

const MOST_LISTED = 4000;

/**
 * Lists every strip that a plan cheaper than the best could hold, and has GLPK choose among them all: its answer, or its
 * refusal, is then a proof.
 */
async function listed(gap: Gap, seconds: number): Promise<void> {
  const { master, clock } = gap;
  const best = gap.best();
  if (!best || best.unplaced.some((n) => n > 0) || master.families.some((f) => f.stack !== null)) return;
  const made = await generate(master, gap.cuts, clock.breath);
  if (!made?.complete) return;
  // The next lower cost that a plan could have; what a strip costs above its worth may be no more than that leaves.
  const room = best.cost - leastSaving(master.job, master.families) - made.bound;
  const columns: StripColumn[] = [];
  for (const [f, family] of master.families.entries()) {
    for (const height of family.heights) {
      const graph = graphAt(family, height);
      const rows = listRows(
        graph,
        made.prices.blank,
        master.demand,
        made.prices.strip(f, height) - room - 1e-6,
        MOST_LISTED - columns.length,
      );
      if (!rows || !(await clock.breath())) return;
      for (const row of rows) {
        // A row that would fit a lower strip is listed there.
        const tallest = Math.max(...row.steps.map((s) => s.variant.height));
        if (stripHeight(tallest, family.ruler) < height - 1e-9) continue;
        columns.push({
          family: f,
          height,
          counts: count(row.steps.map((s) => s.variant.blank)),
          row: layRow(row.steps, height),
        });
      }
    }
  }
  const limit = Math.min(seconds, clock.left());
  const solved = master.integer(gap.cuts, limit, best.cost, columns);
  if (solved.solution) gap.offer(planFrom(master, columns, solved.solution));
  if (solved.status === 'optimal') gap.raise(gap.best()!.cost);
  if (solved.status === 'infeasible') gap.raise(best.cost);
}

/** The height at which the number of taller strips is furthest from whole. */
function branchHeight(master: StripMaster, x: Float64Array): { height: number; sum: number } | null {
  const heights = [...new Set(master.strips.filter((_, i) => x[i]! > 1e-6).map((s) => s.height))];
  let best: { height: number; sum: number } | null = null;
  let furthest = 1e-4;
  for (const height of heights) {
    const sum = master.strips.reduce((total, s, i) => (s.height >= height - 1e-9 ? total + x[i]! : total), 0);
    const off = Math.abs(sum - Math.round(sum));
    if (off > furthest) {
      furthest = off;
      best = { height, sum };
    }
  }
  return best;
}
