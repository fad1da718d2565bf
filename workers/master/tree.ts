/**
 * Branches on how many strips are at least so tall, best bound first. A branch only changes what strips of a height cost, so
 * pricing is untouched. Every open branch's bound is a bound on every plan; the least of them is the proof so far.
 */
import { planFrom } from './choose.ts';
import type { Gap } from './close-gap.ts';
import { type Generated, generate } from './generate.ts';
import { listStrips } from './list-strips.ts';
import { leastSaving, nextCheaper, roundCost } from './round-cost.ts';
import { mayLeaveOpen } from './slack.ts';
import type { HeightCut, StripMaster } from './strip-master.ts';

interface Node {
  readonly cuts: readonly HeightCut[];
  readonly bound: number;
  /** How many labels a list of its strips may take: more each time it comes to nothing. */
  readonly patience: number;
}

/** Kept from one stay to the next. */
export interface Tree {
  readonly open: Node[];
  /** Nodes that can be neither branched nor closed yet; their bounds count all the same. */
  readonly stuck: Node[];
}

export function plantTree(cuts: readonly HeightCut[]): Tree {
  return { open: [{ cuts, bound: 0, patience: PATIENCE }], stuck: [] };
}

const SLACK = 0.0005;
/** With more room than this, in parts of the cost, slanted rows are too many to list. */
const ROOM_TO_LIST = 0.01;
const SECONDS_TO_CHOOSE = 3;
/** Labels looked at over all heights of slanted rows, the first time. */
const PATIENCE = 10_000;

/** Works on the tree until time is up, the gap is closed, or `most` nodes have been looked at. */
export async function growTree(gap: Gap, tree: Tree, most: number): Promise<void> {
  const { clock } = gap;
  for (let i = 0; i < most && clock.left() > 0 && !gap.done(); i++) {
    if (tree.open.length === 0) tree.open.push(...tree.stuck.splice(0));
    if (tree.open.length === 0) return;
    tree.open.sort((a, b) => a.bound - b.bound);
    const node = tree.open[0]!;
    const closed = await workOn(gap, tree, node);
    if (closed === 'later') return;
    tree.open.splice(tree.open.indexOf(node), 1);
    const least = Math.min(...tree.open.map((n) => n.bound), ...tree.stuck.map((n) => n.bound), gap.best()?.cost ?? 0);
    gap.raise(least);
    if (!(await clock.breath())) return;
  }
}

/** `done`: the node is closed, or its branches have taken its place. `later`: time ran out. */
async function workOn(gap: Gap, tree: Tree, node: Node): Promise<'done' | 'later'> {
  const { master, clock } = gap;
  let made = await generate(master, node.cuts, clock.breath, { slack: mayLeaveOpen(master.families) ? SLACK : 0 });
  // Where blanks seem to have no place, strips that pricing passed over for speed might hold them.
  if (made?.complete && made.solution.unplaced.some((u) => u > 1e-6) && mayLeaveOpen(master.families))
    made = await generate(master, node.cuts, clock.breath);
  if (!made || made.solution.unplaced.some((u) => u > 1e-6)) return made && !made.complete ? 'later' : 'done';
  if (!made.complete) return 'later';
  const bound = Math.max(node.bound, made.bound);
  const best = gap.best();
  const rounded = roundCost(master.job, master.families, bound);
  if (best && rounded >= best.cost - 1e-6) return 'done';
  const verdict = await closeByList(gap, node, { ...made, bound: made.bound });
  if (verdict) return 'done';
  const branch = branchHeight(master, made.solution.strips);
  if (!branch) {
    tree.stuck.push({ cuts: node.cuts, bound, patience: node.patience * 4 });
    return 'done';
  }
  const below = Math.floor(branch.sum + 1e-6);
  tree.open.push({ cuts: [...node.cuts, { height: branch.height, least: 0, most: below }], bound, patience: PATIENCE });
  tree.open.push({
    cuts: [...node.cuts, { height: branch.height, least: below + 1, most: Infinity }],
    bound,
    patience: PATIENCE,
  });
  return 'done';
}

/** Whether the node is closed: no plan in it is cheaper than the best one now known. */
async function closeByList(gap: Gap, node: Node, made: Generated): Promise<boolean> {
  const { master, clock } = gap;
  for (;;) {
    const best = gap.best();
    if (!best || best.unplaced.some((n) => n > 0)) return false;
    const target = nextCheaper(master.job, master.families, best.cost);
    if (made.bound > target + 1e-6) return true;
    const first = node.patience === PATIENCE;
    if (first && mayLeaveOpen(master.families) && target - made.bound > ROOM_TO_LIST * target) return false;
    const columns = await listStrips(master, made, target, node.patience, clock.breath);
    if (!columns) return false;
    const solved = master.integer(node.cuts, SECONDS_TO_CHOOSE, target, columns);
    if (solved.status === 'infeasible') return true;
    const plan = solved.solution && planFrom(master, columns, solved.solution);
    // What was found is cheaper, so the list for the next lower target is shorter; without a plan nothing is known.
    if (!plan || plan.cost >= best.cost - 1e-9) return false;
    gap.offer(plan);
    if (solved.status === 'optimal' && leastSaving(master.job, master.families) === 0) return true;
    if (clock.left() <= 0) return false;
  }
}

/** The height at which the number of taller strips is furthest from whole. */
export function branchHeight(master: StripMaster, x: Float64Array): { height: number; sum: number } | null {
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
