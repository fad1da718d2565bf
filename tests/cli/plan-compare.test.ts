import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { checkAnswer } from '../checker/check-answer.ts';

const top = fileURLToPath(new URL('../..', import.meta.url));
const run = (...words: readonly string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/plan.ts', ...words], { cwd: top, encoding: 'utf8' });
const SQUARE = 'tests/quilt/fixtures/one-square.yardwright.json';

test('the plan stands beside those that show what facing, room and the rule of thumb cost', () => {
  const { status, stdout } = run(SQUARE, '--compare', '--seconds', '5');
  expect(status).toBe(0);
  const table = stdout.slice(stdout.indexOf('SIDE BY SIDE'));
  expect(table).toMatch(/^SIDE BY SIDE\n +this plan +facing ignored +no room +rule of thumb\n {2}Linen +1\/4 yd \* /);
  expect(table).toContain('Ignoring facing would buy the same.');
  expect(table).toContain('The rule of thumb would buy the same.');
});

test('for programs the four versions come with jobs, answers and tallies, and every plan is clean', () => {
  const { stdout } = run(SQUARE, '--compare', '--json', '--seconds', '5');
  const { sideBySide } = JSON.parse(stdout);
  expect(sideBySide.map((version: { kind: string }) => version.kind)).toEqual([
    'as wanted',
    'facing ignored',
    'no room',
    'rule of thumb',
  ]);
  for (const { plans, tally } of sideBySide) {
    expect(plans).toHaveLength(1);
    expect(tally.cloths).toHaveLength(1);
    expect(checkAnswer(plans[0].job, plans[0].answer)).toEqual([]);
  }
});
