/** What can be said before anything is priced. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Family } from '../strips/family.ts';
import { isBolt } from './strip-master.ts';

/** The greater of two bounds on the cost: from area, and from the blank that needs most length. @param fixed cost of squaring */
export function simpleBound(job: LayoutJob, families: readonly Family[], demand: Int32Array, fixed: number): number {
  return Math.max(areaBound(job, families, demand, fixed), lengthBound(job, families, demand, fixed));
}

/** Where there is one bolt and nothing else, it must be as long as each blank needs at its best turn. */
function lengthBound(job: LayoutJob, families: readonly Family[], demand: Int32Array, fixed: number): number {
  if (job.cloths.length !== 1 || !isBolt(job.cloths[0]!)) return 0;
  let longest = 0;
  demand.forEach((d, blank) => {
    if (d === 0) return;
    let least = Infinity;
    for (const f of families)
      for (const v of f.variants) if (v.blank === blank) least = Math.min(least, f.along ? v.width : v.height);
    longest = Math.max(longest, least);
  });
  return fixed + longest * (job.cloths[0]!.cost ?? 1);
}

/** Blanks cannot take less cloth than their area, each at the cheapest, less what pieces that cost nothing could give. */
function areaBound(job: LayoutJob, families: readonly Family[], demand: Int32Array, fixed: number): number {
  const pieces = job.cloths.filter((c) => !isBolt(c));
  const bolts = job.cloths.filter(isBolt);
  if (pieces.some((c) => c.count === null) || bolts.length === 0) return 0;
  const rates = bolts.map((c) => (c.cost ?? 1) / c.width);
  if (pieces.length > 0 && Math.max(...rates) > Math.min(...rates) * (1 + 1e-9)) return 0;
  let cost = fixed;
  demand.forEach((d, blank) => {
    let least = Infinity;
    for (const f of families) {
      const rate = pieces.length > 0 ? rates[0]! : (f.cloth.cost ?? 1) / f.cloth.width;
      for (const v of f.variants) if (v.blank === blank) least = Math.min(least, v.area * rate);
    }
    if (d > 0) cost += d * least;
  });
  return Math.max(0, cost - pieces.reduce((sum, c) => sum + c.width * c.length! * (c.count ?? 1) * rates[0]!, 0));
}
