/**
 * Lengths worked out in public by quilters, bought in every step that cloth is sold in, from the quilt file to the words on the slip.
 * Sold by the quarter yard and the quarter metre: several shops, read. By the eighth of a yard and by 10 cm: common practice.
 */
import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { saySteps } from '../../src/plan/say-steps.ts';
import type { LengthUnit } from '../../src/quilt/quilt.ts';
import { clothOf, quiltOf } from '../cutting/sample-quilt.ts';
import { planned } from './engine.ts';

interface Need {
  readonly unit: LengthUnit;
  readonly width: number;
  readonly strip: number;
  readonly total: number;
  /** As published. */
  readonly needed: number;
}

// sylviasquiltdepot.com, read: binding for 46 by 46 in from 40 in usable, 2 1/2 in strips: 5 strips, 12 1/2 in.
const BINDING: Need = { unit: 'in', width: 40, strip: 2.5, total: 4 * 46, needed: 12.5 };
// eternalmaker.com/fabric-measuring-tips, read: binding for 1.5 by 1 m, cloth of 110 cm, 12 cm strips: 5 strips, 60 cm.
const METRIC: Need = { unit: 'cm', width: 110, strip: 12, total: 500, needed: 60 };
// quiltingboard.com/6228687, read: 63 squares of 9 1/2 in, 42 usable: 16 strips of 4, 152 in, 4.222 yd. As strips of that width here.
const SIXTEEN: Need = { unit: 'in', width: 42, strip: 9.5, total: 16 * 42, needed: 152 };

test.each([
  [BINDING, '1/4 yd', 2, 18, '2 quarter yards'],
  [BINDING, '1/8 yd', 3, 13.5, '3 eighths of a yard'],
  [METRIC, '1/4 m', 3, 75, '3 quarter metres'],
  [METRIC, '0.25 m', 3, 75, '3 quarter metres'],
  [METRIC, '10 cm', 6, 60, '6 × 10 cm'],
  // 4.222 yd are 4 1/4 yd, by quarters or by eighths: derived.
  [SIXTEEN, '1/4 yd', 17, 153, '17 quarter yards'],
  [SIXTEEN, '1/8 yd', 34, 153, '34 eighths of a yard'],
] as const)('case %#: in steps of %s', async ({ unit, width, strip, total, needed }, step, steps, buy, words) => {
  const price = { amount: 12, per: unit === 'in' ? 'yd' : 'm', currency: '$' } as const;
  const quilt = quiltOf([], { to: 'free' }, clothOf('solid', { width, step, price }), {
    unit,
    blocks: [],
    ruler: unit === 'in' ? 0.125 : 0.5,
    joined: [{ id: 'j', name: 'Joined', role: 'r', length: total, width: strip, join: 0 }],
  });
  const cutList = makeCutList(quilt);
  const answers = await Promise.all(cutList.groups.map((group) => planned({ ...group.job, seconds: 5 })));
  const [line] = makeTally(quilt, cutList, answers).cloths;
  expect(line).toMatchObject({ steps, proof: { state: 'least' } });
  expect(line!.need).toBeCloseTo(needed, 6);
  expect(line!.buy).toBeCloseTo(buy, 6);
  expect(line!.price).toBeCloseTo((12 * buy) / (unit === 'in' ? 36 : 100), 2);
  expect(saySteps(line!.steps!, step, unit)).toBe(words);
});
