import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { UsageFault } from '../../src/cli/plan-arguments.ts';
import { haveJson, haveText, planHave } from '../../src/cli/plan-have.ts';
import { CARE } from '../../src/plan/care.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { Packer } from '../../workers/packer.ts';
import { checkAnswer } from '../checker/check-answer.ts';

const top = fileURLToPath(new URL('../..', import.meta.url));
const run = (...words: readonly string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/plan.ts', ...words], { cwd: top, encoding: 'utf8' });
const clock = () => performance.now() / 1000;
/** Four squares of 6 in, not on paper: blanks of 6 1/2 in. */
const SQUARE = 'tests/quilt/fixtures/one-square.yardwright.json';

test('what is enough is told with how to cut it, the cautions first, and drawn', () => {
  const out = mkdtempSync(join(tmpdir(), 'yardwright-'));
  try {
    const { status, stdout } = run(SQUARE, '--have', 'Linen=1/4 yd', '--seconds', '8', '--out', out);
    expect(status).toBe(0);
    expect(stdout).toMatch(
      /WILL THIS DO\?\n {2}In hand: 1\/4 yd of Linen\n {2}As wanted {2}fits: takes .* of the 9 in there are/,
    );
    expect(stdout).toContain('It will do as wanted.');
    expect(stdout.indexOf(CARE[0]!)).toBeGreaterThan(0);
    expect(stdout.indexOf(CARE[0]!)).toBeLessThan(stdout.indexOf('Strip 1:'));
    expect(readFileSync(join(out, 'linen.svg'), 'utf8')).toMatch(/^<svg /);
  } finally {
    rmSync(out, { recursive: true });
  }
});

test('what is short is told with what was tried, each plan clean', async () => {
  const quilt = readQuilt(readFileSync(join(top, SQUARE), 'utf8'));
  const found = await planHave(quilt, [{ cloth: 'linen', length: '3' }], [new Packer()], 8, clock);
  const text = haveText(quilt, found);
  expect(text).toMatch(
    / {2}In hand: 3 in of Linen\n {2}As wanted +short, proved: no plan with strips cut like these fits; the shortest found takes 6 1\/2 in, there are 3 in/,
  );
  expect(text).toContain('It will not do: none of these plans can fit.');
  expect(text).not.toContain('HOW TO CUT');
  const json = JSON.parse(JSON.stringify(found.map(haveJson)));
  expect(json).toMatchObject([{ cloth: 'linen', have: '3', suffices: null }]);
  expect(json[0].tries.map((each: { verdict: string }) => each.verdict)).toEqual(['short', 'short']);
  for (const { job, answer } of json[0].tries.flatMap((each: { plans: object[] }) => each.plans)) {
    expect(checkAnswer(job, answer)).toEqual([]);
  }
});

test.each([
  ['silk', '1 yd', /--have: the quilt has no cloth "silk"; its cloths are linen/],
  ['linen', 'much', /--have linen: "much"/],
  ['linen', '0', /--have: A length in hand must be above zero/],
])('--have %s=%s is refused in words', async (cloth, length, message) => {
  const quilt = readQuilt(readFileSync(join(top, SQUARE), 'utf8'));
  const refused = planHave(quilt, [{ cloth, length }], [], 8, clock);
  await expect(refused).rejects.toThrow(message);
  await expect(refused).rejects.toBeInstanceOf(UsageFault);
});

test('where a search found nothing that fits and proved nothing, that is said, with the shortest plan that would serve', async () => {
  const quilt = { ...readQuilt(readFileSync(join(top, SQUARE), 'utf8')), spares: 1 };
  const packer = new Packer();
  // By area alone 6 in would do: 5 × 6 1/2² / 42 = 5.03.
  const lazy = {
    plan: async (job: LayoutJob): Promise<LayoutAnswer> => {
      const answer = await packer.plan(job);
      return { ...answer, status: 'feasible', bound: 0 };
    },
  };
  const [found] = await planHave(quilt, [{ cloth: 'linen', length: '6' }], [lazy], 8, clock);
  expect(new Set(found!.tries.map(({ verdict }) => verdict))).toEqual(new Set(['open']));
  const worse = { ...found!, tries: found!.tries.map((each, i) => (i === 0 ? each : { ...each, takes: 20 })) };
  const text = haveText(quilt, [worse]);
  expect(text).toContain('None of these was found to fit, though not of all of them that is proved');
  expect(text).toMatch(/No spares +none found that fits; the shortest found takes 6 1\/2 in, there are 6 in/);
  expect(text).not.toContain('20 in');
});
