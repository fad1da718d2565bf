import { expect, test } from 'vitest';
import { findSewingOrder, isSewable } from '../../src/cutting/sewing-order.ts';
import { stepOnto } from '../../src/cutting/sewing-step.ts';
import { sewingUnit } from '../../src/cutting/sewing-unit.ts';
import { cross, distance, type Point, type Polygon, subtract } from '../../src/shape/point.ts';
import { startsByTrying } from './cell-units.ts';
import { cellUnit, cutUnit, knottedUnit, rounded, seeded, shuffled } from './random-units.ts';

const TOLERANCE = 1e-3;

/**
 * Whether an order can be sewn, reckoned only from corners: each next patch has an edge whose line has it wholly to one side
 * and all before it to the other. That is the whole rule where the finished unit has no notch.
 */
function sewsStraight(patches: readonly Polygon[], order: readonly number[]): boolean {
  return order.slice(1).every((index, k) => {
    const before = order.slice(0, k + 1).map((each) => patches[each]!);
    const patch = patches[index]!;
    return patch.some((from, i) => {
      const to = patch[(i + 1) % patch.length]!;
      const off = (p: Point): number => cross(subtract(to, from), subtract(p, from)) / distance(from, to);
      const touching = before.some((other) => other.filter((p) => Math.abs(off(p)) < 1e-4).length >= 2);
      return touching && patch.every((p) => off(p) > -1e-4) && before.flat().every((p) => off(p) < 1e-4);
    });
  });
}

function everyOrder(items: readonly number[]): readonly (readonly number[])[] {
  return items.length === 0
    ? [[]]
    : items.flatMap((item) => everyOrder(items.filter((each) => each !== item)).map((rest) => [item, ...rest]));
}

test('an order is found for 500 units built by straight cuts, and each step of it is one straight seam', () => {
  const random = seeded(1);
  let notched = 0;
  for (let k = 0; k < 500; k++) {
    const isNotched = random() < 0.4;
    notched += isNotched ? 1 : 0;
    const size = 2 + Math.floor(random() * 9);
    const patches = shuffled(random, cutUnit(random, size, isNotched));
    const found = findSewingOrder(patches.map(rounded), TOLERANCE);
    expect(isSewable(found), `unit ${k}`).toBe(true);
    if (isSewable(found)) {
      expect([...found.order].sort((a, b) => a - b)).toEqual(patches.map((_, i) => i));
      for (const order of [found.order, ...found.others]) {
        const before = patches.map(() => false);
        const unit = sewingUnit(patches, TOLERANCE);
        order.forEach((index, place) => {
          expect(place === 0 || 'seam' in stepOnto(unit, index, before), `unit ${k} ${order}`).toBe(true);
          before[index] = true;
        });
        expect(isNotched || sewsStraight(patches, order), `unit ${k}`).toBe(true);
      }
    }
  }
  expect(notched).toBeGreaterThan(100);
});

test('200 units that cannot be sewn are refused, with the patches that hold each other', () => {
  const random = seeded(2);
  for (let k = 0; k < 200; k++) {
    const { patches, knot, all } = knottedUnit(random, Math.floor(random() * 5));
    const found = findSewingOrder(patches.map(rounded), TOLERANCE);
    expect(isSewable(found), `unit ${k}`).toBe(false);
    if (!isSewable(found)) {
      const { patches: blocking } = found.blocked;
      expect(
        blocking.filter((index) => !knot.includes(index)),
        `unit ${k}`,
      ).toEqual([]);
      expect(all ? blocking.length === knot.length : blocking.length > 2, `unit ${k}`).toBe(true);
      expect(everyOrder(blocking).some((order) => sewsStraight(patches, order))).toBe(false);
      expect(found.blocked.after.filter((index) => knot.includes(index))).toEqual([]);
      expect(found.blocked.proved).toBe(true);
    }
  }
});

test('with up to 8 patches of whole cells, notches and holes among them, it agrees with trying every order', () => {
  const random = seeded(3);
  const tally = { sewn: 0, refused: 0 };
  for (let k = 0; k < 1000; k++) {
    const { cells, outlines } = cellUnit(random, 8);
    const starts = startsByTrying(cells, outlines.length);
    const found = findSewingOrder(outlines, TOLERANCE);
    const begun = isSewable(found) ? [found.order, ...found.others].map((order) => order[0]!) : [];
    expect(
      outlines.map((_, index) => begun.includes(index)),
      cells
        .map((row) => row.join(' '))
        .reverse()
        .join(' / '),
    ).toEqual(starts);
    tally[isSewable(found) ? 'sewn' : 'refused']++;
    if (!isSewable(found)) {
      expect(found.blocked.proved).toBe(true);
    }
  }
  expect(Math.min(tally.sewn, tally.refused)).toBeGreaterThan(200);
});
