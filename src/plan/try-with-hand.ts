/** One plan for the cloth in hand: what is planned, and whether it fits. */
import { kept } from '../cutting/cloth-lengths.ts';
import type { CutList, Group, Problem } from '../cutting/cut-list.ts';
import { clothsOf, IN_HAND, inHand } from '../cutting/variants.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import type { CutQuilt } from './answerer.ts';
import { type Change, givenUp } from './give-up.ts';
import type { LayoutAnswer } from './layout-job.ts';
import { makeTally } from './make-tally.ts';
import type { Tally } from './tally.ts';

/** What a try plans: the groups that the cloth, and any that stands in for it, are in. */
export interface Asked {
  readonly changes: readonly Change[];
  /** With the changes made and nothing more of the cloth to be had than is in hand. */
  readonly quilt: Quilt;
  readonly cutList: CutList;
}

export interface Try extends Asked {
  /** In the order of the groups. */
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
  /** short: proved that no plan of strips fits; open: none was found, and it is not proved that there is none. */
  readonly verdict: 'fits' | 'short' | 'open';
  /** What the plan takes of the cloth in hand, and what is there: lengths as washed, in the quilt's unit. */
  readonly takes: number;
  readonly there: number;
}

/**
 * @param quilt as wanted, nothing given up yet
 * What is to be planned with some changes made. Only the groups of cloths concerned are in it.
 */
export async function askFor(
  quilt: Quilt,
  cloth: string,
  have: Length,
  changes: readonly Change[],
  cut: CutQuilt,
): Promise<Asked> {
  const wanted = givenUp(quilt, cloth, changes);
  const bolt = inHand(wanted, cloth, have, true);
  const first = await cut(bolt);
  const own = first.groups.find((group) => group.cloths.includes(cloth));
  const isAlone = quilt.cloths.every(({ id, step }) => id === cloth || step === undefined || !own?.cloths.includes(id));
  const limited = isAlone ? bolt : inHand(wanted, cloth, have, false);
  const all = isAlone ? first : await cut(limited);
  const concerned = [cloth, ...changes.flatMap((change) => (change.kind === 'cloth' ? [change.cloth] : []))];
  const groups = all.groups.filter((group) => concerned.some((id) => group.cloths.includes(id)));
  return { changes, quilt: limited, cutList: { groups, problems: problemsOf(wanted, groups, all.problems) } };
}

function problemsOf(quilt: Quilt, groups: readonly Group[], problems: readonly Problem[]): readonly Problem[] {
  const cloths = new Set(groups.flatMap((group) => group.cloths));
  return problems.filter(({ cloth, role }) =>
    cloth === undefined
      ? role !== undefined && clothsOf(quilt, role).some(({ id }) => cloths.has(id))
      : cloths.has(cloth),
  );
}

/** What tells whether two tries plan the same. */
export const askedKey = ({ cutList }: Asked): string => JSON.stringify(cutList.groups.map(({ job }) => job));

/** @param have as it was asked with */
export function judged(asked: Asked, cloth: string, have: Length, answers: readonly LayoutAnswer[]): Try {
  const { quilt, cutList } = asked;
  const tally = makeTally(quilt, cutList, answers);
  const placed = answers.every(({ unplaced }) => unplaced.length === 0);
  const at = cutList.groups.findIndex((group) => group.cloths.includes(cloth));
  const group = cutList.groups[at];
  const mine = tally.cloths.find((each) => each.cloth === cloth);
  if (group === undefined || mine === undefined) {
    const washed = kept(quilt.cloths.find(({ id }) => id === cloth)!).along;
    const there = lengthIn(quilt.unit, have) * washed;
    return { ...asked, answers, tally, verdict: placed ? 'fits' : 'open', takes: 0, there };
  }
  // The bolt sold in one length, or else the piece.
  const index = group.lengths.findIndex(
    (length) => length.cloth === cloth && (length.piece === null || length.piece === IN_HAND),
  );
  const job = group.job.cloths[index];
  const bolt = job !== undefined && job.length == null;
  const there = job === undefined ? 0 : ((bolt ? job.step : job.length) ?? 0);
  const takes = bolt
    ? mine.need
    : answers[at]!.layouts.reduce(
        (sum, layout) => sum + (layout.cloth === job?.id ? layout.count * layout.length : 0),
        0,
      );
  const enough = placed && (!bolt || (mine.steps ?? 0) <= 1);
  const proved = bolt && (mine.proof.atLeast ?? 0) > 1;
  return { ...asked, answers, tally, verdict: enough ? 'fits' : proved ? 'short' : 'open', takes, there };
}
