/** Jobs on a few packers, one after another on each, as they are asked for. */
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';
import type { GroupPacker } from './plan-groups.ts';

/**
 * A plan for any number of jobs. Each is given an equal share of the time that is left when its turn comes, so that what a
 * quick one does not need goes to those after it.
 * @param seconds wall time for all of them, from now
 * @param now the clock, in seconds
 * @param most what one job may take of it, where others will be asked for once it is answered
 */
export function queuePackers(
  packers: readonly GroupPacker[],
  seconds: number,
  now: () => number,
  most = Number.POSITIVE_INFINITY,
): (job: LayoutJob) => Promise<LayoutAnswer> {
  const end = now() + seconds;
  const idle = [...packers];
  const wake: (() => void)[] = [];
  let unstarted = 0;
  return async (job) => {
    unstarted++;
    // Jobs asked for in the same breath are all counted before the first takes its share.
    await Promise.resolve();
    while (idle.length === 0) {
      await new Promise<void>((resolve) => wake.push(resolve));
    }
    const packer = idle.pop()!;
    const rounds = Math.max(1, unstarted / packers.length);
    unstarted--;
    const share = Math.min(most, (end - now()) / rounds);
    try {
      return await packer.plan({ ...job, seconds: Math.max(1, share) });
    } finally {
      idle.push(packer);
      wake.shift()?.();
    }
  };
}
