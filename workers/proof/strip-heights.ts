/** The heights that a strip may have. */
import type { JobCloth } from '../../src/plan/layout-job.ts';
import { turn } from '../../src/shape/point.ts';
import { stripTurns } from './allowed-turns.ts';
import { boxOf } from './box.ts';
import type { Rules } from './rules.ts';

export type FirstCut = 'across' | 'along';

const known = new WeakMap<Rules, Map<string, readonly number[]>>();

/** How far a height is from the nearest that the job allows: a multiple of the ruler, or the height of a turned blank. */
export function heightError(rules: Rules, cloth: JobCloth, firstCut: FirstCut, height: number): number {
  const { ruler } = rules.job;
  if (ruler !== undefined) return Math.abs(height - Math.max(1, Math.round(height / ruler)) * ruler);
  const key = JSON.stringify([cloth.id, firstCut]);
  const tables = known.get(rules) ?? new Map<string, readonly number[]>();
  known.set(rules, tables);
  const heights = tables.get(key) ?? blankHeights(rules, cloth, firstCut);
  tables.set(key, heights);
  return heights.reduce((least, each) => Math.min(least, Math.abs(each - height)), Infinity);
}

function blankHeights(rules: Rules, cloth: JobCloth, firstCut: FirstCut): readonly number[] {
  const heights = new Set<number>();
  for (const blank of rules.blanks.values()) {
    for (const rule of blank.on.get(cloth.id) ?? []) {
      for (const degrees of stripTurns(rule)) {
        const box = boxOf(rule.outline.map((point) => turn(point, degrees)));
        heights.add(firstCut === 'across' ? box.top - box.bottom : box.right - box.left);
      }
    }
  }
  return [...heights];
}
