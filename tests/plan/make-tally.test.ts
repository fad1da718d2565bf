import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/plan/layout-job.ts';
import { saySteps } from '../../src/plan/say-steps.ts';
import type { Areas } from '../../src/plan/tally.ts';
import type { Cloth } from '../../src/quilt/quilt.ts';

import { answerOf, blank, four, groupOf, linen, onBolt, quiltWith, tally } from './sample-cloth.ts';

function expectToAddUp(areas: Areas): void {
  const { used, ...parts } = areas;
  expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(used, 6);
  for (const [name, part] of Object.entries(parts)) {
    expect(part, name).toBeGreaterThanOrEqual(-1e-9);
  }
}

describe('one cloth from its bolt', () => {
  const keeping = { ...quiltWith(linen), keep: 4 };
  const result = tally(keeping, onBolt([blank('A1', 5, 3, { spares: 1 })]), answerOf([four]));
  const cloth = result.cloths[0]!;

  test('is bought in whole steps, priced as sold, and the rest is over', () => {
    expect(cloth).toMatchObject({ need: 4, steps: 1, buy: 9, price: 3, over: 5, blanks: 4, name: 'Linen' });
    expect(result).toMatchObject({ price: 3, currency: '$', provedLeast: true });
  });

  test('every square inch is put to one account', () => {
    expect(cloth.areas).toEqual({
      used: 360,
      finished: 3 * 4 * 2,
      seams: 3 * (4.5 * 2.5 - 8),
      room: 3 * (15 - 4.5 * 2.5),
      spares: 15,
      squaring: 40,
      kept: 5 * 40,
      waste: 160 - 40 - 60,
    });
    expectToAddUp(cloth.areas);
    expect(result.areas).toEqual(cloth.areas);
  });

  test('the proof is told in words, with what the area alone would allow', () => {
    expect(cloth.proof).toEqual({
      state: 'least',
      atLeast: 1,
      words: 'No plan with strips cut like these buys less than 1 quarter yard.',
      byArea: 1,
    });
  });
});

