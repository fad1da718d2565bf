/** Plans the groups of a cut list on a few packers, one group after another on each. */
import type { Group } from '../cutting/cut-list.ts';
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';

/** As much of a packer as is needed here. */
export interface GroupPacker {
  plan(job: LayoutJob): Promise<LayoutAnswer>;
}

export interface PlannedGroup {
  readonly job: LayoutJob;
  readonly answer: LayoutAnswer;
}

/**
 * The plans in the order of the groups. Each group is given an equal share of the time that is left when its turn comes,
 * so that what a quick one does not need goes to those after it.
 * @param seconds wall time for all of them
 * @param now the clock, in seconds
 */
export async function planGroups(
  groups: readonly Pick<Group, 'job'>[],
  packers: readonly GroupPacker[],
  seconds: number,
  now: () => number,
): Promise<readonly PlannedGroup[]> {
  const end = now() + seconds;
  const plans: PlannedGroup[] = [];
  let next = 0;
  const work = async (packer: GroupPacker): Promise<void> => {
    while (next < groups.length) {
      const index = next++;
      const waiting = Math.max(1, (groups.length - index) / packers.length);
      const share = Math.max(1, (end - now()) / waiting);
      const job = { ...groups[index]!.job, seconds: share };
      plans[index] = { job, answer: await packer.plan(job) };
    }
  };
  await Promise.all(packers.map(work));
  return plans;
}
