/** The packer as a caller sees it: progress that only gets better, stopping, and what it refuses. */
import { expect, test } from 'vitest';
import type { LayoutJob, Progress } from '../../src/plan/layout-job.ts';
import { Packer } from '../../workers/packer.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { rectangle } from '../outside/engine.ts';
import { numbers } from './numbers.ts';

/** Kinds of wedge that may lie either way up, so many that a proof takes far longer than any test. */
function longJob(seconds: number, kinds: number): LayoutJob {
  const draw = numbers(5);
  const blanks = Array.from({ length: kinds }, (_, i) => {
    const [base, top, height] = [draw(10, 40) / 8, draw(2, 10) / 8, draw(12, 60) / 8];
    const outline = [
      [0, 0],
      [base, 0],
      [(base + top) / 2, height],
      [(base - top) / 2, height],
    ] as const;
    return { id: `${i}`, outline, demand: draw(8, 20), turns: [0, 180] };
  });
  return { method: 'strips', ruler: 0.125, seconds, cloths: [{ id: 'bolt', width: 42.5 }], blanks };
}

test('what it says on the way gets better and never worse, and every plan on the way is clean', async () => {
  const job = longJob(3, 10);
  const told: Progress[] = [];
  const answer = await new Packer().plan(job, (progress) => told.push(progress));
  expect(told.length).toBeGreaterThan(1);
  let [cost, bound] = [Infinity, 0];
  for (const progress of told) {
    expect(progress.answer && checkAnswer(job, progress.answer)).toEqual([]);
    expect(progress.answer!.cost).toBeLessThanOrEqual(cost + 1e-6);
    expect(progress.bound).toBeGreaterThanOrEqual(bound - 1e-9);
    [cost, bound] = [progress.answer!.cost, progress.bound!];
  }
  expect(answer.cost).toBeLessThanOrEqual(cost + 1e-6);
  expect(answer.bound).toBeGreaterThanOrEqual(bound - 1e-9);
  expect(checkAnswer(job, answer)).toEqual([]);
});

test('stopped in the middle it answers with the best clean plan, long before its time is up', async () => {
  const job = longJob(100, 10);
  const packer = new Packer();
  let best = Infinity;
  const planning = packer.plan(job, ({ answer }) => {
    best = answer?.cost ?? best;
  });
  setTimeout(() => packer.stop(), 1000);
  const answer = await planning;
  expect(checkAnswer(job, answer)).toEqual([]);
  expect(answer.unplaced).toEqual([]);
  expect(answer.cost).toBeLessThanOrEqual(best + 1e-6);
  expect(answer.seconds).toBeLessThan(30);
});

test('one packer plans one job after another, a stopped one before it no matter', async () => {
  const packer = new Packer();
  packer.stop();
  const job: LayoutJob = {
    method: 'strips',
    cloths: [{ id: 'bolt', width: 10 }],
    blanks: [{ id: 'a', outline: rectangle(5, 2), demand: 4 }],
  };
  for (let i = 0; i < 2; i++) expect(await packer.plan(job)).toMatchObject({ status: 'optimal', cost: 4, bound: 4 });
});

test('what is not built yet is refused by name', async () => {
  const job = { cloths: [{ id: 'bolt', width: 10 }], blanks: [] };
  await expect(new Packer().plan({ ...job, method: 'shears' })).rejects.toThrow(/shears/);
});