describe('the proof', () => {
  const quilt = quiltWith(linen);
  const wide = blank('A1', 21, 8.5);
  const stack: Layout = {
    cloth: 'linen',
    count: 1,
    length: 35,
    strips: [{ from: 0, height: 1 }, ...[0, 1, 2, 3].map((k) => ({ from: 1 + 8.5 * k, height: 8.5 }))],
    placements: [0, 1, 2, 3].map((k) => ({ blank: 'A1', shape: 0, turn: 0, mirror: false, x: 0, y: 1 + 8.5 * k })),
  };

  test('tells that strips need more than the area alone would', () => {
    // 4 × 21 × 8.5 = 714 square inches over 40 are 17.85 in, and 1 in to square: three steps of 9; the strips take 35.
    const { proof, steps } = tally(quilt, onBolt([wide]), answerOf([stack], { cost: 36, bound: 36 })).cloths[0]!;
    expect(steps).toBe(4);
    expect(proof).toMatchObject({ state: 'least', atLeast: 4, byArea: 3 });
    expect(proof.words).toBe('No plan with strips cut like these buys less than 4 quarter yards.');
  });

  test('a bound between two steps proves the upper one', () => {
    const { proof } = tally(quilt, onBolt([wide]), answerOf([stack], { status: 'feasible', cost: 36, bound: 27.5 }))
      .cloths[0]!;
    expect(proof).toMatchObject({ state: 'least', atLeast: 4 });
  });

  test('a gap is told as one, and never as least', () => {
    const result = tally(quilt, onBolt([wide]), answerOf([stack], { status: 'feasible', cost: 36, bound: 27 }));
    expect(result.provedLeast).toBe(false);
    expect(result.cloths[0]!.proof).toMatchObject({
      state: 'gap',
      atLeast: 3,
      words:
        'This plan buys 4 quarter yards. No plan with strips cut like these buys less than 3 quarter yards; whether less than this would do is not known.',
    });
  });

  test('where the search proves less than the area alone does, the area is the proof', () => {
    const { proof } = tally(quilt, onBolt([wide]), answerOf([stack], { status: 'feasible', cost: 36, bound: 0 }))
      .cloths[0]!;
    expect(proof).toMatchObject({
      state: 'gap',
      atLeast: 3,
      words:
        'This plan buys 4 quarter yards. The blanks alone cover so much cloth that no plan buys less than 3 quarter yards; whether less than this would do is not known.',
    });
    // 16 blanks of 20 × 8 fill the width: 2560 / 40 + 1 = 65 in, just what the plan takes.
    const full = blank('A1', 20, 8, { demand: 16 });
    const rows: Layout = {
      ...stack,
      length: 65,
      strips: Array.from({ length: 9 }, (_, k) => (k === 0 ? { from: 0, height: 1 } : { from: 8 * k - 7, height: 8 })),
      placements: Array.from({ length: 16 }, (_, k) => ({
        ...stack.placements[0]!,
        x: 20 * (k % 2),
        y: 1 + 8 * Math.floor(k / 2),
      })),
    };
    const area = tally(quilt, onBolt([full]), answerOf([rows], { status: 'feasible', bound: 0 }));
    expect(area.cloths[0]!.proof).toMatchObject({ state: 'least', atLeast: 8 });
    expect(area.cloths[0]!.proof.words).toMatch(/^The blanks alone cover so much cloth that no plan buys less than 8/);
  });

  test('what the shelf has is taken off the area before it proves anything', () => {
    const group = groupOf(
      [wide],
      [
        { id: 'linen', cloth: 'linen', piece: null },
        { id: 'linen/roll', cloth: 'linen', piece: 'roll' },
      ],
      [
        { id: 'linen', width: 40, step: 9, squaring: 1 },
        { id: 'linen/roll', width: 40, length: 20, cost: 0 },
      ],
    );
    const { proof } = tally(quilt, group, answerOf([stack], { status: 'feasible', cost: 36, bound: 0 })).cloths[0]!;
    expect(proof).toMatchObject({
      state: 'gap',
      atLeast: 0,
      words: 'This plan buys 4 quarter yards. Whether less than this would do is not known.',
    });
  });

  test('where something is not placed, nothing is proved and what is missing is named', () => {
    const result = tally(
      quilt,
      onBolt([wide, blank('B1', 50, 4)]),
      answerOf([stack], { status: 'partial', bound: null, unplaced: [{ blank: 'B1', count: 4, why: 'too wide' }] }),
    );
    expect(result.provedLeast).toBe(false);
    expect(result.cloths[0]!.proof).toMatchObject({
      state: 'none',
      atLeast: null,
      words: 'Not everything can be cut, so nothing is proved: B1 (4).',
    });
    expect(result.cloths[0]!.unplaced).toEqual([{ blank: 'B1', count: 4, why: 'too wide' }]);
  });

  test('what the shelf pieces may cost is taken off the bound', () => {
    const group = groupOf(
      [wide],
      [
        { id: 'linen', cloth: 'linen', piece: null },
        { id: 'linen/scrap', cloth: 'linen', piece: 'scrap' },
      ],
      [
        { id: 'linen', width: 40, step: 9 },
        { id: 'linen/scrap', width: 10, length: 10, cost: 9 },
      ],
    );
    const owning = quiltWith({ ...linen, pieces: [{ id: 'scrap', width: 10, length: 10 }] });
    // 36 might be three steps and the piece.
    const { proof } = tally(owning, group, answerOf([stack], { cost: 36, bound: 36 })).cloths[0]!;
    expect(proof).toMatchObject({ state: 'gap', atLeast: 3 });
  });

  test('of cloths that may stand in for each other only the two together are proved', () => {
    const other: Cloth = { ...linen, id: 'ramie', name: 'Ramie' };
    const group = groupOf(
      [wide],
      [
        { id: 'linen', cloth: 'linen', piece: null },
        { id: 'ramie', cloth: 'ramie', piece: null },
      ],
      [
        { id: 'linen', width: 40, step: 9, squaring: 1 },
        { id: 'ramie', width: 40, step: 9, squaring: 1 },
      ],
    );
    const result = tally(quiltWith(linen, other), group, answerOf([stack], { cost: 36, bound: 36 }));
    expect(result.cloths[0]!.proof).toMatchObject({ state: 'least', atLeast: null });
    expect(result.cloths[0]!.proof.words).toContain('taken together');
    expect(result.cloths[1]!.proof.words).toBe('Nothing of this cloth to buy.');
  });
});

