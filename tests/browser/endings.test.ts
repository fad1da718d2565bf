/** Real workers in a real browser: stopped, ended, broken and silenced in the middle of their work. */
import type { Worker } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { numbers } from '../workers/numbers.ts';
import { ringJob } from '../workers/ring-job.ts';
import { Packers } from './packers.ts';

let packers: Packers;

beforeAll(async () => {
  packers = await Packers.start();
}, 120_000);

afterAll(async () => {
  await packers?.stop();
});

const { ruleOfThumb: _, ...rings } = ringJob(5, 12);
const LONG: LayoutJob = { ...rings, seconds: 100 };
const { ruleOfThumb: __, ...few } = ringJob(12, 2);
const SHORT: LayoutJob = { ...few, seconds: 60 };

const draw = numbers(12);
const MOMENTS = Array.from({ length: 15 }, () => draw(0, 600));

/** The worker that is at work now. */
async function theWorker(): Promise<Worker> {
  await expect.poll(() => packers.page.workers().length).toBeGreaterThan(0);
  return packers.page.workers().at(-1)!;
}

describe('at seeded moments', () => {
  test.each(MOMENTS)('asked to stop after %d ms: the best clean plan so far', async (after) => {
    const { answer, last, error } = await packers.plan(LONG, { after, how: 'stop' });
    expect(error).toBeNull();
    expect(checkAnswer(LONG, answer!)).toEqual([]);
    expect(answer!.unplaced).toEqual([]);
    expect(answer!.cost).toBeLessThanOrEqual((last?.cost ?? Infinity) + 1e-6);
  });

  test.each(MOMENTS)(
    'ended after %d ms: a plain word at once, the last plan clean, the next job answered',
    async (after) => {
      const { answer, last, error } = await packers.plan(LONG, { after, how: 'end' });
      expect([answer, error]).toEqual([null, 'ended in the middle']);
      if (last) expect(checkAnswer(LONG, last)).toEqual([]);
      expect((await packers.plan(SHORT)).answer?.status).toBe('optimal');
    },
  );
});

test('a worker that dies of an error nobody caught: its word, and a new one for the next job', async () => {
  const planning = packers.plan(LONG);
  const worker = await theWorker();
  await worker.evaluate(() => {
    setTimeout(() => {
      throw new Error('out of memory');
    });
  });
  expect((await planning).error).toMatch(/the packer died: .*out of memory/);
  expect((await packers.plan(SHORT)).answer?.status).toBe('optimal');
});

test('a fault in the middle of a solve: its word, and a new worker for the next job', async () => {
  expect((await packers.plan(SHORT)).error).toBeNull();
  const worker = await theWorker();
  await worker.evaluate(() => {
    const [{ now }, real] = [Date, performance.now.bind(performance)];
    performance.now = () => {
      if (Date.now !== now) throw new Error('the solver broke');
      return real();
    };
  });
  expect((await packers.plan(LONG)).error).toMatch('the solver broke');
  expect((await packers.plan(SHORT)).answer?.status).toBe('optimal');
});

test('out of time before the first strip is priced: a clean plan', async () => {
  const { answer } = await packers.plan({ ...LONG, seconds: 0.001 });
  expect(checkAnswer(LONG, answer!)).toEqual([]);
  expect(answer!.unplaced).toEqual([]);
});
