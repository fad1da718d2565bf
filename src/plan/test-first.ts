/**
 * Test block first: one block is cut from the first strips and sewn before the rest is cut. Its blanks are planned alone, from
 * the least length; the rest is planned from what remains of its strips, of each bolt's selling step and of each shelf piece. To the engine
 * the length taken up front is what squaring is: lost once if any of the bolt is bought. Both are one purchase.
 */
import type { Group } from '../cutting/cut-list.ts';
import { copyTurns } from '../quilt/copy-turns.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { PlanJob } from './answerer.ts';
import { needsOf } from './bags.ts';
import { joinFirst } from './join-first.ts';
import { endOf, lengthOf } from './layout-extent.ts';
import type { ClothChoice, JobBlank, JobCloth, Layout, LayoutAnswer, LayoutJob } from './layout-job.ts';
import type { ReadAnswer } from './side-by-side.ts';
import { type StripEnd, stripEnds } from './strip-ends.ts';
import { oneClothOfRest, oneClothOfTest } from './test-one-cloth.ts';

/** Wall time for the test block: it is small, and what follows waits for it. */
const SECONDS = 3;

/** The job of the test block alone: one copy's blanks, as little length as will do; null where the group has none of them. */
export function testJob(quilt: Quilt, group: Group): LayoutJob | null {
  if (quilt.testBlock === undefined) {
    return null;
  }
  const block = quilt.blocks.find(({ id }) => id === quilt.testBlock);
  const turn = block === undefined ? undefined : copyTurns(block)[0];
  if (block === undefined || turn === undefined) {
    return null;
  }
  const needs = new Map(needsOf(block.id, turn, group.blanks));
  const blanks = withDemand(group.job.blanks, ({ id }) => needs.get(id) ?? 0);
  // Without a step a bolt costs its length. Cut across, so that its first strips are the first of the bolt.
  const cloths = group.job.cloths.map(
    ({ step: _, ...cloth }): JobCloth =>
      cloth.length == null && cloth.firstCut === 'either' ? { ...cloth, firstCut: 'across' } : cloth,
  );
  const { oneCloth, ...job } = group.job;
  const asked = oneClothOfTest(oneCloth ?? [], block.id, turn);
  return blanks.length === 0
    ? null
    : { ...job, seconds: SECONDS, cloths, blanks, ...(asked.length > 0 && { oneCloth: asked }) };
}

/** A cloth of the job for the rest: what it is of the whole job, and from which layout of the test block's plan it remains. */
export interface Remaining {
  readonly id: string;
  /** Index of the layout that was cut from it first. */
  readonly after: number;
}

export interface RestJob {
  readonly job: LayoutJob;
  readonly remaining: readonly Remaining[];
  /** What is left at the ends of the test block's strips. */
  readonly ends: readonly StripEnd[];
}

/**
 * The job of all that is left to cut once the test block is; null where that is nothing.
 * @param test the test block's plan, with nothing unplaced
 */
export function restJob(job: LayoutJob, test: LayoutAnswer): RestJob | null {
  const cut = new Map<string, number>();
  for (const { count, placements } of test.layouts) {
    for (const { blank } of placements) {
      cut.set(blank, (cut.get(blank) ?? 0) + count);
    }
  }
  const remaining: Remaining[] = [];
  const pieces = test.layouts.flatMap((layout, after): readonly JobCloth[] => {
    const cloth = job.cloths.find(({ id }) => id === layout.cloth)!;
    const piece = cloth.length == null ? null : remainsOf(cloth, cloth.length, layout, after);
    if (piece !== null) {
      remaining.push({ id: piece.id, after });
    }
    return piece === null ? [] : [piece];
  });
  const cloths = job.cloths.flatMap((cloth): readonly JobCloth[] => {
    const own = test.layouts.filter((layout) => layout.cloth === cloth.id);
    if (own.length === 0) {
      return [cloth];
    }
    if (cloth.length == null) {
      return [{ ...cloth, squaring: lengthOf(own) }];
    }
    const left = cloth.count === null ? null : (cloth.count ?? 1) - own.reduce((sum, { count }) => sum + count, 0);
    return left === 0 ? [] : [{ ...cloth, count: left }];
  });
  const ids = new Set(cloths.map(({ id }) => id));
  const left = withDemand(job.blanks, ({ id, demand }) => demand - (cut.get(id) ?? 0));
  const ends = stripEnds(job, test, left);
  const blanks = left.map((blank): JobBlank => {
    const choices = blank.cloths ?? job.cloths.map(({ id }) => id);
    const fromEnds = ends.flatMap((end) => endChoice(end, blank.id, choices, test));
    return { ...blank, cloths: [...choicesAfter(choices, ids, remaining, test), ...fromEnds] };
  });
  const all = [...cloths, ...pieces, ...ends.map(({ cloth }) => cloth)];
  if (blanks.length === 0) {
    return null;
  }
  const after = (id: string): readonly string[] => [
    ...(ids.has(id) ? [id] : []),
    ...remaining.filter(({ after: at }) => test.layouts[at]!.cloth === id).map((each) => each.id),
    ...ends.filter(({ layout }) => test.layouts[layout]!.cloth === id).map(({ cloth }) => cloth.id),
  ];
  const { oneCloth, ...whole } = job;
  const asked = oneClothOfRest(oneCloth ?? [], test.oneCloth ?? [], after);
  const own = asked.length > 0 && { oneCloth: asked };
  return { job: { ...whole, cloths: all, blanks, ...own }, remaining, ends };
}

