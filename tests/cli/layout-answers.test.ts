/** The layout command on jobs that it answers. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { rectangle } from '../outside/engine.ts';
import { runCommand } from './run-command.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'layout-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function written(name: string, job: LayoutJob): string {
  const file = join(folder, name);
  writeFileSync(file, JSON.stringify(job));
  return file;
}

/** The job of the format's own description, with its two cloths and two kinds of blank. */
const described: LayoutJob = {
  method: 'strips',
  stages: 2,
  ruler: 0.125,
  seconds: 10,
  seed: 1,
  cloths: [
    { id: 'bolt', width: 42, length: null, step: 4.5, cost: 1 },
    { id: 'shelf', width: 21, length: 18, count: 3, cost: 0, firstCut: 'either' },
  ],
  blanks: [
    {
      id: 'a',
      outline: rectangle(4, 3),
      demand: 12,
      turns: [0, 180],
      cloths: ['bolt', { id: 'shelf', turns: 'any', mirror: true }],
    },
    {
      id: 'b',
      demand: 8,
      shapes: [
        {
          outline: [
            [0, 0],
            [3, 0],
            [2, 4],
            [1, 4],
          ],
          turns: [0],
        },
        { outline: rectangle(3, 4), turns: [0, 180] },
      ],
    },
  ],
};

test('a job is answered with JSON on standard output and nothing beside it', async () => {
  const { status, out, err } = await runCommand('layout', [written('described.json', described)]);
  expect([status, err]).toEqual([0, '']);
  const answer = JSON.parse(out) as LayoutAnswer;
  expect(checkAnswer(described, answer)).toEqual([]);
  // The shelf has room for all of them (12·12 + 8·12 of 3·378 square units), and costs nothing.
  expect([answer.status, answer.cost]).toEqual(['optimal', 0]);
});

test('the same job and seed, ended by its own proof, give the same answer but for the time', async () => {
  const file = written('described.json', described);
  const runs = await Promise.all([runCommand('layout', [file]), runCommand('layout', [file])]);
  const [first, second] = runs.map(({ out }) => ({ ...(JSON.parse(out) as LayoutAnswer), seconds: 0 }));
  expect(first).toEqual(second);
});

test('a blank larger than its cloth is named, with the width it would need, and the rest is planned', async () => {
  const job: LayoutJob = {
    method: 'strips',
    cloths: [{ id: 'bolt', width: 42 }],
    blanks: [
      { id: 'small', outline: rectangle(10, 4), demand: 4 },
      { id: 'long', outline: rectangle(50, 4), demand: 2 },
    ],
  };
  const { status, out } = await runCommand('layout', [written('large.json', job)]);
  const answer = JSON.parse(out) as LayoutAnswer;
  expect(checkAnswer(job, answer)).toEqual([]);
  expect([status, answer.status, answer.cost, answer.bound]).toEqual([0, 'partial', 4, null]);
  expect(answer.unplaced).toEqual([{ blank: 'long', count: 2, why: expect.stringContaining('50') }]);
});

test('nothing to cut is an answer too', async () => {
  const job: LayoutJob = { method: 'strips', cloths: [{ id: 'bolt', width: 42, squaring: 1 }], blanks: [] };
  const { status, out } = await runCommand('layout', [written('nothing.json', job)]);
  const answer = JSON.parse(out) as LayoutAnswer;
  expect(checkAnswer(job, answer)).toEqual([]);
  expect([status, answer.status, answer.cost, answer.layouts]).toEqual([0, 'optimal', 0, []]);
});

test('interrupted, it answers with the best plan so far', async () => {
  // So many kinds and so many turns that the proof would take minutes.
  const job: LayoutJob = {
    method: 'strips',
    seconds: 90,
    cloths: [{ id: 'bolt', width: 43.5 }],
    blanks: Array.from({ length: 40 }, (_, i) => {
      const [base, top, height] = [2 + ((i * 7) % 23) / 8, 0.5 + ((i * 5) % 11) / 8, 2 + ((i * 13) % 37) / 8];
      return {
        id: `${i}`,
        outline: [
          [0, 0],
          [base, 0],
          [(base + top) / 2, height],
          [(base - top) / 2, height],
        ],
        demand: 5 + ((i * 3) % 17),
        turns: [0, 180],
      } as const;
    }),
  };
  const { status, out } = await runCommand('layout', [written('hard.json', job)], (child) => {
    setTimeout(() => child.kill('SIGINT'), 12_000);
  });
  expect(status).toBe(0);
  const answer = JSON.parse(out) as LayoutAnswer;
  expect(checkAnswer(job, answer)).toEqual([]);
  expect(answer.unplaced).toEqual([]);
  // Far less than it was given.
  expect(answer.seconds).toBeLessThan(60);
});
