/** Plans a job and has the plan read twice from outside. */
import { expect } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../../src/plan/layout-job.ts';
import { readLayoutJobValue } from '../../../src/plan/read-layout-job.ts';
import { Packer } from '../../../workers/packer.ts';
import { tellFault } from '../../../workers/proof/fault.ts';
import { proofread } from '../../../workers/proof/proofread.ts';
import { checkAnswer } from '../../checker/check-answer.ts';

/** The answer, clean; a fault is told with the job that brought it about. */
export async function cleanAnswer(job: LayoutJob, name: string): Promise<LayoutAnswer> {
  const read = readLayoutJobValue(job);
  const answer = await new Packer().plan(read).catch((error) => {
    throw new Error(`${name}: ${error.message}\n${JSON.stringify(job)}`);
  });
  expect([name, ...checkAnswer(read, answer)]).toEqual([name]);
  expect([name, ...proofread(read, answer).map(tellFault)]).toEqual([name]);
  return answer;
}

export const unplacedCount = ({ unplaced }: LayoutAnswer): number =>
  unplaced.reduce((sum, { count }) => sum + count, 0);
