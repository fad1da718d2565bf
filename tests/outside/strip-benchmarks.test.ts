/** Published strip-packing sets whose best two-stage plan is known, where they are at hand beside the project. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readLayoutJob } from '../../src/plan/read-layout-job.ts';
import { planned } from './engine.ts';

const FOLDER = fileURLToPath(new URL('../../../shared/benchmarks/strips/', import.meta.url));

/** Beasley 1985; Christofides & Whitlock 1977; Burke, Kendall & Whitwell 2004. The small ones. */
const SMALL = ['ngcut1', 'ngcut2', 'ngcut3', 'ngcut4', 'ngcut5', 'ngcut6', 'cgcut1', 'gcut1', 'gcut5', 'BKW1'];

test.for(SMALL)('%s: never below the known optimum, and met', async (name, { skip }) => {
  const file = `${FOLDER}${name}.json`;
  if (!existsSync(file)) skip(`there is no ${file}`);
  const text = readFileSync(file, 'utf8');
  const { twoStageOptimum } = JSON.parse(text) as { twoStageOptimum: number };
  const answer = await planned({ ...readLayoutJob(text), seconds: 10 });
  expect(answer.bound).toBeLessThanOrEqual(twoStageOptimum + 1e-6);
  expect([answer.status, answer.cost]).toEqual(['optimal', expect.closeTo(twoStageOptimum, 6)]);
});
