/** Cost, pieces, squared ends, status and bound. */
import type { JobCloth, LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { layOutline, shapeFor } from './check-lies.ts';
import { SLACK } from './rings.ts';

export function checkMoney(job: LayoutJob, answer: LayoutAnswer): string[] {
  const wrong: string[] = [];
  let cost = 0;
  for (const cloth of job.cloths) {
    const layouts = answer.layouts.filter((layout) => layout.cloth === cloth.id);
    if (layouts.length === 0) continue;
    if (cloth.length != null) {
      const pieces = layouts.map((layout) => layout.count).reduce((a, b) => a + b);
      if (cloth.count !== null && pieces > (cloth.count ?? 1)) wrong.push(`${pieces} pieces of ${cloth.id} cut`);
      cost += pieces * (cloth.cost ?? cloth.length);
      continue;
    }
    const length = layouts.map((layout) => layout.length * layout.count).reduce((a, b) => a + b);
    cost += stepped(length, cloth.step) * (cloth.cost ?? 1);
    if (job.method === 'strips' && !isSquared(job, cloth, answer)) wrong.push(`the end of ${cloth.id} is not squared`);
  }
  const same = (a: number, b: number) => Math.abs(a - b) <= 1e-6 + 1e-9 * cost;
  if (!same(cost, answer.cost)) wrong.push(`cost ${answer.cost}, but the layouts cost ${cost}`);
  const { bound, status } = answer;
  const all = answer.unplaced.length === 0;
  const expected = !all ? 'partial' : bound !== null && same(bound, answer.cost) ? 'optimal' : 'feasible';
  if (status !== expected) wrong.push(`status ${status}, expected ${expected}`);
  if ((bound === null) === all) wrong.push(`bound ${bound} with ${answer.unplaced.length} kinds unplaced`);
  if (bound !== null && !(bound >= 0)) wrong.push(`bound ${bound}`);
  if (bound !== null && bound > answer.cost && !same(bound, answer.cost)) wrong.push(`bound ${bound} above the cost`);
  return wrong;
}

function stepped(length: number, step: number | undefined): number {
  if (step === undefined) return length;
  let steps = 0;
  while (steps * step < length - 1e-6 * step) steps += 1;
  return steps * step;
}

function isSquared(job: LayoutJob, cloth: JobCloth, answer: LayoutAnswer): boolean {
  if (!cloth.squaring) return true;
  return answer.layouts.some((layout) => {
    const strip = layout.strips?.[0];
    if (layout.cloth !== cloth.id || !strip) return false;
    const slack = SLACK * cloth.width;
    if (layout.firstCut === 'along') return layout.placements.length === 0 && layout.length >= cloth.squaring! - slack;
    const lowest = layout.placements.map((placement) => {
      const blank = job.blanks.find((each) => each.id === placement.blank);
      const shape = blank && shapeFor(blank, cloth.id, placement.shape);
      return Math.min(...layOutline(shape?.outline ?? [[0, 0]], placement, false).map((p) => p[1]));
    });
    return strip.height >= cloth.squaring! - slack && Math.min(...lowest) >= strip.height - slack;
  });
}
