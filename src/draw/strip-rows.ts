/** Strips in the order of cutting as they are told: one sitting after the other, those cut alike together. */

import { alike } from '../plan/alike-strips.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import { partOf } from '../plan/strip-parts.ts';
import type { ClothLengthDrawn, NumberedStrip } from './unroll.ts';

export interface StripRow {
  /** In order. */
  readonly strips: readonly NumberedStrip[];
  /** What is cut of the first of them, and so of each; null for the strip that squares the end. */
  readonly steps: StripSteps | null;
  /** Whether it is cut for the test block, before all that is not. */
  readonly isFirst: boolean;
}

/** A strip of which a part waits until the test block is sewn is told twice. */
export function stripRows({ strips }: ClothLengthDrawn, steps: readonly StripSteps[]): readonly StripRow[] {
  const rows: { strips: NumberedStrip[]; steps: StripSteps | null; isFirst: boolean }[] = [];
  for (const isFirst of [true, false]) {
    for (const strip of strips) {
      const whole = steps.find((one) => one.layout === strip.layout && one.strip === strip.strip) ?? null;
      const own = whole === null ? null : partOf(whole, strip.held, isFirst);
      if (whole === null ? strip.isTest !== isFirst : own === null) {
        continue;
      }
      const last = rows.at(-1);
      if (last?.isFirst === isFirst && last.steps !== null && own !== null && alike(last.steps, own)) {
        last.strips.push(strip);
      } else {
        rows.push({ strips: [strip], steps: own, isFirst });
      }
    }
  }
  return rows;
}
