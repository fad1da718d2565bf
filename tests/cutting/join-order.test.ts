import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blockPieces } from '../../src/cutting/block-pieces.ts';
import { type JoinStep, joinOrder } from '../../src/cutting/join-order.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import type { Unit } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { unitsOf } from '../../src/quilt/units-of.ts';
import { oblong, patchOf, ringWedge, unitOf } from './sample-quilt.ts';

const star = (points: number, wedges: number): readonly Unit[] =>
  drawForm({ kind: 'compass-star', points, inner: 4, outer: 10, ring: 13.25, wedges, side: 28 }, 'in');

/** "8 A+B" and so on; a mirrored place with a dash. */
const told = (steps: readonly JoinStep[]): readonly string[] =>
  steps.map(({ times, parts }) => {
    const names = parts.map(({ pieces }) =>
      pieces.map(({ name, mirrored }) => (mirrored ? `${name}'` : name)).join(''),
    );
    return `${times} ${names.join('+')}`;
  });

test('a star of sixteen is joined by pairs, quarters and halves, then set into its ring, and that into the ground', () => {
  const { steps, apart } = joinOrder(star(16, 20));
  expect(apart).toEqual([]);
  expect(told(steps.slice(0, 4))).toEqual(['4 A+B', "4 A+B'", "4 AB+AB'", "2 AABB'+AABB'"]);
  expect(steps.map(({ makes }) => makes.ofRound)).toEqual([null, null, 4, 2, 1, null, null, 4, 2, 1, 1, 2, 1, 1]);
  expect(steps.map(({ kind }) => kind).filter((kind) => kind !== 'straight')).toEqual(['curve', 'curve']);
  // The long seam runs right across the star; the circles are 2πr round (derived).
  expect(steps[4]!.size).toBeCloseTo(20, 6);
  expect(steps[10]!.size).toBeCloseTo(20 * Math.PI, 6);
  expect(steps[13]!.size).toBeCloseTo(26.5 * Math.PI, 6);
  // The centre and, either side of it, where four valleys meet.
  expect(steps[4]!.points).toHaveLength(3);
});

test('whatever the numbers of a star, every seam between its pieces is sewn once, and every piece is used', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 16 }), fc.integer({ min: 3, max: 31 }), (halfPoints, wedges) => {
      const units = star(2 * halfPoints, wedges);
      const { steps } = joinOrder(units);
      const joins = steps.reduce((sum, { times, parts }) => sum + times * (parts.length - 1), 0);
      expect(joins).toBe(blockPieces(units).length - 1);
      // Seams between sectors, between wedges, round the star, round the ring, on the ground's diagonals (derived).
      const between = 2 * halfPoints * 10 + wedges * 3.25 + 4 * (14 * Math.SQRT2 - 13.25);
      const sewn = steps.reduce((sum, { times, size }) => sum + times * size, 0);
      // Stretches shorter than twice the tolerance are passed over.
      expect(Math.abs(sewn - between - 2 * Math.PI * (10 + 13.25))).toBeLessThan(0.05);
      for (const { parts, makes } of steps) {
        expect(parts.flatMap(({ pieces }) => pieces).length).toBe(makes.pieces.length);
      }
    }),
    { numRuns: 12 },
  );
});

test('a ring of an odd number is sewn in two parts and closed at two seams', () => {
  const { steps } = joinOrder([unitOf(ringWedge(7, 2, 8), { count: 7 })]);
  expect(steps.at(-1)!.kind).toBe('ring');
  expect(steps.at(-1)!.size).toBeCloseTo(12, 6);
  expect(steps.slice(0, -1).every(({ kind }) => kind === 'straight')).toBe(true);
});

test('squares are sewn in rows, and the rows to each other', () => {
  const cells = [0, 1, 2].flatMap((y) => [0, 1, 2].map((x) => patchOf(3 * y + x + 1, oblong(x - 1, 1 - y, 1, 1))));
  const { steps } = joinOrder([unitOf([], { count: 1 }, { patches: cells })]);
  const names = steps.map(({ parts }) => parts.map(({ pieces }) => pieces.map(({ name }) => name).join('')));
  expect(names.map(({ length }) => length)).toEqual([3, 3, 3, 3]);
  expect(names.at(-1)).toEqual(['A1A2A3', 'A4A5A6', 'A7A8A9']);
});

test('the gate is sewn from its corner squares, in three rows', () => {
  const quilt = readQuilt(
    readFileSync(new URL('../../scenarios/garden-gate.yardwright.json', import.meta.url), 'utf8'),
  );
  const { steps } = joinOrder(unitsOf(quilt.blocks[0]!, quilt.unit));
  expect(told(steps)).toEqual(['1 C1+A1+C1', '4 B1+B2', '2 B1B2+C1+B1B2', '1 B1B2B1B2C1+A1C1C1+B1B2B1B2C1']);
});

test('pieces that meet none of the others are told apart', () => {
  const patches = [patchOf(1, oblong(0, 0, 1, 1)), patchOf(2, oblong(3, 0, 1, 1))];
  const { steps, apart } = joinOrder([unitOf([], { count: 1 }, { patches })]);
  expect(steps).toEqual([]);
  expect(apart.map(({ name }) => name)).toEqual(['A1', 'A2']);
});
