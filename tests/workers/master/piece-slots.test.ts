/** Parting one piece into strips, against every way of it. */
import { expect, test } from 'vitest';
import { bestSlots } from '../../../workers/master/piece-slots.ts';
import { numbers } from '../numbers.ts';

/** The most by trying each height first, again and again. */
const most = (items: readonly (readonly [number, number])[], stack: number): number =>
  Math.max(
    0,
    ...items.flatMap(([height, value]) => (height <= stack + 1e-9 ? [value + most(items, stack - height)] : [])),
  );

test('the slots of a piece are worth the most that fits, and fit', () => {
  for (let seed = 1; seed <= 120; seed++) {
    const draw = numbers(seed);
    const items = Array.from({ length: draw(1, 4) }, () => [draw(4, 20) / 4, draw(0, 12) / 4] as const);
    const stack = draw(4, 40) / 4;
    const best = most(items, stack);
    const found = bestSlots(items, stack, 0);
    expect([seed, found?.value ?? 0]).toEqual([seed, expect.closeTo(best, 7)]);
    if (!found) continue;
    const taken = [...found.slots];
    expect(taken.reduce((sum, [height, n]) => sum + height * n, 0)).toBeLessThanOrEqual(stack + 1e-6);
    const worthOf = (height: number) => Math.max(...items.filter(([h]) => h === height).map(([, value]) => value));
    expect(taken.reduce((sum, [height, n]) => sum + worthOf(height) * n, 0)).toBeCloseTo(best, 7);
    expect(bestSlots(items, stack, best + 1e-6)).toBeNull();
  }
});

test('strips that fill a piece exactly fit it', () => {
  expect(bestSlots([[0.1, 1]], 0.3, 0)?.value).toBe(3);
  expect(bestSlots([[4.5 / 7, 1]], 4.5, 0)?.value).toBe(7);
});
