/**
 * Proves what several bolts and pieces together must cost. Branches on how much is bought of each cloth, then on how many strips
 * are at least so tall. Whatever prices the blanks have, a purchase that is worth less than they are cannot hold them: so the
 * cheapest that is worth as much bounds the branch, and it is closed when that is no cheaper than the best plan.
 */

import { chooseWhole } from './choose-whole.ts';
import type { Gap } from './close-gap.ts';
import { dive } from './dive.ts';
import { incomeOf } from './dual-bound.ts';
import { type Generated, generate } from './generate.ts';
import { listPurchased, worthByCloth } from './list-purchased.ts';
import { type Chosen, makePlan, type Plan } from './plan.ts';
import {
  affordable,
  bestPurchases,
  type PurchaseBox,
  type Supply,
  suppliesOf,
  usableOf,
  wholeBox,
} from './purchases.ts';
import { nextCheaper } from './round-cost.ts';
import { demandOf, type Split, type SplitBox, wholeSplitBox } from './shares.ts';
import { mayLeaveOpen } from './slack.ts';
import { type HeightCut, isBolt } from './strip-master.ts';
import { branchHeight } from './tree.ts';

interface Node {
  readonly box: PurchaseBox;
  readonly splits: SplitBox | undefined;
  readonly cuts: readonly HeightCut[];
  readonly bound: number;
  /** How many labels a list of its strips may take: more each time it comes to nothing. */
  readonly patience: number;
}

export interface PurchaseTree {
  readonly supplies: readonly Supply[];
  readonly open: Node[];
  /** Nodes that can be neither branched nor closed yet; their bounds count all the same. */
  readonly stuck: Node[];
}

const SLACK = 0.0005;
/** With more room than this, in parts of what the blanks are worth, slanted rows are too many to list. */
const ROOM_TO_LIST = 0.02;
const SECONDS_TO_CHOOSE = 3;
/** Less where a node is young: most lists are short and soon chosen from. */
const SECONDS_AT_FIRST = 0.4;
/** Most end soon, where what is left no longer fits. */
const DIVES = 8;
const SECONDS_TO_DIVE = 0.3;
const PATIENCE = 10_000;

/** Null where there is one bolt and nothing else, for which tree.ts does better, or nothing can be told of purchases. */
export function plantPurchases(gap: Gap): PurchaseTree | null {
  const { job, families } = gap.master;
  const supplies = job.cloths.length > 1 || gap.master.shares.length > 0 ? suppliesOf(job, families) : null;
  return (
    supplies && {
      supplies,
      open: [{ box: wholeBox(job), splits: splitsOf(gap), cuts: gap.cuts, bound: 0, patience: PATIENCE }],
      stuck: [],
    }
  );
}

/** Works on the tree until time is up, the gap is closed, or `most` nodes have been looked at. */
export async function growPurchases(gap: Gap, tree: PurchaseTree, most: number): Promise<void> {
  for (let i = 0; i < most && gap.clock.left() > 0 && !gap.done(); i++) {
    const best = gap.best();
    if (!best || best.unplaced.some((n) => n > 0)) return;
    if (tree.open.length === 0) tree.open.push(...tree.stuck.splice(0));
    if (tree.open.length === 0) return;
    tree.open.sort((a, b) => a.bound - b.bound || b.cuts.length - a.cuts.length);
    const node = tree.open.shift()!;
    const told = await workOn(gap, tree, node);
    if (told === 'later') {
      tree.open.push(node);
      return;
    }
    tree.open.push(...told);
    gap.raiseCost(Math.min(gap.best()!.cost, ...[...tree.open, ...tree.stuck].map((n) => n.bound)));
    if (!(await gap.clock.breath())) return;
  }
}

