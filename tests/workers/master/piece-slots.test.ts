/** Parting one piece into strips, against every way of it. */
import { expect, test } from 'vitest';
import { bestSlots, listSlots } from '../../../workers/master/piece-slots.ts';
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

test('of all ways to part a piece, the list has one at least as good, slot for slot', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const draw = numbers(seed);
    const heights = [...new Set(Array.from({ length: draw(1, 4) }, () => draw(8, 24) / 4))].sort((a, b) => a - b);
    let worth = 0;
    const items = heights.map((height) => {
      worth += draw(0, 4);
      return [height, worth] as const;
    });
    const stack = draw(8, 40) / 4;
    const least = draw(0, 10);
    const listed = listSlots(items, stack, least, 1000)!;
    for (const slots of listed) expect(lengthOf(slots)).toBeLessThanOrEqual(stack + 1e-6);
    for (const slots of allSlots(heights, stack)) {
      const value = items.reduce((sum, [height, each]) => sum + each * (slots.get(height) ?? 0), 0);
      if (value < least) continue;
      const covered = listed.some((other) => heights.every((h) => atLeast(other, h) >= atLeast(slots, h)));
      expect(covered, `seed ${seed}: ${JSON.stringify([...slots])}`).toBe(true);
    }
  }
});

const lengthOf = (slots: ReadonlyMap<number, number>) => [...slots].reduce((sum, [height, n]) => sum + height * n, 0);
const atLeast = (slots: ReadonlyMap<number, number>, low: number) =>
  [...slots].reduce((sum, [height, n]) => (height >= low ? sum + n : sum), 0);

function allSlots(heights: readonly number[], stack: number): readonly ReadonlyMap<number, number>[] {
  const [first, ...rest] = heights;
  if (first === undefined) return [new Map()];
  return Array.from({ length: Math.floor(stack / first + 1e-9) + 1 }, (_, n) =>
    allSlots(rest, stack - n * first).map((slots) => new Map([[first, n], ...slots])),
  ).flat();
}
