/**
 * With the cost settled, a plan that costs no more and uses up less cloth: less length within the steps bought, fewer shelf
 * pieces. The integer programme over the fullest strips known, which weighs cloth after cost; not a proof.
 */
import { choose } from './choose.ts';
import type { StripColumn } from './column.ts';
import type { Plan } from './plan.ts';
import { isBolt, type StripMaster } from './strip-master.ts';

const MOST_COLUMNS = 300;
const SECONDS = 0.3;

/** Null where cost and cloth are one, or nothing better is found. */
export function lessCloth(master: StripMaster, plan: Plan): Plan | null {
  const apart = master.job.cloths.some((cloth) => !isBolt(cloth) || cloth.step !== undefined);
  if (!apart) return null;
  const full = new Map(master.strips.filter((c) => c.row).map((c) => [c, fullness(master, c)]));
  const columns = [...full.keys()].sort((a, b) => full.get(b)! - full.get(a)!).slice(0, MOST_COLUMNS);
  return choose(master, columns, [], SECONDS, plan.cost);
}

/** How much of a strip its blanks cover. */
function fullness({ families }: StripMaster, column: StripColumn): number {
  const covered = column.row!.blanks.reduce((sum, b) => sum + b.variant.area, 0);
  return covered / (families[column.family]!.span * column.height);
}
