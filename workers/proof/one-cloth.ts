/** Whether blocks that are to be of one cloth are: each list of cloths gives all that its blocks take. */
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import type { Fault } from './fault.ts';
import type { Rules } from './rules.ts';

export function oneClothFaults({ job }: Rules, answer: LayoutAnswer): readonly Fault[] {
  const groups = job.oneCloth ?? [];
  const faults: Fault[] = [];
  const told = groups.map((group, g) => {
    const where = `oneCloth[${g}]`;
    const own = answer.oneCloth?.[g];
    const counts = group.cloths.map((_, k) => own?.blocks[k] ?? Number.NaN);
    const whole = counts.every((n) => Number.isSafeInteger(n) && n >= 0);
    const sum = counts.reduce((a, b) => a + b, 0);
    if (own?.id !== group.id || own.blocks.length !== counts.length || !whole || sum !== group.blocks) {
      const howMuch = `"${group.id}": ${own ? own.blocks.join(' and ') : 'nothing'} told, ${group.blocks} blocks wanted`;
      faults.push({ what: 'one cloth', where, howMuch });
    }
    return counts;
  });
  if (faults.length > 0) return faults;
  for (const { id } of job.blanks) {
    const asking = groups.flatMap((group, g) => (group.blanks[id] === undefined ? [] : [{ group, g }]));
    const lists = asking[0]?.group.cloths ?? [];
    const missing = lists.reduce((sum, list, k) => {
      const needed = asking.reduce((n, { group, g }) => n + group.blanks[id]! * told[g]![k]!, 0);
      return sum + Math.max(0, needed - cutFrom(answer, id, list));
    }, 0);
    const unplaced = answer.unplaced.reduce((n, each) => (each.blank === id ? n + each.count : n), 0);
    if (missing > unplaced) {
      const howMuch = `"${id}": ${missing} missing from the cloths of their blocks, ${unplaced} unplaced`;
      faults.push({ what: 'one cloth', where: 'oneCloth', howMuch });
    }
  }
  return faults;
}

function cutFrom(answer: LayoutAnswer, blank: string, cloths: readonly string[]): number {
  return answer.layouts
    .filter((layout) => cloths.includes(layout.cloth))
    .reduce((sum, layout) => sum + layout.count * layout.placements.filter((p) => p.blank === blank).length, 0);
}
