import fc from 'fast-check';
import { expect, it } from 'vitest';
import { acrossSeam, beforeFlip, printBeforeFlip } from '../../src/cutting/before-flip.ts';
import { offLine, seamLine } from '../../src/cutting/seam-line.ts';
import { flatten } from '../../src/shape/flatten.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { add, degreesFromUp, distance, fromUp, type Point, subtract } from '../../src/shape/point.ts';

const coordinate = fc.double({ min: -10, max: 10, noNaN: true });
const place = fc.tuple(coordinate, coordinate);
const line = fc
  .tuple(place, place)
  .filter(([a, b]) => distance(a, b) > 0.1)
  .map(([a, b]) => seamLine(a, b));

it('a patch lies on the other side of its seam, as far from it, and flips back to its place', () => {
  fc.assert(
    fc.property(line, place, (seam, point) => {
      const there = acrossSeam(seam, point);
      expect(offLine(seam, there)).toBeCloseTo(-offLine(seam, point), 8);
      expect(distance(there, seam.from)).toBeCloseTo(distance(point, seam.from), 8);
      expect(distance(there, seam.to)).toBeCloseTo(distance(point, seam.to), 8);
      expect(distance(acrossSeam(seam, there), point)).toBeLessThan(1e-8);
    }),
  );
});

it('its print points where an arrow laid on it would', () => {
  fc.assert(
    fc.property(line, place, fc.double({ min: 0, max: 359, noNaN: true }), (seam, at, degrees) => {
      const tail = acrossSeam(seam, at);
      const tip = acrossSeam(seam, add(at, fromUp(degrees)));
      const drawn = degreesFromUp(subtract(tip, tail));
      const apart = Math.abs(((drawn - printBeforeFlip(seam, degrees) + 540) % 360) - 180);
      expect(apart).toBeLessThan(1e-6);
    }),
  );
});

it('a curved edge bulges away from the patch as before', () => {
  const outline: Outline = [[1, 0], [2, 0], { arc: { radius: 2, turn: 'anticlockwise' } }, [0, 2], [0, 1]];
  const seam = seamLine([1, 0], [0, 1]);
  const flipped = flatten(beforeFlip(seam, outline), { side: 'chord', within: 1e-3 });
  const byPoint = flatten(outline, { side: 'chord', within: 1e-3 }).map((point) => acrossSeam(seam, point));
  const near = (a: Point) => Math.min(...flipped.map((b) => distance(a, b)));
  expect(Math.max(...byPoint.map(near))).toBeLessThan(1e-6);
});