/** Nodes that take this one's place, none when it is closed; `later` when time ran out. */
async function workOn(gap: Gap, tree: PurchaseTree, node: Node): Promise<readonly Node[] | 'later'> {
  const { master, clock } = gap;
  const { supplies } = tree;
  const cost = gap.best()!.cost;
  const target = nextCheaper(master.job, master.families, cost);
  const box = affordable(supplies, node.box, target);
  if (!box) return [];
  const caps = capsOf(master.job.cloths.length, supplies, box);
  const slack = mayLeaveOpen(master.families) ? SLACK : 0;
  const made = await generate(master, node.cuts, clock.breath, { slack, caps, splits: node.splits });
  if (!made) return [];
  if (!made.complete) return 'later';
  const income = incomeOf(master, node.cuts, made.prices, node.splits);
  const purchases = bestPurchases(supplies, box, worthByCloth(master, made.worths), cost);
  const enough = purchases?.find((p) => p.value >= income - 1e-7 * (1 + income));
  const bound = Math.max(node.bound, purchases ? (enough?.cost ?? cost) : 0);
  if (bound > target + 1e-6) return [];
  const within = purchases?.filter((p) => p.cost <= target + 1e-6).at(-1);
  if (within && node.patience === PATIENCE && master.shares.length === 0) {
    const held = holds(master.job.cloths.length, supplies, within.units);
    for (let i = 0; i < DIVES && clock.left() > 0; i++) {
      gap.offer(await dive(master, gap.solver, gap.random, clock.breath, SECONDS_TO_DIVE, held));
      if (gap.done()) return [];
      if (gap.best()!.cost < cost - 1e-9) return [{ ...node, box, bound }];
    }
  }
  const room = within ? within.value - income : Infinity;
  const told = await closeByList(gap, tree, { ...node, box, bound }, made, room / (1 + income), room, target);
  if (told) return told;
  return branch(gap, tree, { ...node, box, bound }, made);
}

/** Null when nothing came of it. */
async function closeByList(
  gap: Gap,
  tree: PurchaseTree,
  node: Node,
  made: Generated,
  part: number,
  room: number,
  target: number,
): Promise<readonly Node[] | null> {
  const { master, clock, solver } = gap;
  if (part > (mayLeaveOpen(master.families) ? ROOM_TO_LIST : Infinity) && node.patience === PATIENCE) return null;
  const listed = await listPurchased(master, made, room + 1e-6, node.patience, clock.breath);
  if (!listed) return null;
  const choice = chooseWhole(
    solver,
    master,
    tree.supplies,
    node.box,
    node.cuts,
    listed,
    target,
    node.patience === PATIENCE ? SECONDS_AT_FIRST : SECONDS_TO_CHOOSE,
    node.splits,
  );
  if (choice.status === 'infeasible') return [];
  const plan = choice.chosen && planOf(gap, choice.chosen, choice.split);
  if (!plan || plan.cost >= gap.best()!.cost - 1e-9) return null;
  gap.offer(plan);
  return [node];
}

/** Halves the purchases, or where only one is left, the counts of tall strips. */
function branch(gap: Gap, tree: PurchaseTree, node: Node, made: Generated): readonly Node[] {
  const { master } = gap;
  const { least, most } = node.box;
  const open = tree.supplies.filter((s) => s.unit > 0 && s.size > 0 && least[s.cloth]! < most[s.cloth]!);
  const taken = takenOf(gap, made);
  // Where one cloth alone is paid for, nothing is to be weighed against it.
  const split = (open.length > 1 ? open : [])
    .map((s) => {
      const units = taken[s.cloth]! > 1e-6 ? (taken[s.cloth]! + s.lost) / s.size : 0;
      const at = Math.min(most[s.cloth]! - 1, Math.max(least[s.cloth]!, Math.floor(units + 1e-6)));
      const whole = Math.abs(units - Math.round(units)) < 1e-4;
      return { cloth: s.cloth, at, off: whole ? 0 : Math.min(units - at, at + 1 - units) };
    })
    .sort((a, b) => b.off - a.off)[0];
  if (split) {
    const put = (list: readonly number[], value: number) => list.map((v, i) => (i === split.cloth ? value : v));
    const common = { splits: node.splits, cuts: node.cuts, bound: node.bound, patience: PATIENCE };
    return [
      { ...common, box: { least, most: put(most, split.at) } },
      { ...common, box: { least: put(least, split.at + 1), most } },
    ];
  }
  const shared = branchSplit(node, made);
  if (shared) return shared;
  const tall = branchHeight(master, made.solution.strips);
  if (!tall) {
    tree.stuck.push({ ...node, patience: node.patience * 4 });
    return [];
  }
  const below = Math.floor(tall.sum + 1e-6);
  return [
    { least: 0, most: below },
    { least: below + 1, most: Infinity },
  ].map((counts) => ({ ...node, cuts: [...node.cuts, { height: tall.height, ...counts }], patience: PATIENCE }));
}

