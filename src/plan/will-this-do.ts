/** Whether the cloth she has in hand will do; and if it is short, which of the plans that ask for less would fit. */
import type { CutList, Group, Problem } from '../cutting/cut-list.ts';
import { makeCutList } from '../cutting/make-cut-list.ts';
import { isDirectional } from '../cutting/turn-sets.ts';
import { clothsOf, inHand, withRoom, withTolerance } from '../cutting/variants.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import type { LayoutAnswer } from './layout-job.ts';
import { makeTally } from './make-tally.ts';
import type { PlanJob } from './side-by-side.ts';
import type { Tally } from './tally.ts';

/** Something asked for less of, for the patches cut from the cloth alone. */
export type Change =
  | { readonly kind: 'room'; readonly room: Length }
  | { readonly kind: 'facing'; readonly within: number }
  | { readonly kind: 'spares'; readonly spares: number };

/** One plan for the cloth in hand, and whether it fits. */
export interface Try {
  /** Together; none for the quilt as wanted. */
  readonly changes: readonly Change[];
  readonly quilt: Quilt;
  /** Of the cloth's group alone. */
  readonly cutList: CutList;
  readonly answers: readonly [LayoutAnswer];
  readonly tally: Tally;
  /** short: proved that no plan of strips fits; open: none was found, and it is not proved that there is none. */
  readonly verdict: 'fits' | 'short' | 'open';
  /** What the plan takes of the cloth in hand, and what is there: lengths as washed, in the quilt's unit. */
  readonly takes: number;
  readonly there: number;
}

export interface WillItDo {
  readonly cloth: string;
  readonly have: Length;
  /** The quilt as wanted first; then each change alone; then, where none of those fits, all together. */
  readonly tries: readonly Try[];
  /** The first that fits. */
  readonly suffices: Try | null;
}

/**
 * The least of the cloth that any plan takes which serves for what a try asks: a plan found with more asked for does.
 * A search that fails to fit looks no further, so that a later try's own plan may be the longer one.
 */
export function leastTaken(tries: readonly Try[], wanted: Try): number {
  return Math.min(...tries.filter((each) => each === wanted || asksMore(each, wanted)).map((each) => each.takes));
}

function asksMore(a: Try, b: Try): boolean {
  const placed = a.answers[0].unplaced.length === 0;
  return placed && a.changes.every((change) => b.changes.some((other) => isNoStricter(other, change, b.quilt)));
}

/** Whether a change asks for as little as another of its kind, or less. */
function isNoStricter(change: Change, than: Change, { unit }: Quilt): boolean {
  if (change.kind === 'room' && than.kind === 'room') {
    return lengthIn(unit, change.room) <= lengthIn(unit, than.room);
  }
  return JSON.stringify(change) === JSON.stringify(than);
}

/** How far off a print may point before most eyes see it. */
const TOLERANCE = 8;

/** Less room than is usual, and none. */
const ROOMS = { in: ['1/8 in', 0], cm: ['3 mm', 0] } as const;

/**
 * Plans the quilt's cloth from what she has of it and, where that is short, with less asked for: each change alone and, where
 * none of them is enough, all together. Only the group of cloths that share blanks with it is planned. A change that makes
 * no difference to what is cut is not tried.
 * @param have length in hand, at the cloth's whole width, as bought and unwashed; bare numbers in the quilt's unit
 * @param plan each answer read by the proof-reader already
 * @param onTry told each plan as it comes
 * @throws RangeError where the quilt has no such cloth, the scheme cuts nothing from it, or the length is not above zero
 */
export async function willThisDo(
  quilt: Quilt,
  cloth: string,
  have: Length,
  plan: PlanJob,
  onTry: (found: Try) => void = () => {},
): Promise<WillItDo> {
  const alone = isAlone(quilt, cloth, have);
  const ask = (changes: readonly Change[]) => askedFor(changed(quilt, cloth, changes), changes, cloth, have, alone);
  const attempt = async (asked: Asked): Promise<Try> => {
    const found = judged(asked, cloth, await plan(asked.group.job));
    onTry(found);
    return found;
  };
  const wanted = ask([]);
  const known = new Set([jobKey(wanted)]);
  const isNew = (asked: Asked): boolean => {
    const before = known.size;
    return known.add(jobKey(asked)).size > before;
  };
  const tries = [await attempt(wanted)];
  if (!tries.some(fits)) {
    const each = changesFor(quilt, cloth)
      .map((change) => ask([change]))
      .filter(isNew);
    tries.push(...(await Promise.all(each.map(attempt))));
    if (!tries.some(fits)) {
      const all = together(each.flatMap(({ changes }) => changes)).map(ask);
      tries.push(...(await Promise.all(all.filter(isNew).map(attempt))));
    }
  }
  return { cloth, have, tries, suffices: tries.find(fits) ?? null };
}

