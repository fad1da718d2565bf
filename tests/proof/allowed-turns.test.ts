import { describe, expect, test } from 'vitest';
import type { Turns } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { allowsFreeTurn, allowsStripTurn, stripTurns } from '../../workers/proof/allowed-turns.ts';

/** A right triangle whose long side rises 3 over 4: 36.8699° from the strip. */
const triangle: Polygon = [
  [0, 0],
  [4, 0],
  [4, 3],
];
const slope = (Math.atan2(3, 4) * 180) / Math.PI;
const rule = (turns: Turns, outline: Polygon = triangle) => ({ outline, turns, mirror: false });

describe('from strips', () => {
  test.each<[string, Turns, number, boolean]>([
    ['a listed turn', [0, 180], 180, true],
    ['a listed turn a whole turn later', [0, 180], -180, true],
    ['a turn that is not listed', [0, 180], 90, false],
    ['a hundredth of a degree off', [0], 0.01, false],
    ['the centre of an interval', [{ centre: 350, within: 15 }], -10, true],
    ['its lower end', [{ centre: 350, within: 15 }], 335, true],
    ['its upper end, past a whole turn', [{ centre: 350, within: 15 }], 5, true],
    ['a turn in it that lays a side along the strip', [{ centre: 350, within: 15 }], 0, true],
    ['a turn in it that lays none', [{ centre: 350, within: 15 }], 1, false],
    ['a turn in it that lays the long side along the strip', [{ centre: -40, within: 5 }], -slope, true],
    ['a turn in it that lays the long side square to it', [{ centre: 50, within: 5 }], 90 - slope, true],
    ['a multiple of 15° in it', [{ centre: 350, within: 50 }], 15, false],
    ['a turn that lays a side along the strip outside it', [{ centre: 350, within: 5 }], 0, false],
    ['any: a multiple of 15°', 'any', 255, true],
    ['any: the long side along the strip', 'any', 180 - slope, true],
    ['any: no side and no multiple of 15°', 'any', 20, false],
  ])('%s', (_, turns, turn, expected) => {
    expect(allowsStripTurn(rule(turns), turn)).toBe(expected);
  });

  test('every turn that is listed for heights is allowed, and of a triangle turned freely there are 24 and 4 for each side', () => {
    for (const turns of ['any', [10, { centre: 45, within: 30 }]] satisfies Turns[]) {
      for (const turn of stripTurns(rule(turns))) expect(allowsStripTurn(rule(turns), turn)).toBe(true);
    }
    const distinct = new Set(stripTurns(rule('any')).map((turn) => Math.round((((turn % 360) + 360) % 360) * 1e6)));
    // Two sides lie square already, so their turns are among the 24; the long side adds four.
    expect(distinct.size).toBe(24 + 4);
  });

  test('a blank with a notch may lie on the hull’s side', () => {
    const ell: Polygon = [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ];
    const overNotch = (Math.atan2(2, 1) * 180) / Math.PI - 90;
    expect(allowsStripTurn(rule('any', ell), -overNotch)).toBe(false);
    expect(allowsStripTurn(rule('any', ell), overNotch)).toBe(true);
  });
});

describe('round a template', () => {
  test.each<[Turns, number, boolean]>([
    ['any', 1.234, true],
    [[{ centre: 350, within: 15 }], 1, true],
    [[{ centre: 350, within: 15 }], 5.1, false],
    [[0, 90], 90, true],
    [[0, 90], 45, false],
  ])('%j allows %d°: %s', (turns, turn, expected) => {
    expect(allowsFreeTurn(rule(turns), turn)).toBe(expected);
  });
});
