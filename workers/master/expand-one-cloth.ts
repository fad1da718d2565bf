/**
 * Blocks of one cloth each, as a job without them: a blank of such blocks becomes one for each list of cloths, and how many of
 * those are wanted follows from how the blocks are shared out (shares.ts).
 */
import type { ClothChoice, JobBlank, LayoutAnswer, LayoutJob, Unplaced } from '../../src/plan/layout-job.ts';
import type { Family } from '../strips/family.ts';
import type { Share, Split } from './shares.ts';
import { whyImpossible } from './why-impossible.ts';

export interface Expanded {
  readonly job: LayoutJob;
  readonly families: readonly Family[];
  /** By blank of the expanded job: what is wanted however blocks are shared out. */
  readonly certain: Int32Array;
  readonly shares: readonly Share[];
  readonly impossible: readonly Unplaced[];
  /** By blank of the expanded job: its id in the job as it was. */
  readonly ids: readonly string[];
  /** For each of the job's oneCloth: its share, and by way of that the list of cloths; null where no list will do. */
  readonly groups: readonly ({ readonly share: number; readonly lists: readonly number[] } | null)[];
}

const NO_LIST = 'no one of the cloths takes all that a block needs';

export function expandOneCloth(job: LayoutJob, familiesOf: (job: LayoutJob) => readonly Family[]): Expanded {
  const asked = job.oneCloth ?? [];
  const ids: string[] = [];
  const blanks: JobBlank[] = [];
  /** By blank, by list (and what lies in none): its place in the expanded job. */
  const places = new Map<string, readonly number[]>();
  for (const blank of job.blanks) {
    const group = asked.find((g) => Object.hasOwn(g.blanks, blank.id));
    const put = (own: JobBlank) => {
      ids.push(blank.id);
      return blanks.push(own) - 1;
    };
    if (!group || blank.demand === 0) {
      put(blank);
      continue;
    }
    const choices = blank.cloths ?? job.cloths.map((c) => c.id);
    const idOf = (c: ClothChoice) => (typeof c === 'string' ? c : c.id);
    const lists = [...group.cloths.map((l) => choices.filter((c) => l.includes(idOf(c)))), []];
    lists[lists.length - 1] = choices.filter((c) => !group.cloths.flat().includes(idOf(c)));
    places.set(
      blank.id,
      lists.map((cloths, k) => (cloths.length === 0 ? -1 : put({ ...blank, id: `${blank.id} (${k})`, cloths }))),
    );
  }
  const { oneCloth: _, ...rest } = job;
  const expanded: LayoutJob = { ...rest, blanks };
  const families = familiesOf(expanded);
  const canBeCut = blanks.map((_, b) => families.some((f) => f.variants.some((v) => v.blank === b)));
  const certain = Int32Array.from(blanks, (b) => b.demand);
  const impossible: Unplaced[] = [];
  const shares: Share[] = [];
  const lost = new Map<string, number>();
  for (const [id, at] of places) {
    for (const b of at) if (b >= 0) certain[b] = 0;
    const blank = job.blanks.find((b) => b.id === id)!;
    const inBlocks = asked.reduce((sum, g) => sum + g.blocks * (g.blanks[id] ?? 0), 0);
    const ways = at.flatMap((b) => (b >= 0 && canBeCut[b] ? [new Map([[b, 1]])] : []));
    if (ways.length === 0) impossible.push({ blank: id, count: blank.demand, why: whyImpossible(job, blank) });
    else if (blank.demand > inBlocks) shares.push({ total: blank.demand - inBlocks, ways });
  }
  const hopeless = new Set(impossible.map((u) => u.blank));
  const groups = asked.map((group) => {
    const parts = Object.entries(group.blanks).filter(([id]) => places.has(id) && !hopeless.has(id));
    if (group.blocks === 0 || parts.length === 0) return null;
    const fitting = [...group.cloths.keys()].filter((k) => parts.every(([id]) => canBeCut[places.get(id)![k]!]));
    if (fitting.length === 0) {
      for (const [id, n] of parts) lost.set(id, (lost.get(id) ?? 0) + n * group.blocks);
      return null;
    }
    const ways = fitting.map((k) => new Map(parts.map(([id, n]) => [places.get(id)![k]!, n])));
    return { share: shares.push({ total: group.blocks, ways }) - 1, lists: fitting };
  });
  for (const [blank, count] of lost) impossible.push({ blank, count, why: NO_LIST });
  blanks.forEach((blank, b) => {
    if (certain[b]! === 0 || canBeCut[b]) return;
    impossible.push({ blank: blank.id, count: certain[b]!, why: whyImpossible(job, blank) });
    certain[b] = 0;
  });
  return { job: expanded, families, certain, shares, impossible, ids, groups };
}

/** The answer to the job as it was, with how its blocks are shared out. */
export function collapse(job: LayoutJob, expanded: Expanded, answer: LayoutAnswer, split: Split): LayoutAnswer {
  const was = new Map(expanded.job.blanks.map((blank, b) => [blank.id, expanded.ids[b]!]));
  const short = new Map<string, Unplaced>();
  for (const each of answer.unplaced) {
    const blank = was.get(each.blank) ?? each.blank;
    const known = short.get(blank);
    short.set(blank, known ? { ...known, count: known.count + each.count } : { ...each, blank });
  }
  return {
    ...answer,
    layouts: answer.layouts.map((layout) => ({
      ...layout,
      placements: layout.placements.map((p) => ({ ...p, blank: was.get(p.blank)! })),
    })),
    unplaced: [...short.values()],
    oneCloth: (job.oneCloth ?? []).map(({ id, blocks, cloths }, g) => {
      const group = expanded.groups[g];
      // Where no list will do, nothing of the blocks is cut, and they may as well be said to be of the first.
      const counts = cloths.map((_, k) =>
        group ? (split[group.share]![group.lists.indexOf(k)] ?? 0) : k === 0 ? blocks : 0,
      );
      return { id, blocks: counts };
    }),
  };
}
