import type { LayoutAnswer } from '../plan/layout-job.ts';

/**
 * The better of two answers to one job: fewer unplaced, then cheaper, then the later. It keeps the better of both bounds,
 * for each was proved of the job and not of one plan. Layouts that came again unchanged keep their identity, so that
 * nothing drawn from them is drawn anew.
 */
export function bestAnswer(old: LayoutAnswer | null, fresh: LayoutAnswer | null): LayoutAnswer | null {
  if (old === null || fresh === null) {
    return fresh ?? old;
  }
  const loss = unplacedCount(fresh) - unplacedCount(old) || fresh.cost - old.cost;
  const [kept, other] = loss > 1e-9 ? [old, fresh] : [fresh, old];
  const layouts = JSON.stringify(old.layouts) === JSON.stringify(fresh.layouts) ? old.layouts : kept.layouts;
  const best = withBoundOf({ ...kept, layouts }, other);
  const isOld = layouts === old.layouts && best.bound === old.bound && best.status === old.status;
  return isOld ? old : best;
}

function withBoundOf(kept: LayoutAnswer, other: LayoutAnswer): LayoutAnswer {
  if (kept.bound === null || other.bound === null || other.bound <= kept.bound) {
    return kept;
  }
  const status = kept.cost - other.bound <= 1e-6 ? 'optimal' : kept.status;
  return { ...kept, status, bound: other.bound, boundFrom: other.boundFrom };
}

const unplacedCount = (answer: LayoutAnswer): number => answer.unplaced.reduce((sum, { count }) => sum + count, 0);
