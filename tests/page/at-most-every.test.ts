import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { atMostEvery } from '../../src/page/at-most-every.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('rare calls pass at once; of many in a pause only the latest, at its end', () => {
  const seen: number[] = [];
  const tell = atMostEvery(100, (value: number) => seen.push(value));
  tell(1);
  expect(seen).toEqual([1]);
  tell(2);
  tell(3);
  expect(seen).toEqual([1]);
  vi.advanceTimersByTime(100);
  expect(seen).toEqual([1, 3]);
  tell(4);
  vi.advanceTimersByTime(99);
  expect(seen).toEqual([1, 3]);
  vi.advanceTimersByTime(201);
  expect(seen).toEqual([1, 3, 4]);
  tell(5);
  expect(seen).toEqual([1, 3, 4, 5]);
});
