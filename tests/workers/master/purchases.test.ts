/** Purchases against going through every one of them. */
import { describe, expect, test } from 'vitest';
import {
  affordable,
  bestPurchases,
  costBelow,
  costOfUnits,
  type Supply,
  usableOf,
} from '../../../workers/master/purchases.ts';
import { type Draw, numbers, pickFrom, vectors } from '../numbers.ts';

const MOST = 6;

function supplies(draw: Draw): readonly Supply[] {
  return Array.from({ length: draw(1, 3) }, (_, cloth) => {
    const unit = pickFrom(draw, [0, 1, 1.25, 2.7, 4.5]);
    return {
      cloth,
      unit,
      // Where a length costs nothing, what is squared off it costs nothing either.
      first: unit === 0 ? 0 : pickFrom(draw, [0, 0, 0.5]),
      size: pickFrom(draw, [1, 4.5]),
      lost: pickFrom(draw, [0, 0.5]),
      stock: pickFrom(draw, [1, 3, MOST]),
    };
  });
}

const every = (all: readonly Supply[]) =>
  [...vectors(all.map((s) => s.stock))].map((counts) => ({
    counts,
    cost: all.reduce((sum, s, i) => sum + costOfUnits(s, counts[i]!), 0),
  }));

const CASES = Array.from({ length: 120 }, (_, i) => {
  const draw = numbers(i + 1);
  return { seed: i + 1, draw, all: supplies(draw) };
});

describe('purchases', () => {
  test('the next cheaper cost is the greatest below that any purchase has', () => {
    for (const { seed, draw, all } of CASES) {
      const costs = every(all).map((p) => p.cost);
      for (let k = 0; k < 5; k++) {
        const cost = pickFrom(draw, costs);
        const below = costs.filter((c) => c < cost - 1e-6);
        const found = costBelow(all, cost);
        expect([seed, found]).toEqual([seed, below.length === 0 ? null : expect.closeTo(Math.max(...below), 6)]);
      }
    }
  });

  test('the best for a cost gives as much as any that costs no more, and none is passed over', () => {
    for (const { seed, draw, all } of CASES) {
      const worth = all.map(() => draw(0, 20) / 10);
      const box = {
        least: all.map((s) => Math.min(s.stock, draw(0, 2))),
        most: all.map((s) => Math.max(2, draw(0, s.stock))),
      };
      const inside = every(all).filter(({ counts }) =>
        counts.every((n, i) => n >= box.least[i]! && n <= Math.min(box.most[i]!, all[i]!.stock)),
      );
      const best = bestPurchases(all, box, worth, 20)!;
      for (const { cost } of inside.filter((p) => p.cost <= 20)) {
        const most = Math.max(
          ...inside
            .filter((p) => p.cost <= cost + 1e-9)
            .map(({ counts }) => all.reduce((sum, s, i) => sum + worth[i]! * usableOf(s, counts[i]!), 0)),
        );
        const found = Math.max(...best.filter((p) => p.cost <= cost + 1e-9).map((p) => p.value));
        expect(found, `case ${seed}`).toBeCloseTo(most, 6);
      }
    }
  });

  test('what cannot be afforded leaves the box, and nothing else does', () => {
    for (const { seed, draw, all } of CASES) {
      const most = draw(0, 120) / 10;
      const wide = { least: all.map((s) => Math.min(s.stock, draw(0, 1))), most: all.map(() => Infinity) };
      const paid = every(all).filter(
        ({ cost, counts }) => cost <= most + 1e-9 && counts.every((n, i) => n >= wide.least[i]!),
      );
      const box = affordable(all, wide, most);
      expect([seed, box === null]).toEqual([seed, paid.length === 0]);
      if (!box) continue;
      all.forEach((_, i) => {
        expect([seed, box.most[i]]).toEqual([seed, Math.max(...paid.map((p) => p.counts[i]!))]);
      });
    }
  });
});
