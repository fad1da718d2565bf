/** A sewing order as she types it, checked step by step. */
import type { Unit } from '../quilt/quilt.ts';
import { sayList, sayStepFault } from './say-step-fault.ts';
import { type Seam, stepOnto } from './sewing-step.ts';
import { type SewingUnit, sewingUnit, usualTolerance } from './sewing-unit.ts';

/** Indices of the patches with the seam of each, the first without; or why it will not do, in words for a person. */
export type CheckedOrder =
  | { readonly order: readonly number[]; readonly seams: readonly (Seam | null)[] }
  | { readonly fault: string };

/** "1 3 2", "A1, A3, A2": numbers of the unit's patches, each once. */
export function checkTypedOrder(text: string, unit: Unit): CheckedOrder {
  const words = text.split(/[\s,;]+/).filter((word) => word !== '');
  const numbers = words.map((word) => (word.startsWith(unit.id) ? word.slice(unit.id.length) : word));
  const order = numbers.map((number) => unit.patches.findIndex((patch) => `${patch.number}` === number));
  const unknown = words[order.indexOf(-1)];
  const all = unit.patches.map((patch) => patch.number);
  if (unknown !== undefined) {
    return { fault: `Expected the numbers ${sayList(all.map(String))}, each once; found “${unknown}”.` };
  }
  const twice = order.find((index, i) => order.indexOf(index) !== i);
  if (twice !== undefined) {
    return {
      fault: `${unit.patches[twice]!.number} is there twice; expected each of ${sayList(all.map(String))} once.`,
    };
  }
  const missing = all.filter((_, index) => !order.includes(index));
  return missing.length > 0
    ? { fault: `${sayList(missing.map(String))} ${missing.length === 1 ? 'is' : 'are'} missing.` }
    : checkOrder(unit, order);
}

/** @param order indices of all the unit's patches */
export function checkOrder(unit: Unit, order: readonly number[]): CheckedOrder {
  const outlines = unit.patches.map((patch) => patch.outline);
  const ready = sewingUnit(outlines, usualTolerance(outlines));
  return stepsOf(unit, ready, order);
}

function stepsOf(unit: Unit, ready: SewingUnit, order: readonly number[]): CheckedOrder {
  const names = unit.patches.map((patch) => `${unit.id}${patch.number}`);
  const before = unit.patches.map(() => false);
  const seams: (Seam | null)[] = [];
  for (const [place, index] of order.entries()) {
    const step = place === 0 ? { seam: null } : stepOnto(ready, index, before);
    if ('fault' in step) {
      return { fault: `${names[index]} ${sayStepFault(step.fault, names)}.` };
    }
    seams.push(step.seam);
    before[index] = true;
  }
  return { order, seams };
}
