import { describe, expect, test } from 'vitest';
import { cosAndSin, degreesOf } from '../../src/shape/angle.ts';

const degrees = Array.from({ length: 1441 }, (_, i) => -360 + i / 2 + (i % 7) * 0.013);

describe('cosine and sine', () => {
  test('are those of the platform but for the last bits', () => {
    for (const d of degrees) {
      const [c, s] = cosAndSin(d);
      const radians = (d * Math.PI) / 180;
      expect(Math.abs(c - Math.cos(radians))).toBeLessThan(1.5e-15);
      expect(Math.abs(s - Math.sin(radians))).toBeLessThan(1.5e-15);
      expect(Math.abs(c * c + s * s - 1)).toBeLessThan(5e-16);
    }
  });

  test('quarter turns are exact, also far round', () => {
    for (const round of [0, 360, -720]) {
      expect([0, 90, 180, 270].map((d) => cosAndSin(d + round))).toEqual([
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ]);
    }
  });

  test('known values: half, and the roots of two and three over two', () => {
    expect(cosAndSin(60)[0]).toBeCloseTo(0.5, 15);
    expect(cosAndSin(45)[1]).toBeCloseTo(Math.SQRT1_2, 15);
    expect(cosAndSin(30)[0]).toBeCloseTo(Math.sqrt(3) / 2, 15);
  });
});

describe('where a direction points', () => {
  test('is what the platform says but for the last bits', () => {
    for (const d of degrees) {
      const [c, s] = cosAndSin(d);
      expect(degreesOf(3 * c, 3 * s)).toBeCloseTo((Math.atan2(3 * s, 3 * c) * 180) / Math.PI, 12);
    }
  });

  test('level, upright and half-way directions are exact, and no direction is 0', () => {
    const round = [
      [1, 0],
      [2, 2],
      [0, 3],
      [-1, 1],
      [-4, 0],
      [-2, -2],
      [0, -1],
      [5, -5],
      [0, 0],
    ] as const;
    expect(round.map(([x, y]) => degreesOf(x, y))).toEqual([0, 45, 90, 135, 180, -135, -90, -45, 0]);
  });
});
