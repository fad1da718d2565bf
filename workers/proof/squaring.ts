/**
 * Whether the cut end of each bolt is squared: by a first strip that holds no blank, or, where strips run along the bolt and
 * so cannot tell of its end, by a layout that is that long and holds nothing.
 */
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import { type Fault, TOUCH } from './fault.ts';
import type { LaidLayout } from './placed.ts';
import type { Rules } from './rules.ts';

/** @param laid the layouts of the answer that lie on a known cloth */
export function squaringFaults(rules: Rules, answer: LayoutAnswer, laid: readonly LaidLayout[]): readonly Fault[] {
  if (rules.job.method !== 'strips') return [];
  return [...rules.cloths.values()].flatMap((cloth): readonly Fault[] => {
    const squaring = cloth.squaring ?? 0;
    const isUsed = answer.layouts.some((layout) => layout.cloth === cloth.id);
    if (squaring === 0 || !isUsed) return [];
    const touch = TOUCH * cloth.width;
    const isSquared = laid.some((each) => each.cloth === cloth && startsEmpty(each, squaring - touch, touch));
    if (isSquared) return [];
    const howMuch = `no layout of "${cloth.id}" begins with an empty strip of ${squaring}`;
    return [{ what: 'squaring', where: 'layouts', howMuch }];
  });
}

function startsEmpty({ layout, placed }: LaidLayout, height: number, touch: number): boolean {
  if (layout.firstCut === 'along') return placed.length === 0 && layout.length >= height;
  const first = layout.strips?.[0];
  if (!first || first.height < height || first.from > touch) return false;
  return placed.every((blank) => blank.box.bottom >= first.from + first.height - touch);
}
