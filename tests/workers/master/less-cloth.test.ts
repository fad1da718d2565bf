/** Of plans that cost the same, the one that uses up less cloth. */
import { expect, test } from 'vitest';
import type { JobCloth, LayoutAnswer, LayoutJob } from '../../../src/plan/layout-job.ts';
import { planned, rectangle } from '../../outside/engine.ts';

const job = (demand: number, ...cloths: readonly JobCloth[]): LayoutJob => ({
  method: 'strips',
  seconds: 10,
  cloths,
  blanks: [{ id: 'a', outline: rectangle(5, 4), demand }],
});

const bolt: JobCloth = { id: 'bolt', width: 40, step: 9 };
const scrap: JobCloth = { id: 'scrap', width: 10, length: 10, cost: 0 };

const areaOf = (answer: LayoutAnswer): number =>
  answer.layouts.reduce((sum, { cloth, count, length }) => sum + count * (cloth === 'scrap' ? 100 : 40 * length), 0);

test('the step is bought either way, and a ninth blank from the scrap takes less cloth than a strip of its own', async () => {
  // A strip holds eight: two strips take 320 square inches, one and the scrap 160 + 100.
  const answer = await planned(job(9, bolt, scrap));
  expect([answer.cost, answer.status, areaOf(answer)]).toEqual([9, 'optimal', 260]);
});

test('where one strip holds all, the scrap stays whole', async () => {
  const answer = await planned(job(8, bolt, scrap));
  expect([answer.cost, answer.status, areaOf(answer)]).toEqual([9, 'optimal', 160]);
});

test('of two scraps that cost nothing, no more are cut into than needed', async () => {
  const answer = await planned(job(4, { ...scrap, count: 2 }));
  expect([answer.cost, answer.status, areaOf(answer)]).toEqual([0, 'optimal', 100]);
});
