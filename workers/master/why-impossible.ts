/** Why a blank can be cut from no cloth at all, for a person: the strip that it would need. */
import type { JobBlank, LayoutJob } from '../../src/plan/layout-job.ts';
import { choicesOn } from '../strips/family.ts';
import { turnSet } from '../strips/turn-set.ts';
import { makeVariant } from '../strips/variant.ts';

export function whyImpossible(job: LayoutJob, blank: JobBlank): string {
  const allowed = job.cloths.filter((c) => choicesOn(blank, c.id).length > 0);
  if (allowed.length === 0) return 'no cloth may serve it';
  let least = Infinity;
  for (const cloth of allowed) {
    for (const { index, outline, turns } of choicesOn(blank, cloth.id)) {
      for (const t of turnSet(outline, turns))
        least = Math.min(least, makeVariant(0, index, outline, t, false, true).width);
    }
  }
  const widest = Math.max(...allowed.map((c) => c.width));
  const say = (v: number) => String(Math.round(v * 1000) / 1000);
  return least > widest
    ? `at its narrowest allowed turn it is ${say(least)} wide, and the widest cloth it may come from is ${say(widest)}`
    : `no piece it may come from is large enough at an allowed turn; it is ${say(least)} wide at its narrowest`;
}
