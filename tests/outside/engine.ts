/** Plans a job as the command does and has the plan read by the outside checker, so that a check can trust its figures. */
import { expect } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { readLayoutJobValue } from '../../src/plan/read-layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { Packer } from '../../workers/packer.ts';
import { tellFault } from '../../workers/proof/fault.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';

export async function planned(job: LayoutJob): Promise<LayoutAnswer> {
  const answer = await new Packer().plan(readLayoutJobValue(job));
  expect(checkAnswer(job, answer)).toEqual([]);
  expect(proofread(job, answer).map(tellFault)).toEqual([]);
  return answer;
}

export const rectangle = (width: number, height: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

/** How many strips a plan cuts that hold blanks. */
export function stripCount(answer: LayoutAnswer): number {
  return answer.layouts.reduce((sum, layout) => sum + layout.count * (layout.strips?.length ?? 0), 0);
}