function endChoice(
  { cloth, layout, turns }: StripEnd,
  blank: string,
  choices: readonly ClothChoice[],
  test: LayoutAnswer,
): readonly ClothChoice[] {
  const own = turns.get(blank);
  const whole = choices.find((each) => (typeof each === 'string' ? each : each.id) === test.layouts[layout]!.cloth);
  if (own === undefined || whole === undefined) {
    return [];
  }
  return [{ ...(typeof whole === 'string' ? {} : whole), id: cloth.id, turns: own }];
}

/** What remains of a piece is cut on as it was begun; it is paid for already. */
function remainsOf(cloth: JobCloth, length: number, layout: Layout, after: number): JobCloth | null {
  const end = endOf(layout);
  const along = layout.firstCut === 'along';
  const size = along ? { width: cloth.width - end, length } : { width: cloth.width, length: length - end };
  return size.width < 1e-6 || size.length < 1e-6
    ? null
    : {
        ...cloth,
        ...size,
        id: `${cloth.id} after ${after + 1}`,
        count: layout.count,
        cost: 0,
        firstCut: along ? 'along' : 'across',
      };
}

function withDemand(blanks: readonly JobBlank[], demand: (blank: JobBlank) => number): readonly JobBlank[] {
  return blanks.flatMap((blank) => (demand(blank) > 0 ? [{ ...blank, demand: demand(blank) }] : []));
}

/** A blank may be cut from what remains wherever it might have been cut from the whole. */
function choicesAfter(
  choices: readonly ClothChoice[],
  left: ReadonlySet<string>,
  remaining: readonly Remaining[],
  test: LayoutAnswer,
): readonly ClothChoice[] {
  return choices.flatMap((choice): readonly ClothChoice[] => {
    const id = typeof choice === 'string' ? choice : choice.id;
    const others = remaining
      .filter(({ after }) => test.layouts[after]!.cloth === id)
      .map((each) => (typeof choice === 'string' ? each.id : { ...choice, id: each.id }));
    return left.has(id) ? [choice, ...others] : others;
  });
}

/**
 * Plans the groups anew with the quilt's test block first. A group that has none of it keeps its answer; one whose test block
 * leaves too little for the rest, as where nothing can be bought, keeps its answer too and says so (testFirst.bound is null).
 * @param wholes the plans without that wish, in the order of the groups
 * @throws Error where a joined plan does not pass the reader: that is a fault in this program
 */
export async function planTestFirst(
  quilt: Quilt,
  groups: readonly Group[],
  wholes: readonly LayoutAnswer[],
  plan: PlanJob,
  read: ReadAnswer,
): Promise<readonly LayoutAnswer[]> {
  return Promise.all(
    groups.map(async (group, i) => {
      const job = testJob(quilt, group);
      if (job === null) {
        return wholes[i]!;
      }
      const test = await plan(job);
      const rest = test.unplaced.length > 0 ? null : restJob(group.job, test);
      const answer = rest === null ? null : await plan(rest.job);
      const joined = joinFirst({ block: quilt.testBlock!, job: group.job, test, rest, answer, whole: wholes[i]! });
      const [fault] = read(group.job, joined);
      if (fault !== undefined) {
        throw new Error(`the reader refuses the plan with the test block first: ${JSON.stringify(fault)}`);
      }
      return joined;
    }),
  );
}
