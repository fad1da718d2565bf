/** A group of cloth round a job, as far as order, folds and bags need one. */
import type { Blank, Group, PatchUse } from '../../src/cutting/cut-list.ts';
import type { LayoutJob } from '../../src/plan/layout-job.ts';

/** @param uses for each blank that is in a block */
export function groupOf(
  job: LayoutJob,
  uses: Readonly<Record<string, readonly PatchUse[]>> = {},
  oneWay?: 'along' | 'across',
): Group {
  return {
    id: 'group',
    cloths: job.cloths.map(({ id }) => id),
    job,
    lengths: job.cloths.map(({ id, length }) => ({
      id,
      cloth: id,
      piece: length == null ? null : id,
      ...(oneWay === undefined ? {} : { oneWay }),
    })),
    blanks: job.blanks.map(
      (blank): Blank => ({
        id: blank.id,
        role: 'all',
        demand: blank.demand,
        spares: 0,
        shapes: (blank.shapes ?? [blank]).map(({ outline }) => ({ kind: 'outline', outline: outline! })),
        patch: [],
        finishedArea: 1,
        sewnArea: 1,
        uses: uses[blank.id] ?? [],
        directional: true,
        joined: null,
      }),
    ),
  };
}

/** One use of a patch in every copy of a block at a turn. */
export const use = (block: string, turn = 0, count = 1): PatchUse => ({
  block,
  unit: 'A',
  patch: 1,
  place: 0,
  mirrored: false,
  count,
  turn,
});
