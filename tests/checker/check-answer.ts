/**
 * A second reading of plans, for tests only, written apart from the proof-reader and by other means: overlaps from a
 * general library for clipping polygons instead of parting directions, subcuts from a one-dimensional search over the cut's slant
 * instead of hulls, turns judged by how the turned edges lie instead of by listed angles.
 */
import type { JobBlank, JobCloth, Layout, LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { checkBlankLies, type Laid, layOutline, shapeFor } from './check-lies.ts';
import { checkMoney } from './check-money.ts';
import { checkStrips } from './check-strips.ts';
import { SLACK, thicknessOutside, thicknessShared } from './rings.ts';

/** What is wrong with the answer, one sentence each; empty when it is clean. */
export function checkAnswer(job: LayoutJob, answer: LayoutAnswer): string[] {
  const wrong: string[] = [];
  for (const [index, layout] of answer.layouts.entries()) {
    const cloth = job.cloths.find((each) => each.id === layout.cloth);
    if (!cloth) wrong.push(`layout ${index}: no cloth ${layout.cloth}`);
    else wrong.push(...checkLayout(job, cloth, layout).map((fault) => `layout ${index}: ${fault}`));
  }
  return [...wrong, ...checkDemand(job, answer), ...checkOneCloth(job, answer), ...checkMoney(job, answer)];
}

function checkLayout(job: LayoutJob, cloth: JobCloth, layout: Layout): string[] {
  const wrong: string[] = [];
  if (!(layout.length > 0)) wrong.push(`${layout.length} long`);
  if (!(Number.isInteger(layout.count) && layout.count >= 1)) wrong.push(`cut ${layout.count} times`);
  if (cloth.length != null && layout.length > cloth.length + SLACK * cloth.width) wrong.push('longer than its piece');
  const laid: Laid[] = [];
  for (const [index, placement] of layout.placements.entries()) {
    const name = `blank ${index} (${placement.blank})`;
    const blank: JobBlank | undefined = job.blanks.find((each) => each.id === placement.blank);
    const shape = blank && shapeFor(blank, cloth.id, placement.shape);
    if (!shape || ![placement.x, placement.y, placement.turn].every(Number.isFinite)) {
      wrong.push(`${name}: may not be cut here`);
      continue;
    }
    wrong.push(...checkBlankLies(job, shape, placement).map((fault) => `${name}: ${fault}`));
    laid.push({ name, ring: layOutline(shape.outline, placement, job.method === 'strips') });
  }
  const slack = SLACK * cloth.width;
  for (const { name, ring } of laid) {
    const outside = thicknessOutside(ring, [0, cloth.width], [0, layout.length]);
    if (outside > slack) wrong.push(`${name}: lies outside the cloth, ${outside} thick`);
  }
  wrong.push(...checkOverlaps(laid, slack));
  if (job.method === 'strips') wrong.push(...checkStrips(job, cloth, layout, laid));
  return wrong;
}

function checkOverlaps(laid: readonly Laid[], slack: number): string[] {
  const wrong: string[] = [];
  const spans = laid.map(({ ring }) => {
    const xs = ring.map((p) => p[0]);
    const ys = ring.map((p) => p[1]);
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  });
  for (let i = 0; i < laid.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [spans[i]!, spans[j]!];
      if (a.x1 < b.x0 + slack || b.x1 < a.x0 + slack || a.y1 < b.y0 + slack || b.y1 < a.y0 + slack) continue;
      const [p, q] = [laid[i]!, laid[j]!];
      const shared = thicknessShared(p.ring, q.ring);
      if (shared > slack) wrong.push(`${p.name} and ${q.name} overlap, ${shared} thick`);
    }
  }
  return wrong;
}

/** Takes what each block needs out of what each list of cloths gives, block by block; what is left lacking must be unplaced. */
function checkOneCloth(job: LayoutJob, answer: LayoutAnswer): string[] {
  const wrong: string[] = [];
  const given = new Map<string, number>();
  for (const { cloth, count, placements } of answer.layouts)
    for (const { blank } of placements) given.set(`${cloth} ${blank}`, (given.get(`${cloth} ${blank}`) ?? 0) + count);
  const lacking = new Map(answer.unplaced.map(({ blank, count }) => [blank, count]));
  for (const group of job.oneCloth ?? []) {
    const told = answer.oneCloth?.find((each) => each.id === group.id)?.blocks ?? [];
    const blocks = told.flatMap((n, k) => Array.from({ length: n }, () => group.cloths[k] ?? []));
    if (told.length !== group.cloths.length || blocks.length !== group.blocks)
      wrong.push(`${group.id}: ${blocks.length} blocks of ${group.blocks}`);
    for (const list of blocks) {
      for (const [blank, n] of Object.entries(group.blanks)) {
        let left = n;
        for (const cloth of list) {
          const taken = Math.min(left, given.get(`${cloth} ${blank}`) ?? 0);
          given.set(`${cloth} ${blank}`, (given.get(`${cloth} ${blank}`) ?? 0) - taken);
          left -= taken;
        }
        lacking.set(blank, (lacking.get(blank) ?? 0) - left);
      }
    }
  }
  for (const [blank, left] of lacking) if (left < 0) wrong.push(`${blank}: ${-left} lacking in blocks of one cloth`);
  return wrong;
}

function checkDemand(job: LayoutJob, answer: LayoutAnswer): string[] {
  const wrong: string[] = [];
  for (const blank of job.blanks) {
    let met = 0;
    for (const layout of answer.layouts) {
      met += layout.count * layout.placements.filter((placement) => placement.blank === blank.id).length;
    }
    for (const entry of answer.unplaced) if (entry.blank === blank.id) met += entry.count;
    if (met !== blank.demand) wrong.push(`${blank.id}: ${met} cut or unplaced, ${blank.demand} asked for`);
  }
  for (const entry of answer.unplaced) {
    if (!job.blanks.some((blank) => blank.id === entry.blank)) wrong.push(`unplaced ${entry.blank} was not asked for`);
    if (!(Number.isInteger(entry.count) && entry.count >= 1))
      wrong.push(`unplaced ${entry.blank} ${entry.count} times`);
  }
  return wrong;
}