describe('shelf pieces', () => {
  const piece: Cloth = {
    id: 'linen',
    name: 'Linen',
    colour: '#d9cfb4',
    print: 'solid',
    width: '40 in',
    shrinkage: { along: 10, across: 5 },
    pieces: [{ id: 'scrap', width: 21, length: 18, count: 2, washed: false }],
  };
  /** 18 in shrink to 16.2, of which 1 goes to squaring. */
  const group = groupOf(
    [blank('A1', 5, 3)],
    [{ id: 'linen/scrap', cloth: 'linen', piece: 'scrap' }],
    [{ id: 'linen/scrap', width: 19.95, length: 15.2, count: 2, cost: 0 }],
  );
  const layout: Layout = {
    cloth: 'linen/scrap',
    count: 2,
    length: 3,
    strips: [{ from: 0, height: 3 }],
    placements: [0, 5].map((x) => ({ blank: 'A1', shape: 0, turn: 0, mirror: false, x, y: 0 })),
  };

  test('cost nothing, are counted, and account for their ends and their squaring', () => {
    const result = tally(quiltWith(piece), group, answerOf([layout], { cost: 0, bound: 0 }));
    const cloth = result.cloths[0]!;
    expect(cloth).toMatchObject({ need: 0, steps: null, buy: 0, price: null, over: 0, blanks: 4 });
    expect(cloth.pieces).toEqual([{ piece: 'scrap', used: 2 }]);
    expect(cloth.proof.words).toBe('The shelf is enough: nothing to buy.');
    expect(cloth.areas.used).toBeCloseTo(2 * 16.2 * 19.95, 9);
    expect(cloth.areas.squaring).toBeCloseTo(2 * 19.95, 9);
    expect(cloth.areas.kept).toBeCloseTo(2 * 12.2 * 19.95, 9);
    expectToAddUp(cloth.areas);
    expect(result.price).toBeNull();
  });
});

test('areas add up whatever the blanks, spares, counts and lengths', () => {
  const sizes = fc.record({
    w: fc.double({ min: 1.5, max: 8, noNaN: true }),
    h: fc.double({ min: 1.5, max: 8, noNaN: true }),
    count: fc.integer({ min: 1, max: 5 }),
    spares: fc.integer({ min: 0, max: 3 }),
  });
  fc.assert(
    fc.property(fc.array(sizes, { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 3 }), (kinds, count) => {
      const blanks = kinds.map(({ w, h, count: each, spares }, i) =>
        blank(`A${i}`, w, h, { demand: each * count, spares: Math.min(spares, each * count) }),
      );
      const height = Math.max(...kinds.map((kind) => kind.h));
      const layout: Layout = {
        cloth: 'linen',
        count,
        length: 1 + kinds.length * height,
        strips: [{ from: 0, height: 1 }, ...kinds.map((_, i) => ({ from: 1 + i * height, height }))],
        placements: kinds.flatMap(({ w, count: each }, i) =>
          Array.from({ length: each }, (_, k) => ({
            blank: `A${i}`,
            shape: 0,
            turn: 0,
            mirror: false,
            x: k * w,
            y: 1 + i * height,
          })),
        ),
      };
      const { areas } = tally(quiltWith(linen), onBolt(blanks), answerOf([layout]));
      expectToAddUp(areas);
      const spareArea = blanks.reduce((sum, each, i) => sum + each.spares * kinds[i]!.w * kinds[i]!.h, 0);
      expect(areas.spares).toBeCloseTo(spareArea, 6);
    }),
  );
});

test.each([
  [1, '1/4 yd', '1 quarter yard'],
  [3, '1/4 yd', '3 quarter yards'],
  [2, '1/8 yd', '2 eighths of a yard'],
  [2, '1 yd', '2 yards'],
  [5, '1/2 m', '5 half metres'],
  [3, '10 cm', '3 × 10 cm'],
  [1, 4.5, '4 1/2 in'],
] as const)('%i steps of %s are told as "%s"', (steps, step, words) => {
  expect(saySteps(steps, step, 'in')).toBe(words);
});
