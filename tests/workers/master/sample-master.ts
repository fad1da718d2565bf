/** A master over one or two cloths, made as the strips method makes it, for tests that look inside. */
import type { LayoutJob } from '../../../src/plan/layout-job.ts';
import { StripMaster } from '../../../workers/master/strip-master.ts';
import { openSolver, type Solver } from '../../../workers/programme/glpk.ts';
import { makeFamily } from '../../../workers/strips/family.ts';

export const solver: Solver = await openSolver();

/** Bolts cut across, pieces cut across; every piece one of its kind. */
export function sampleMaster(job: LayoutJob): StripMaster {
  const families = job.cloths.map((cloth, i) =>
    makeFamily(job, i, { along: false, span: cloth.width, stack: cloth.length ?? null, segment: null }),
  );
  const demand = Int32Array.from(job.blanks, (blank) => blank.demand);
  const stock = job.cloths.map((cloth) => (cloth.length == null ? Infinity : 1));
  return new StripMaster(solver, job, families, demand, stock);
}

/** Never asked to stop. */
export const goOn = async (): Promise<boolean> => true;
