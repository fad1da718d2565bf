/**
 * The proof-reader: reads a plan from outside, knowing the job and the answer and nothing of how the plan was found. It
 * lists only what is wrong, by how much. It shares no code with the search, so that one mistake cannot hide another.
 */
import type { Layout, LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { hull } from './convex.ts';
import { convexParts } from './convex-parts.ts';
import { demandFaults, overdrawnFaults } from './demand.ts';
import { type Fault, TOUCH } from './fault.ts';
import { moneyFaults, proofFaults } from './money.ts';
import { oneClothFaults } from './one-cloth.ts';
import { overlapFaults } from './overlaps.ts';
import { type LaidLayout, layBlanks } from './placed.ts';
import { type Rules, rulesOf } from './rules.ts';
import { squaringFaults } from './squaring.ts';
import { stripFaults } from './strips.ts';

/**
 * Every rule of the job that the answer breaks; none for a clean plan.
 * @param job checked already (read-layout-job.ts)
 */
export function proofread(job: LayoutJob, answer: LayoutAnswer): readonly Fault[] {
  const rules = rulesOf(job);
  const faults: Fault[] = [];
  const laid: LaidLayout[] = [];
  answer.layouts.forEach((layout, index) => {
    const at = `layouts[${index}]`;
    const cloth = rules.cloths.get(layout.cloth);
    faults.push(...measureFaults(rules, layout, at));
    if (!cloth) return;
    const blanks = layBlanks(rules, cloth, layout, at);
    laid.push(blanks);
    faults.push(...blanks.faults, ...layoutFaults(rules, blanks, at));
  });
  faults.push(
    ...squaringFaults(rules, answer, laid),
    ...demandFaults(rules, answer),
    ...overdrawnFaults(rules, answer),
    ...oneClothFaults(rules, answer),
  );
  return [...faults, ...moneyFaults(rules, answer), ...proofFaults(answer)];
}

function measureFaults(rules: Rules, layout: Layout, at: string): readonly Fault[] {
  const faults: Fault[] = [];
  const cloth = rules.cloths.get(layout.cloth);
  if (!cloth) faults.push({ what: 'malformed', where: at, howMuch: `"${layout.cloth}" is no cloth of this job` });
  if (!(Number.isSafeInteger(layout.count) && layout.count > 0)) {
    faults.push({ what: 'malformed', where: `${at}.count`, howMuch: `${layout.count} is no number of times` });
  }
  if (!(Number.isFinite(layout.length) && layout.length > 0)) {
    faults.push({ what: 'malformed', where: `${at}.length`, howMuch: `${layout.length} is no length` });
  }
  const over = layout.length - (cloth?.length ?? Infinity);
  if (cloth && over > TOUCH * cloth.width) {
    faults.push({ what: 'outside the cloth', where: `${at}.length`, howMuch: `${over} more than the piece has` });
  }
  return faults;
}

function layoutFaults(rules: Rules, { cloth, layout, placed }: LaidLayout, at: string): readonly Fault[] {
  const isStrips = rules.job.method === 'strips';
  // Subcuts are straight, so a blank with a notch is cut from strips as its hull.
  const partsOf = isStrips ? (outline: Polygon) => [hull(outline)] : convexParts;
  const solids = placed.map(({ where, box, outline }) => ({ where, box, parts: partsOf(outline) }));
  const faults = overlapFaults(solids, TOUCH * cloth.width);
  if (isStrips) return [...faults, ...stripFaults(rules, cloth, layout, at, placed, faults.length > 0)];
  if (layout.strips === undefined) return faults;
  return [...faults, { what: 'strip', where: `${at}.strips`, howMuch: 'present, but shears cut no strips' }];
}
