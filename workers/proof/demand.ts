/** Whether exactly what was asked for is cut or said to be left out, from no more cloth than there is. */
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import type { Fault } from './fault.ts';
import type { Rules } from './rules.ts';

export function demandFaults(rules: Rules, answer: LayoutAnswer): readonly Fault[] {
  const cut = new Map<string, number>();
  for (const layout of answer.layouts) {
    for (const { blank } of layout.placements) cut.set(blank, (cut.get(blank) ?? 0) + layout.count);
  }
  const faults: Fault[] = [];
  const unplaced = new Map<string, number>();
  answer.unplaced.forEach((entry, index) => {
    const where = `unplaced[${index}]`;
    if (!rules.blanks.has(entry.blank)) {
      faults.push({ what: 'malformed', where, howMuch: `"${entry.blank}" is no blank of this job` });
    }
    if (!(Number.isSafeInteger(entry.count) && entry.count > 0)) {
      faults.push({ what: 'malformed', where, howMuch: `count ${entry.count}` });
    }
    if (!entry.why) faults.push({ what: 'malformed', where, howMuch: 'no reason given' });
    unplaced.set(entry.blank, (unplaced.get(entry.blank) ?? 0) + entry.count);
  });
  for (const [blank, { demand }] of rules.blanks) {
    const [placed, left] = [cut.get(blank) ?? 0, unplaced.get(blank) ?? 0];
    if (placed + left === demand) continue;
    const howMuch = `"${blank}": ${placed} cut and ${left} unplaced, ${demand} wanted`;
    faults.push({ what: 'demand', where: 'layouts', howMuch });
  }
  return faults;
}

/** A piece that is there three times can be cut three times. */
export function overdrawnFaults(rules: Rules, answer: LayoutAnswer): readonly Fault[] {
  return [...rules.cloths.values()].flatMap((cloth): readonly Fault[] => {
    if (cloth.length === null || cloth.length === undefined || cloth.count === null) return [];
    const there = cloth.count ?? 1;
    const taken = answer.layouts.reduce((sum, each) => sum + (each.cloth === cloth.id ? each.count : 0), 0);
    if (taken <= there) return [];
    return [{ what: 'overdrawn', where: 'layouts', howMuch: `"${cloth.id}": ${taken} cut, ${there} there` }];
  });
}
