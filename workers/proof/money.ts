/** Whether the cost is what the layouts cost, and whether the proof says no more than it may. */
import type { JobCloth, LayoutAnswer } from '../../src/plan/layout-job.ts';
import type { Fault } from './fault.ts';
import type { Rules } from './rules.ts';

export function moneyFaults(rules: Rules, answer: LayoutAnswer): readonly Fault[] {
  const costs = [...rules.cloths.values()].map((cloth) => costOf(cloth, answer));
  const cost = costs.reduce((sum, each) => sum + each, 0);
  if (Math.abs(cost - answer.cost) <= sameMoney(cost)) return [];
  return [{ what: 'money', where: 'cost', howMuch: `${answer.cost} said, the layouts cost ${cost}` }];
}

/** Of a bolt the length of all its layouts is bought, in whole steps where it is sold so; pieces cost each. */
function costOf(cloth: JobCloth, answer: LayoutAnswer): number {
  const layouts = answer.layouts.filter((layout) => layout.cloth === cloth.id);
  if (cloth.length !== null && cloth.length !== undefined) {
    const pieces = layouts.reduce((sum, layout) => sum + layout.count, 0);
    return pieces * (cloth.cost ?? cloth.length);
  }
  const length = layouts.reduce((sum, layout) => sum + layout.count * layout.length, 0);
  // Sold by the step, a length that outruns it by no more than a millionth of a step is not worth another.
  const bought = cloth.step === undefined ? length : Math.max(0, Math.ceil(length / cloth.step - 1e-6)) * cloth.step;
  return bought * (cloth.cost ?? 1);
}

/** Status, cost and bound must tell the same story. */
export function proofFaults(answer: LayoutAnswer): readonly Fault[] {
  const { status, cost, bound } = answer;
  const faults: Fault[] = [];
  const proof = (where: string, howMuch: string) => faults.push({ what: 'proof', where, howMuch });
  const isPartial = answer.unplaced.length > 0;
  if ((status === 'partial') !== isPartial) proof('status', `${status} with ${answer.unplaced.length} kinds unplaced`);
  if ((bound === null) !== isPartial)
    proof('bound', `${bound} where ${isPartial ? 'something' : 'nothing'} is unplaced`);
  if (bound !== null) {
    if (!Number.isFinite(bound) || bound < 0) proof('bound', `${bound} is no bound`);
    if (bound > cost + sameMoney(cost)) proof('bound', `${bound} is above the cost ${cost} by ${bound - cost}`);
    const meets = Math.abs(cost - bound) <= sameMoney(cost);
    if (!isPartial && (status === 'optimal') !== meets) proof('status', `${status} at cost ${cost} and bound ${bound}`);
  }
  if (typeof answer.boundFrom !== 'string') proof('boundFrom', `${answer.boundFrom} is no reason`);
  if (!(Number.isFinite(answer.seconds) && answer.seconds >= 0)) proof('seconds', `${answer.seconds} is no time`);
  return faults;
}

/** A millionth, and where sums are large what rounding adds to them. */
const sameMoney = (cost: number): number => 1e-6 + 1e-9 * Math.abs(cost);
