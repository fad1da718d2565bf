import { expect, test } from 'vitest';
import { bestBounded } from '../../../workers/master/bounded-slots.ts';
import { numbers, vectors } from '../numbers.ts';

test('a bounded knapsack is worth what the best of all ways tried is worth, and fits', () => {
  for (let seed = 1; seed <= 200; seed++) {
    const draw = numbers(seed);
    const items = Array.from({ length: draw(1, 5) }, () => ({
      size: draw(1, 40) / 4,
      value: draw(-2, 20) / 2,
      most: draw(0, 3),
    }));
    const room = draw(4, 80) / 4;
    const worth = (counts: readonly number[]) => counts.reduce((sum, n, i) => sum + n * items[i]!.value, 0);
    const size = (counts: readonly number[]) => counts.reduce((sum, n, i) => sum + n * items[i]!.size, 0);
    const all = [...vectors(items.map((item) => item.most))].filter((counts) => size(counts) <= room + 1e-9);
    const best = bestBounded(items, room);
    const counts = [...best.counts];
    expect(best.value, `seed ${seed}`).toBeCloseTo(Math.max(...all.map(worth)), 9);
    expect(worth(counts)).toBeCloseTo(best.value, 9);
    expect(size(counts)).toBeLessThanOrEqual(room + 1e-9);
    expect(counts.every((n, i) => n <= items[i]!.most)).toBe(true);
  }
});
