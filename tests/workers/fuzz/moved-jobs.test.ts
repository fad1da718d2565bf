/**
 * The same job told otherwise: in the mirror, and with its blanks and cloths in another order. What one telling proves must hold for
 * the plans that the others find, whatever the job asks for; no oracle is needed.
 */
import { expect, test } from 'vitest';
import type {
  BlankShape,
  ClothChoice,
  JobBlank,
  LayoutAnswer,
  LayoutJob,
  Turns,
} from '../../../src/plan/layout-job.ts';
import { ringJob } from '../ring-job.ts';
import { cleanAnswer, unplacedCount } from './expect-clean.ts';
import { randomJob } from './random-job.ts';

const turned = (degrees: number) => (360 - degrees) % 360;
const mirroredTurns = (turns: Turns): Turns =>
  turns === 'any'
    ? turns
    : turns.map((range) =>
        typeof range === 'number' ? turned(range) : { centre: turned(range.centre), within: range.within },
      );

const mirroredShape = <T extends Partial<BlankShape>>(shape: T): T => ({
  ...shape,
  ...(shape.outline ? { outline: shape.outline.map(([x, y]) => [-x, y] as const) } : {}),
  ...(shape.turns ? { turns: mirroredTurns(shape.turns) } : {}),
});

const mirroredChoice = (choice: ClothChoice): ClothChoice =>
  typeof choice === 'string' || !choice.turns ? choice : { ...choice, turns: mirroredTurns(choice.turns) };

const mirroredBlank = (blank: JobBlank): JobBlank => ({
  ...mirroredShape(blank),
  ...(blank.shapes ? { shapes: blank.shapes.map(mirroredShape) } : {}),
  ...(blank.cloths ? { cloths: blank.cloths.map(mirroredChoice) } : {}),
});

const mirrored = (job: LayoutJob): LayoutJob => ({ ...job, blanks: job.blanks.map(mirroredBlank) });
const reversed = (job: LayoutJob): LayoutJob => ({
  ...job,
  blanks: [...job.blanks].reverse(),
  cloths: [...job.cloths].reverse(),
});

const seeds = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const rings = (seed: number): LayoutJob => {
  const { ruleOfThumb: _, ...job } = ringJob(seed, 2 + (seed % 4));
  return job;
};
const JOBS: readonly (readonly [string, LayoutJob])[] = [
  ...seeds(101, 112).map((seed) => [`every feature ${seed}`, randomJob(seed)] as const),
  ...seeds(1, 6).map((seed) => [`rings ${seed}`, rings(seed)] as const),
];

test.each(JOBS)('%s: no telling proves more than another’s plan costs', async (name, job) => {
  const answers: LayoutAnswer[] = [];
  for (const told of [job, mirrored(job), reversed(job)])
    answers.push(await cleanAnswer({ ...told, seconds: 0.4 }, name));
  const whole = answers.filter((answer) => unplacedCount(answer) === 0);
  const least = Math.min(...whole.map((answer) => answer.cost));
  for (const { bound } of whole) expect(bound).toBeLessThanOrEqual(least + 1e-6);
});

test('the jobs are not all of those that leave blanks unplaced', async () => {
  const placed = await Promise.all(
    JOBS.map(async ([name, job]) => unplacedCount(await cleanAnswer({ ...job, seconds: 0.01 }, name)) === 0),
  );
  expect(placed.filter((is) => is).length).toBeGreaterThan(9);
});
