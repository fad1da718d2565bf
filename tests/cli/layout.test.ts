import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'layout-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const square = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
const job = {
  method: 'strips',
  cloths: [{ id: 'bolt', width: 42 }],
  blanks: [{ id: 'a', outline: square, demand: 12 }],
};

function written(content: unknown): string {
  const file = join(folder, 'job.json');
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
}

describe('a job that breaks the rules gets one line that names field and fault, no output, and exit status 2', () => {
  test.each<[string, unknown, string]>([
    ['a truncated file', JSON.stringify(job).slice(0, 90), 'job: is not JSON'],
    ['a negative width', { ...job, cloths: [{ id: 'bolt', width: -42 }] }, 'cloths[0].width: is negative: -42'],
    [
      'a self-crossing outline',
      { ...job, blanks: [{ id: 'a', outline: [square[0], square[2], square[1], square[3]], demand: 1 }] },
      'blanks[0].outline: crosses or touches itself',
    ],
    ['shears', { ...job, method: 'shears' }, 'method: "shears" is not built yet; use "strips"'],
  ])('%s', async (_, content, expected) => {
    const { status, out, err } = await runCommand('layout', [written(content)]);
    expect(err).toContain(expected);
    expect([status, out, err.trimEnd().split('\n').length]).toEqual([2, '', 1]);
  });

  test.each<[string, string[], string]>([
    ['no file', [], 'usage: npm run -s layout -- job.json'],
    ['two files', ['a.json', 'b.json'], 'usage: npm run -s layout -- job.json'],
    ['a file that is not there', ['no-such-job.json'], 'no-such-job.json: ENOENT'],
  ])('%s', async (_, args, expected) => {
    const { status, out, err } = await runCommand('layout', args);
    expect(err).toContain(expected);
    expect([status, out, err.trimEnd().split('\n').length]).toEqual([2, '', 1]);
  });
});
