/** A blank with what the job needs to know and the cut list does not tell. */
import type { Turns } from '../plan/layout-job.ts';
import type { Cloth } from '../quilt/quilt.ts';
import type { Blank } from './cut-list.ts';

export interface PlannedBlank {
  readonly blank: Blank;
  readonly cloths: readonly Cloth[];
  /** For each cloth. */
  readonly turns: readonly Turns[];
  readonly turnOver: readonly boolean[];
}
