/** Takes a plan for the cloth in hand over into the quilt: what was given up, the cloth on the shelf, and the plan itself. */
import type { CutList, Group } from '../cutting/cut-list.ts';
import { IN_HAND, onShelf } from '../cutting/variants.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { type Change, givenUp } from './give-up.ts';
import type { Layout, LayoutAnswer, LayoutJob, Placement, Strip } from './layout-job.ts';
import { stepsFor } from './say-steps.ts';
import type { Try } from './try-with-hand.ts';

/**
 * The quilt with that given up and so much of the cloth on its shelf. The cloth can still be bought as it could.
 * @param quilt which has the cloth; its scheme may have changed since
 */
export const takenOver = (quilt: Quilt, cloth: string, have: Length, changes: readonly Change[]): Quilt =>
  onShelf(givenUp(quilt, cloth, changes), cloth, have);

/** A plan that is known already for a job. */
export interface KnownPlan {
  readonly job: LayoutJob;
  readonly answer: LayoutAnswer;
}

/**
 * The plan that a try found, as plans for the quilt that took it over: there what is in hand is a piece on the shelf, which
 * lost its squaring before it is planned, and no bolt sold in one length.
 * @param cutList of the quilt that took the try over
 * @returns plans still to be read by a proof-reader; none for groups that the try knows nothing of, or that did not fit
 */
export function knownPlans(cutList: CutList, found: Try, cloth: string): readonly KnownPlan[] {
  return found.verdict !== 'fits'
    ? []
    : cutList.groups.flatMap((group) => {
        const index = found.cutList.groups.findIndex(({ id }) => id === group.id);
        const answer = found.answers[index];
        const before = found.cutList.groups[index];
        return answer === undefined || before === undefined || !sameBlanks(before, group)
          ? []
          : [{ job: group.job, answer: asOnShelf(before.job, group.job, answer, cloth) }];
      });
}

const sameBlanks = (a: Group, b: Group): boolean =>
  JSON.stringify(a.job.blanks.map(({ id, demand, shapes }) => [id, demand, shapes])) ===
  JSON.stringify(b.job.blanks.map(({ id, demand, shapes }) => [id, demand, shapes]));

function asOnShelf(before: LayoutJob, job: LayoutJob, answer: LayoutAnswer, cloth: string): LayoutAnswer {
  const own = answer.layouts.filter((layout) => layout.cloth === cloth);
  const squaring = before.cloths.find(({ id }) => id === cloth)?.squaring ?? 0;
  const others = answer.layouts.filter((layout) => layout.cloth !== cloth);
  const piece = own.length === 0 ? [] : [onePiece(own, `${cloth}/${IN_HAND}`, squaring)];
  const layouts = [...others, ...piece];
  const cost = costOf(job, layouts);
  return {
    ...answer,
    status: cost > 1e-6 ? 'feasible' : 'optimal',
    cost,
    bound: 0,
    boundFrom: 'nothing: a plan found before serves',
    layouts,
  };
}

/** Layouts that lay end to end along a bolt as the one layout of a piece, without what was squared off the bolt's end. */
function onePiece(layouts: readonly Layout[], piece: string, squaring: number): Layout {
  const strips: Strip[] = [];
  const placements: Placement[] = [];
  let end = -squaring;
  for (const layout of layouts.flatMap((each) => Array.from({ length: each.count }, () => each))) {
    const begin = end;
    const moved = (layout.strips ?? []).map((strip) => ({ ...strip, from: tidy(strip.from + begin) }));
    strips.push(...moved.filter(({ from }) => from >= 0));
    placements.push(...layout.placements.map((placement) => ({ ...placement, y: tidy(placement.y + begin) })));
    end += layout.length;
  }
  return { cloth: piece, count: 1, length: tidy(end), firstCut: 'across', strips, placements };
}

/** Sums of lengths leave noise, which would set strips and their blanks apart. */
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

function costOf(job: LayoutJob, layouts: readonly Layout[]): number {
  return job.cloths.reduce((sum, { id, length, step, cost }) => {
    const own = layouts.filter((layout) => layout.cloth === id);
    if (length != null) {
      return sum + own.reduce((count, layout) => count + layout.count, 0) * (cost ?? length);
    }
    const taken = own.reduce((total, layout) => total + layout.count * layout.length, 0);
    return sum + (step === undefined ? taken : stepsFor(taken, step) * step) * (cost ?? 1);
  }, 0);
}
