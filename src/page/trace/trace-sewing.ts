/** What the sewing orders of traced units are, and why there is none, in words for a person. */
import { sayList, sayStepFault } from '../../cutting/say-step-fault.ts';
import { findSewingOrder, isSewable } from '../../cutting/sewing-order.ts';
import { stepOnto } from '../../cutting/sewing-step.ts';
import { sewingUnit, usualTolerance } from '../../cutting/sewing-unit.ts';
import type { Unit } from '../../quilt/quilt.ts';
import type { TracingOptions } from '../../quilt/tracing/draw-tracing.ts';
import type { Outline } from '../../shape/outline.ts';

export const TRACE_SEWING: NonNullable<TracingOptions['sewing']> = {
  find(outlines) {
    const found = findSewingOrder(outlines);
    return isSewable(found) ? found.order : null;
  },
  check(outlines, names) {
    const unit = sewingUnit(outlines, usualTolerance(outlines));
    for (let index = 1; index < outlines.length; index++) {
      const step = stepOnto(
        unit,
        index,
        outlines.map((_, i) => i < index),
      );
      if ('fault' in step) return `${names[index]} ${sayStepFault(step.fault, names)}`;
    }
    return null;
  },
};

/** Why a unit cannot be sewn on paper as one; empty where it can. */
export function whyUnsewn(unit: Unit): string {
  const names = unit.patches.map((patch) => `${unit.id}${patch.number}`);
  const found = findSewingOrder(unit.patches.map((patch): Outline => patch.outline));
  if (isSewable(found)) return '';
  const { patches, faults } = found.blocked;
  const cut = found.cuts.find(({ parted }) => parted.length === 0);
  const smaller = [...(cut?.parts ?? [])].sort((a, b) => a.length - b.length)[0];
  const mend =
    smaller === undefined
      ? ''
      : ` Give ${sayList(smaller.map((index) => names[index]!))} another unit’s letter, and each part can be sewn.`;
  const first = patches[0];
  const why =
    first === undefined || faults[0] === undefined ? '' : ` ${names[first]} ${sayStepFault(faults[0], names)}.`;
  return `Unit ${unit.id} has no sewing order on paper: ${sayList(patches.map((index) => names[index]!))} hold one another up.${why}${mend}`;
}
