import { describe, expect, test } from 'vitest';
import {
  between,
  type KnownRectangle,
  pixelLength,
  shrinkStraightening,
  straighteningFault,
  trueMap,
} from '../../../src/quilt/tracing/straightening.ts';
import { carry } from '../../../src/shape/homography.ts';
import { distance, type Point } from '../../../src/shape/point.ts';

/** A scan: 100 pixels an inch, the page's bottom left at (50, 950). */
const scan: KnownRectangle = {
  kind: 'rectangle',
  corners: [
    [50, 150],
    [1050, 150],
    [1050, 950],
    [50, 950],
  ],
  width: '10 in',
  height: 8,
};

describe('a picture taken straight on', () => {
  test('by its rectangle or by one length is of the same size, y turned up', () => {
    const byLength = { kind: 'length', from: [50, 950], to: [50, 150], length: '20.32 cm' } as const;
    for (const known of [scan, byLength]) {
      const { toTrue, toPicture } = trueMap(known, 'in');
      expect(distance(carry(toTrue, [350, 750]), [3, 2])).toBeLessThan(1e-9);
      expect(distance(carry(toPicture, [3, 2]), [350, 750])).toBeLessThan(1e-9);
      expect(pixelLength({ toTrue, toPicture }, [350, 750])).toBeCloseTo(0.01, 9);
    }
    expect(distance(carry(trueMap(scan, 'cm').toTrue, [150, 950]), [2.54, 0])).toBeLessThan(1e-9);
  });

  test('made smaller it is as large as before on the page', () => {
    const small = trueMap(shrinkStraightening(scan, 2.5), 'in');
    expect(distance(carry(small.toTrue, [350 / 2.5, 750 / 2.5]), [3, 2])).toBeLessThan(1e-9);
  });

  test('told anew, what was traced stays where it lies in the picture', () => {
    const slanted = {
      ...scan,
      corners: [
        [60, 170],
        [1020, 140],
        [1100, 990],
        [40, 940],
      ],
    } as const;
    const place: Point = [3, 2];
    const move = between(trueMap(scan, 'in'), trueMap(slanted, 'in'));
    expect(distance(carry(trueMap(slanted, 'in').toPicture, move(place)), [350, 750])).toBeLessThan(1e-6);
  });
});

test('what cannot be is told in words', () => {
  const [a, b, c, d] = scan.corners;
  expect(straighteningFault(scan, 'in')).toBeNull();
  expect(straighteningFault({ ...scan, width: 0 }, 'in')).toMatch(/width and height/);
  expect(straighteningFault({ ...scan, corners: [b, a, d, c] }, 'in')).toMatch(/wrong way/);
  expect(straighteningFault({ ...scan, corners: [a, c, b, d] }, 'in')).toMatch(/cross/);
  expect(straighteningFault({ kind: 'length', from: a, to: [55, 150], length: 1 }, 'in')).toMatch(/too near/);
  expect(straighteningFault({ kind: 'length', from: a, to: b, length: '1 ell' }, 'in')).toMatch(/unit "ell"/);
  expect(() => trueMap({ ...scan, height: -1 }, 'in')).toThrow(/more than nothing/);
});
