/** What facing and room cost, and what the usual rule of thumb would buy: the same quilt planned anew, side by side. */
import type { CutList, Group } from '../cutting/cut-list.ts';
import { makeCutList } from '../cutting/make-cut-list.ts';
import { boxedFromBolts, withoutFacing, withRoom } from '../cutting/variants.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { LayoutAnswer, LayoutJob } from './layout-job.ts';
import { makeTally } from './make-tally.ts';
import { ruleOfThumb } from './rule-of-thumb.ts';
import type { Tally } from './tally.ts';

/** Plans one job; it may be asked for several at once. */
export type PlanJob = (job: LayoutJob) => Promise<LayoutAnswer>;
/** Reads a plan from outside (workers/proof) and says what is wrong with it; nothing for a clean one. */
export type ReadAnswer = (job: LayoutJob, answer: LayoutAnswer) => readonly unknown[];

export type VersionKind = 'as wanted' | 'facing ignored' | 'no room' | 'rule of thumb';

/** A whole quilt planned: every answer a real plan that can be cut. */
export interface Version {
  readonly kind: VersionKind;
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
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
 * @throws Error when the rule's plan does not pass the reader: that is a fault in this program
 */
export async function sideBySide(planned: Planned, plan: PlanJob, read: ReadAnswer): Promise<readonly Version[]> {
  const relaxed = (kind: VersionKind, quilt: Quilt) => planRelaxed(kind, planned, quilt, plan);
  const [facing, room] = await Promise.all([
    relaxed('facing ignored', withoutFacing(planned.quilt)),
    relaxed(
      'no room',
      withRoom(planned.quilt, 0, () => 0),
    ),
  ]);
  return [versionOf('as wanted', planned), facing, room, byRule(planned.quilt, read)];
}

function versionOf(kind: VersionKind, { quilt, cutList, answers }: Planned): Version {
  return { kind, quilt, cutList, answers, tally: makeTally(quilt, cutList, answers) };
}

async function planRelaxed(kind: VersionKind, wanted: Planned, quilt: Quilt, plan: PlanJob): Promise<Version> {
  const cutList = makeCutList(quilt);
  const chosen = await Promise.all(
    cutList.groups.map(async (group): Promise<Pair> => {
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
      return isDearer(answer, before) ? { ...same, answer: unproved(before) } : { group, answer };
    }),
  );
  const answers = chosen.map(({ answer }) => answer);
  return versionOf(kind, { quilt, cutList: { ...cutList, groups: chosen.map(({ group }) => group) }, answers });
}

interface Pair {
  readonly group: Group;
  readonly answer: LayoutAnswer;
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

/** What was proved of the plan as wanted says nothing of one that asks for less. */
const unproved = (answer: LayoutAnswer): LayoutAnswer =>
  answer.bound === null
    ? answer
    : {
        ...answer,
        status: answer.cost > 1e-6 ? 'feasible' : 'optimal',
        bound: 0,
        boundFrom: 'nothing: the plan as wanted serves as well',
      };

/** A cloth that cannot be bought has no such rule, and is left out. */
function byRule(wanted: Quilt, read: ReadAnswer): Version {
  const quilt = boxedFromBolts(wanted);
  const all = makeCutList(quilt);
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
