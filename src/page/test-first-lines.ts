import { beginsWithTest, priceOfTestFirst, testBlockName } from '../plan/say-test-first.ts';
import type { Plan } from './plan-state.ts';

const told = new WeakMap<Plan, readonly string[]>();

/** What it costs to cut one block first, or that it is still being worked out; one list for one plan. */
export function testFirstLines(plan: Plan): readonly string[] {
  const known = told.get(plan);
  if (known !== undefined) {
    return known;
  }
  const { quilt, cutList, answers, tally } = plan;
  const name = testBlockName(quilt);
  const isComing = name !== null && !answers.some((answer) => beginsWithTest(answer) || answer.testFirst !== undefined);
  const lines = isComing
    ? [`The strips for ${name} are not yet planned first.`]
    : priceOfTestFirst(quilt, cutList, answers, tally);
  told.set(plan, lines);
  return lines;
}
