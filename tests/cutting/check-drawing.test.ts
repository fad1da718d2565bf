import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkDrawing, type DrawingFault } from '../../src/cutting/check-drawing.ts';
import { drawForm } from '../../src/quilt/forms/forms.ts';
import type { Unit } from '../../src/quilt/quilt.ts';
import { oblong, patchOf, ringWedge, unitOf } from './sample-quilt.ts';

const CLOSE = { tolerance: 0.004, near: 1 / 16 };

const star = (more: Partial<Record<'points' | 'wedges' | 'outer', number>> = {}): readonly Unit[] =>
  drawForm({ kind: 'compass-star', points: 16, inner: 4, outer: 10, ring: 13.25, wedges: 20, side: 28, ...more }, 'in');

const kinds = (faults: readonly DrawingFault[]): readonly string[] =>
  [...new Set(faults.map(({ kind }) => kind))].sort();

test('nothing is found wrong with a star, whatever its numbers', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 3, max: 16 }),
      // Corners of star and ring meet, or are well apart.
      fc.constantFrom(1, 2, 4),
      fc.double({ min: 6, max: 12, noNaN: true }),
      (halfPoints, times, outer) => {
        expect(checkDrawing(star({ points: 2 * halfPoints, wedges: halfPoints * times, outer }), CLOSE)).toEqual([]);
      },
    ),
    { numRuns: 12 },
  );
});

test('angles that do not make a full turn at the centre are told', () => {
  const units = star().map((unit) => (unit.id === 'A' ? { ...unit, repeat: { count: 8, over: 350 } } : unit));
  const faults = checkDrawing(units.slice(0, 1), CLOSE);
  expect(faults).toEqual([]);
  const [, long, short] = [units[0]!, star()[0]!, star()[1]!];
  const seven = { ...long, repeat: { count: 8 }, patches: long.patches.slice(0, 1) };
  const found = checkDrawing([seven, short], CLOSE).find(({ kind }) => kind === 'turn');
  // Eight sectors of 22.5° and eight halves of one (derived).
  expect(found).toMatchObject({ kind: 'turn', at: [0, 0] });
  expect(found?.kind === 'turn' && found.degrees).toBeCloseTo(8 * 22.5 + 8 * 11.25, 6);
});

test('a ring that is too wide or too narrow for its star is told, with by how much', () => {
  const [wide, narrow] = [10.05, 9.95].map((outer) =>
    checkDrawing([...star().slice(0, 2), ...star({ outer }).slice(2)], CLOSE),
  );
  expect(kinds(wide!)).toEqual(['gap', 'hole', 'points']);
  const gap = wide!.find(({ kind }) => kind === 'gap');
  expect(gap?.kind === 'gap' && gap.apart).toBeCloseTo(0.05, 6);
  const hole = wide!.find(({ kind }) => kind === 'hole');
  expect(hole?.kind === 'hole' && hole.area).toBeCloseTo(Math.PI * (10.05 ** 2 - 10 ** 2), 1);
  expect(kinds(narrow!)).toEqual(['overlap', 'points']);
});

test('sides that are joined and differ are told, and the corners that miss each other', () => {
  const faults = checkDrawing([star({ outer: 10.03 })[0]!, star()[1]!], CLOSE);
  expect(kinds(faults)).toEqual(['lengths', 'points']);
  const [sides] = faults.filter(({ kind }) => kind === 'lengths');
  expect(sides).toMatchObject({ names: ['A', 'B'], times: 16 });
  expect(sides?.kind === 'lengths' && sides.sizes.map((size) => Math.round(size * 1e6) / 1e6)).toEqual([10.03, 10]);
});

test('a frame is no fault but for the hole in it, and seams that end on a seam are none', () => {
  const bricks = [oblong(-1, 0.5, 2, 1), oblong(1, 0.5, 2, 1), oblong(0, -0.5, 4, 1)].map((outline, i) =>
    patchOf(i + 1, outline),
  );
  expect(checkDrawing([unitOf([], { count: 1 }, { patches: bricks })], CLOSE)).toEqual([]);
  const [hole, ...others] = checkDrawing([unitOf(ringWedge(12, 3, 6), { count: 12 })], CLOSE);
  expect(others).toEqual([]);
  expect(hole).toMatchObject({ kind: 'hole' });
  expect(hole?.kind === 'hole' && hole.area).toBeCloseTo(9 * Math.PI, 1);
});