/** By cloth: the length of strips, or the pieces, that so many units of each supply give. */
function holds(cloths: number, supplies: readonly Supply[], units: readonly number[]): readonly number[] {
  const caps = new Array<number>(cloths).fill(0);
  supplies.forEach((s, i) => {
    caps[s.cloth] = s.unit > 0 ? usableOf(s, units[i]!) : s.size * Math.min(s.stock, Number.MAX_VALUE);
  });
  return caps;
}

function capsOf(cloths: number, supplies: readonly Supply[], box: PurchaseBox): readonly number[] {
  const caps = new Array<number>(cloths).fill(Infinity);
  for (const s of supplies) {
    const most = Math.min(box.most[s.cloth]!, s.stock);
    if (most < Infinity) caps[s.cloth] = usableOf(s, most);
  }
  return caps;
}

/** By cloth: the length of strips, or the pieces, that the linear programme takes. */
function takenOf({ master }: Gap, { solution }: Generated): readonly number[] {
  const taken = master.job.cloths.map(() => 0);
  master.strips.forEach((s, i) => {
    const { clothIndex, cloth } = master.families[s.family]!;
    if (isBolt(cloth)) taken[clothIndex]! += (solution.strips[i] ?? 0) * s.height;
  });
  master.pieces.forEach((p, i) => {
    taken[master.families[p.family]!.clothIndex]! += solution.pieces[i] ?? 0;
  });
  return taken;
}

const splitsOf = ({ master }: Gap): SplitBox | undefined =>
  master.shares.length === 0 ? undefined : wholeSplitBox(master.shares);

/** The plan made of what was chosen, for the demand that its split asks for. */
function planOf({ master }: Gap, chosen: Chosen, split: Split): Plan | null {
  const { job, families, shares } = master;
  if (shares.length === 0) return makePlan(job, families, master.demand, chosen);
  const plan = makePlan(job, families, demandOf(master.certain, shares, split), chosen);
  return plan && { ...plan, split };
}

/** Halves how many units one way of a share may have: of those left open, the one whose number is furthest from whole. */
function branchSplit(node: Node, { solution }: Generated): readonly Node[] | null {
  const { splits } = node;
  if (!splits) return null;
  const open = solution.split.flatMap((ways, s) =>
    ways.flatMap((units, w) => {
      const [least, most] = [splits.least[s]![w]!, splits.most[s]![w]!];
      const at = Math.min(most - 1, Math.max(least, Math.floor(units + 1e-6)));
      return least < most ? [{ s, w, at, off: Math.abs(units - Math.round(units)) }] : [];
    }),
  );
  const way = open.sort((a, b) => b.off - a.off)[0];
  if (!way) return null;
  const put = (split: Split, value: number) =>
    split.map((ways, s) => ways.map((n, w) => (s === way.s && w === way.w ? value : n)));
  return [
    { ...node, splits: { least: splits.least, most: put(splits.most, way.at) } },
    { ...node, splits: { least: put(splits.least, way.at + 1), most: splits.most } },
  ];
}
