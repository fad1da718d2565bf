import { expect, test } from 'vitest';
import { byWork } from '../../../workers/programme/work-clock.ts';

const never = () => false;

test('each question moves the clock on by one step', () => {
  const [first, second, third] = byWork(0.5, never, () => [Date.now(), Date.now(), Date.now()]);
  expect([second! - first!, third! - second!]).toEqual([500, 500]);
});

test('when time is up it leaps past any limit in milliseconds of 31 bits', () => {
  let up = false;
  const [before, after] = byWork(
    0.5,
    () => up,
    () => {
      const start = Date.now();
      up = true;
      return [start, Date.now()];
    },
  );
  expect(after! - before!).toBeGreaterThan(2 ** 31);
});

test('the real clock comes back, with the answer and with an error', () => {
  const { now } = Date;
  expect(byWork(1, never, () => 'done')).toBe('done');
  expect(Date.now).toBe(now);
  expect(() =>
    byWork(1, never, () => {
      throw new Error('broken');
    }),
  ).toThrow('broken');
  expect(Date.now).toBe(now);
});
