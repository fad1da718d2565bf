/** What the planner tells: plain data that never changes once told. */
import type { CutList, Group } from '../cutting/cut-list.ts';
import type { LayoutAnswer, Progress } from '../plan/layout-job.ts';
import type { Tally } from '../plan/tally.ts';
import type { Quilt } from '../quilt/quilt.ts';

/** A plan that may be shown: every group of its cut list has a clean answer. */
export interface Plan {
  readonly quilt: Quilt;
  readonly cutList: CutList;
  /** In the order of cutList.groups. */
  readonly answers: readonly LayoutAnswer[];
  readonly tally: Tally;
}

/** waiting: for a packer. planned: as good as it gets in the time allowed. stopped: by her, with or without an answer. */
export type GroupStatus = 'waiting' | 'planning' | 'planned' | 'stopped' | 'failed';

export interface GroupState {
  readonly group: Group;
  readonly status: GroupStatus;
  readonly progress: Progress | null;
  /** When the present turn of its packer began, in milliseconds of `performance.now()`. */
  readonly since: number;
  /** The best so far. */
  readonly answer: LayoutAnswer | null;
  readonly error: string | null;
}

export interface PlannerState {
  /** What is wanted now, and the latest cut list: of this quilt, or of the one before while this one's is being made. */
  readonly quilt: Quilt | null;
  readonly cutList: CutList | null;
  readonly groups: readonly GroupState[];
  /** The last plan that was whole; it is of `quilt` when `current`. */
  readonly plan: Plan | null;
  readonly current: boolean;
  readonly busy: boolean;
  /** Why the quilt cannot be planned at all. */
  readonly error: string | null;
}
