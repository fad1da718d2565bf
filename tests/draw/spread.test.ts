import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from '../../src/draw/spread.ts';

test('labels with room enough stay where they belong', () => {
  expect(spread([1, 4, 9], 2, 0, 10)).toEqual([1, 4, 9]);
});

test('a crowd is centred on where it belongs', () => {
  expect(spread([5, 5, 5], 2, 0, 10)).toEqual([3, 5, 7]);
});

test('labels keep their order and their distance, inside the margin wherever all can be', () => {
  const places = fc.array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 1, maxLength: 20 });
  fc.assert(
    fc.property(places, (unsorted) => {
      const wanted = [...unsorted].sort((a, b) => a - b);
      const placed = spread(wanted, 2, 0, 40);
      placed.slice(1).forEach((at, index) => {
        expect(at - placed[index]!).toBeGreaterThanOrEqual(2 - 1e-9);
      });
      expect(placed[0]).toBeGreaterThanOrEqual(-1e-9);
      expect(placed.at(-1)).toBeLessThanOrEqual(40 + 1e-9);
    }),
  );
});
