/** What answers a question that is planned anew: the page's packers and cutter, or the command's. */
import type { CutList } from '../cutting/cut-list.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { LayoutAnswer, LayoutJob } from './layout-job.ts';

/** Plans one job; it may be asked for several at once. Each answer has been read by the proof-reader already. */
export type PlanJob = (job: LayoutJob) => Promise<LayoutAnswer>;

/** Makes a cut list, here or in a worker. */
export type CutQuilt = (quilt: Quilt) => CutList | Promise<CutList>;

export interface Answerer {
  readonly plan: PlanJob;
  readonly cut: CutQuilt;
}