const fits = (each: Try): boolean => each.verdict === 'fits';

/** All changes that can be made, the gentlest first. */
function changesFor(quilt: Quilt, cloth: string): readonly Change[] {
  const rooms = ROOMS[quilt.unit].map((room): Change => ({ kind: 'room', room }));
  const directional = quilt.cloths.some((each) => each.id === cloth && isDirectional(each));
  return [
    ...rooms,
    ...(directional ? [{ kind: 'facing', within: TOLERANCE } as const] : []),
    ...(quilt.spares > 0 ? [{ kind: 'spares', spares: quilt.spares - 1 } as const] : []),
  ];
}

/** Every change at once, once with each of the rooms. */
function together(alone: readonly Change[]): readonly (readonly Change[])[] {
  const rooms = alone.filter((change) => change.kind === 'room');
  const others = alone.filter((change) => change.kind !== 'room');
  const all = rooms.length === 0 ? [others] : rooms.map((room) => [room, ...others]);
  return all.filter((changes) => changes.length > 1);
}

function changed(quilt: Quilt, cloth: string, changes: readonly Change[]): Quilt {
  const roles = (role: string) => clothsOf(quilt, role).some((each) => each.id === cloth);
  const atMost = (a: Length, b: Length) => (lengthIn(quilt.unit, a) <= lengthIn(quilt.unit, b) ? a : b);
  let after = quilt;
  for (const change of changes) {
    if (change.kind === 'room') {
      after = withRoom(after, change.room, atMost, roles);
    } else if (change.kind === 'facing') {
      after = withTolerance(after, change.within, roles);
    } else {
      after = { ...after, spares: change.spares };
    }
  }
  return after;
}

/** What a try plans. */
interface Asked {
  readonly changes: readonly Change[];
  readonly quilt: Quilt;
  readonly cutList: CutList;
  readonly group: Group;
}

/** Whether no other cloth can be bought for what is cut from this one. */
function isAlone(quilt: Quilt, cloth: string, have: Length): boolean {
  if (!quilt.cloths.some((each) => each.id === cloth)) {
    const ids = quilt.cloths.map((each) => `“${each.id}”`).join(', ');
    throw new RangeError(`The quilt has no cloth “${cloth}”; its cloths are ${ids}.`);
  }
  if (!(lengthIn(quilt.unit, have) > 0)) {
    throw new RangeError(`A length in hand must be above zero; found ${JSON.stringify(have)}.`);
  }
  const { group } = askedFor(quilt, [], cloth, have, true);
  return quilt.cloths.every((each) => each.id === cloth || each.step === undefined || !group.cloths.includes(each.id));
}

/** The cut list of the one group that the cloth is in, with nothing more of it to be had than is in hand. */
function askedFor(quilt: Quilt, changes: readonly Change[], cloth: string, have: Length, alone: boolean): Asked {
  const limited = inHand(quilt, cloth, have, alone);
  const all = makeCutList(limited);
  const group = all.groups.find((each) => each.cloths.includes(cloth));
  if (group === undefined) {
    throw new RangeError(`Nothing is cut from the cloth “${cloth}” in this scheme.`);
  }
  const concerns = ({ cloth: of, role }: Problem): boolean =>
    of === undefined
      ? role !== undefined && clothsOf(quilt, role).some((each) => group.cloths.includes(each.id))
      : group.cloths.includes(of);
  return { changes, quilt: limited, cutList: { groups: [group], problems: all.problems.filter(concerns) }, group };
}

function judged({ changes, quilt, cutList, group }: Asked, cloth: string, answer: LayoutAnswer): Try {
  const tally = makeTally(quilt, cutList, [answer]);
  const mine = tally.cloths.find((each) => each.cloth === cloth)!;
  // The bolt sold in one length, or else the piece.
  const index = group.lengths.findIndex(
    (length) => length.cloth === cloth && (length.piece === null || length.piece === 'in hand'),
  );
  const job = group.job.cloths[index];
  const bolt = job !== undefined && job.length == null;
  const there = job === undefined ? 0 : ((bolt ? job.step : job.length) ?? 0);
  const takes = bolt
    ? mine.need
    : answer.layouts.reduce((sum, layout) => sum + (layout.cloth === job?.id ? layout.count * layout.length : 0), 0);
  const enough = answer.unplaced.length === 0 && (!bolt || (mine.steps ?? 0) <= 1);
  const proved = bolt && (mine.proof.atLeast ?? 0) > 1;
  const verdict = enough ? 'fits' : proved ? 'short' : 'open';
  return { changes, quilt, cutList, answers: [answer], tally, verdict, takes, there };
}

const jobKey = ({ group }: Asked): string => JSON.stringify(group.job);
