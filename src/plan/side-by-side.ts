/** What facing and room cost, and what the usual rule of thumb would buy: the same quilt planned anew, side by side. */
import type { CutList, Group } from '../cutting/cut-list.ts';
import { boxedFromBolts, withoutFacing, withRoom } from '../cutting/variants.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { Answerer, CutQuilt, PlanJob } from './answerer.ts';
import type { LayoutAnswer, LayoutJob } from './layout-job.ts';
import { makeTally } from './make-tally.ts';
import { ruleOfThumb } from './rule-of-thumb.ts';
import type { ClothTally, Tally } from './tally.ts';

/** Reads a plan from outside (workers/proof) and says what is wrong with it; nothing for a clean one. */
export type ReadAnswer = (job: LayoutJob, answer: LayoutAnswer) => readonly unknown[];

export type VersionKind = 'as wanted' | 'facing ignored' | 'no room' | 'rule of thumb';

/** A quilt planned: every answer a real plan that can be cut. */
export interface Version {
  readonly kind: VersionKind;
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
  /** False while some of its groups are still being planned: they are not in it yet. */
  readonly whole: boolean;
}

export interface Planned {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
}

/**
 * The plan as wanted and three others beside it. Groups that a change leaves alone keep their answer and are not planned again.
 * A plan that minds facing, or cuts with room, serves as well where neither is asked for; so where the search finds nothing
 * cheaper, that plan stands, and no version that asks for less is dearer than the plan as wanted.
 * @param onVersion told each version as it grows, group by group
 * @throws Error when the rule's plan does not pass the reader: that is a fault in this program
 */
export async function sideBySide(
  planned: Planned,
  by: Answerer & { readonly read: ReadAnswer },
  onVersion: (version: Version) => void = () => {},
): Promise<readonly Version[]> {
  const wanted = versionOf('as wanted', planned);
  onVersion(wanted);
  const rule = await byRule(planned.quilt, by);
  onVersion(rule);
  const [facing, room] = await Promise.all([
    planRelaxed('facing ignored', planned, withoutFacing(planned.quilt), by, onVersion),
    planRelaxed(
      'no room',
      planned,
      withRoom(planned.quilt, 0, () => 0),
      by,
      onVersion,
    ),
  ]);
  return [wanted, facing, room, rule];
}

function versionOf(kind: VersionKind, { quilt, cutList, answers }: Planned, whole = true): Version {
  return { kind, quilt, cutList, answers, tally: makeTally(quilt, cutList, answers), whole };
}

async function planRelaxed(
  kind: VersionKind,
  wanted: Planned,
  quilt: Quilt,
  { plan, cut }: Answerer,
  onVersion: (version: Version) => void,
): Promise<Version> {
  const cutList = await cut(quilt);
  const done = new Map<string, Pair>();
  const version = (): Version => {
    const pairs = cutList.groups.flatMap(({ id }) => done.get(id) ?? []);
    const planned = { ...cutList, groups: pairs.map(({ group }) => group) };
    const answers = pairs.map(({ answer }) => answer);
    const found = versionOf(kind, { quilt, cutList: planned, answers }, pairs.length === cutList.groups.length);
    return {
      ...found,
      tally: withProofs(
        found.tally,
        pairs.flatMap(({ proofs }) => proofs ?? []),
      ),
    };
  };
  await Promise.all(
    cutList.groups.map(async (group) => {
      done.set(group.id, await planGroup(group, wanted, quilt, plan));
      onVersion(version());
    }),
  );
  return version();
}

async function planGroup(group: Group, wanted: Planned, quilt: Quilt, plan: PlanJob): Promise<Pair> {
  const index = wanted.cutList.groups.findIndex((each) => each.id === group.id);
  const before = wanted.answers[index];
  if (before === undefined) {
    return { group, answer: await plan(group.job) };
  }
  const same = { group: wanted.cutList.groups[index]!, answer: before };
  if (sameJob(group.job, same.group.job)) {
    return same;
  }
  const answer = await plan(group.job);
  return isDearer(answer, before)
    ? {
        ...same,
        answer: servingToo(before, answer),
        proofs: makeTally(quilt, { groups: [group], problems: [] }, [answer]).cloths,
      }
    : { group, answer };
}

interface Pair {
  readonly group: Group;
  readonly answer: LayoutAnswer;
  /** Where the plan as wanted stands in: what the search that asked for less proved of each cloth. */
  readonly proofs?: readonly ClothTally[];
}

/** The plan as wanted in the place of a dearer one: of that which asks for less is proved only what its own search proved. */
function withProofs(tally: Tally, proved: readonly ClothTally[]): Tally {
  const cloths = tally.cloths.map((line): ClothTally => {
    const own = proved.find(({ cloth }) => cloth === line.cloth)?.proof;
    if (own === undefined) {
      return line;
    }
    const isLeast = own.atLeast !== null && (line.steps ?? line.need) - own.atLeast < 1e-6;
    const words = `The plan as wanted serves here too. ${isLeast ? 'Nothing that asks for less buys less.' : 'Whether less would do is not known.'}`;
    return { ...line, proof: { ...own, state: isLeast ? 'least' : 'gap', words } };
  });
  return { ...tally, cloths, provedLeast: cloths.every(({ proof }) => proof.state === 'least') };
}

/** How long a job may take, and by which seed it is searched, is no part of what it asks for. */
function sameJob(a: LayoutJob, b: LayoutJob): boolean {
  const asked = (job: LayoutJob) => JSON.stringify({ ...job, seconds: 0, seed: 0 });
  return asked(a) === asked(b);
}

/** Whether more is left out, or as much for more money. */
function isDearer(a: LayoutAnswer, b: LayoutAnswer): boolean {
  const missing = ({ unplaced }: LayoutAnswer) => unplaced.reduce((sum, each) => sum + each.count, 0);
  return missing(a) > missing(b) || (missing(a) === missing(b) && a.cost > b.cost + 1e-6);
}

/** What was proved of the plan as wanted says nothing of one that asks for less; what its own search proved says it of both. */
function servingToo(wanted: LayoutAnswer, less: LayoutAnswer): LayoutAnswer {
  if (wanted.bound === null) {
    return wanted;
  }
  const bound = Math.min(wanted.cost, less.bound ?? 0);
  const status = wanted.cost - bound > 1e-6 ? 'feasible' : 'optimal';
  return { ...wanted, status, bound, boundFrom: 'what the search that asked for less proved' };
}

/** A cloth that cannot be bought has no such rule, and is left out. */
async function byRule(wanted: Quilt, { cut, read }: { readonly cut: CutQuilt; readonly read: ReadAnswer }) {
  const quilt = boxedFromBolts(wanted);
  const all = await cut(quilt);
  const groups = all.groups.filter(({ job }) => job.cloths.length === 1 && job.cloths[0]!.length == null);
  const answers = groups.map(({ job }) => {
    const answer = ruleOfThumb(job);
    const [fault] = read(job, answer);
    if (fault !== undefined) {
      throw new Error(`the reader refuses the rule of thumb: ${JSON.stringify(fault)}`);
    }
    return answer;
  });
  return versionOf('rule of thumb', { quilt, cutList: { ...all, groups }, answers });
}
