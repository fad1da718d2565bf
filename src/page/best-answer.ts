import type { LayoutAnswer } from '../plan/layout-job.ts';

/**
 * The better of two answers to one job: fewer unplaced, then cheaper; on a tie the later one, for its bound is as good or
 * better. Layouts that came again unchanged keep their identity, so that nothing drawn from them is drawn anew.
 */
export function bestAnswer(old: LayoutAnswer | null, fresh: LayoutAnswer | null): LayoutAnswer | null {
  if (old === null || fresh === null) {
    return fresh ?? old;
  }
  const loss = unplacedCount(fresh) - unplacedCount(old) || fresh.cost - old.cost;
  if (loss > 1e-9) {
    return old;
  }
  if (JSON.stringify(old.layouts) !== JSON.stringify(fresh.layouts)) {
    return fresh;
  }
  return old.bound === fresh.bound && old.status === fresh.status ? old : { ...fresh, layouts: old.layouts };
}

const unplacedCount = (answer: LayoutAnswer): number => answer.unplaced.reduce((sum, { count }) => sum + count, 0);
