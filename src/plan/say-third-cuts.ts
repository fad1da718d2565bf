/** What cutting strips once more along has saved, in a quilter's words. */
import type { Group } from '../cutting/cut-list.ts';
import { formatLength } from '../quilt/format-length.ts';
import type { Cloth, LengthUnit } from '../quilt/quilt.ts';
import type { LayoutAnswer } from './layout-job.ts';
import { saySteps } from './say-steps.ts';

/**
 * @param answer of three stages; it knows what the best plan of two stages cost that was found on the way
 * @param cloth one of the group's
 * @returns null where strips are cut in two stages only, or there is nothing to compare with
 */
export function sayThirdCuts(group: Group, answer: LayoutAnswer, cloth: Cloth, unit: LengthUnit): string | null {
  const { twoStageCost } = answer;
  if (group.job.stages !== 3 || twoStageCost === undefined) return null;
  const saved = twoStageCost - answer.cost;
  if (saved < 1e-6) return 'Cuts along stacks save nothing to buy: the best plan found without them needs as little.';
  const bolts = group.job.cloths.filter(({ length }) => length === null || length === undefined);
  const [bolt] = bolts;
  if (bolts.length !== 1 || bolt === undefined || (bolt.cost ?? 1) <= 0) {
    const share = Math.max(1, Math.round((100 * saved) / twoStageCost));
    return `Cuts along stacks save ${share} % of what these cloths cost together, against the best plan found without.`;
  }
  const length = saved / (bolt.cost ?? 1);
  const inLength = formatLength(length, unit, { denominator: 16, decimals: 1 });
  const steps = bolt.step === undefined ? 0 : Math.round(length / bolt.step);
  const amount =
    steps === 0 || cloth.step === undefined ? inLength : `${saySteps(steps, cloth.step, unit)} (${inLength})`;
  return `Cuts along stacks save ${amount} against the best plan found without them.`;
}
