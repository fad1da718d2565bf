import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type MeasuredRow, NEW_ROW, readRow } from '../../../src/quilt/measured/measured-row.ts';
import { SHAPES, shapeCalled } from '../../../src/quilt/measured/shapes.ts';
import { cornersOf, edgesOf, type Outline } from '../../../src/shape/outline.ts';
import { edgeLength, outlineArea, outlineBox } from '../../../src/shape/outline-measures.ts';
import { distance } from '../../../src/shape/point.ts';

const inches = { quilt: 'in', shown: 'in' } as const;
const row = (shape: string, sizes: Record<string, string | number>, more: Partial<MeasuredRow> = {}): MeasuredRow => ({
  ...NEW_ROW,
  shape,
  sizes: Object.fromEntries(Object.entries(sizes).map(([size, value]) => [size, `${value}`])),
  ...more,
});

function outlineOf(shape: string, sizes: Record<string, string | number>): Outline {
  const read = readRow(row(shape, sizes), inches);
  if (!('piece' in read)) {
    throw new Error(JSON.stringify(read.faults));
  }
  return read.piece.outline;
}

const faultsOf = (one: MeasuredRow, units: Parameters<typeof readRow>[1] = inches) => {
  const read = readRow(one, units);
  return 'faults' in read ? read.faults.map(({ field, message }) => `${field}: ${message}`) : [];
};

const size = fc.integer({ min: 2, max: 400 }).map((eighths) => eighths / 8);

// School geometry: the areas of plane figures, Heron's formula, and n s² / (4 tan(π/n)) for regular polygons.
test('every shape has the area that geometry gives it, lies about its middle and runs anticlockwise', () => {
  fc.assert(
    fc.property(
      size,
      size,
      size,
      fc.integer({ min: -20, max: 20 }),
      fc.integer({ min: 3, max: 24 }),
      (a, b, c, lean, n) => {
        const cases: readonly (readonly [Outline, number])[] = [
          [outlineOf('rectangle', { width: a, height: b }), a * b],
          [outlineOf('square', { width: a }), a * a],
          [outlineOf('triangle', { base: a, height: b, lean }), (a * b) / 2],
          [outlineOf('trapezium', { bottom: a, top: b, height: c, lean }), ((a + b) / 2) * c],
          [outlineOf('parallelogram', { base: a, height: b, lean }), a * b],
          [outlineOf('kite', { width: a, upper: b, lower: c }), (a * (b + c)) / 2],
          [outlineOf('polygon', { corners: n, side: a }), (n * a * a) / (4 * Math.tan(Math.PI / n))],
          [outlineOf('wedge', { outer: a + b, inner: b, ring: n }), (Math.PI * ((a + b) ** 2 - b * b)) / n],
          [outlineOf('slice', { outer: a, angle: 30 }), (Math.PI * a * a) / 12],
        ];
        for (const [outline, area] of cases) {
          expect(outlineArea(outline) / area).toBeCloseTo(1, 9);
          const { min, max } = outlineBox(outline);
          expect(min[0] + max[0]).toBeCloseTo(0, 9);
          expect(min[1] + max[1]).toBeCloseTo(0, 9);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test('a triangle has the sides that were measured, or is refused because it cannot be', () => {
  fc.assert(
    fc.property(size, size, size, (a, b, c) => {
      const read = readRow(row('triangle-sides', { a, b, c }), inches);
      const longest = Math.max(a, b, c);
      if (longest >= (a + b + c - longest) * 0.999) {
        expect(read).toHaveProperty('faults');
        return;
      }
      const lengths = edgesOf(outlineOf('triangle-sides', { a, b, c })).map(edgeLength);
      for (const [i, side] of [a, b, c].entries()) {
        expect(lengths[i]).toBeCloseTo(side, 9);
      }
      const s = (a + b + c) / 2;
      const heron = Math.sqrt(s * (s - a) * (s - b) * (s - c));
      expect(outlineArea(outlineOf('triangle-sides', { a, b, c })) / heron).toBeCloseTo(1, 6);
    }),
    { numRuns: 200 },
  );
});

// Chords of wedges of rings: the derived table of n, r, R in the facts of the trade (20, 2, 8: 0.6257 and 2.5030).
test('a wedge of a ring has arcs of the radii, and chords as derived', () => {
  for (const [n, inner, outer, innerChord, outerChord] of [
    [20, 2, 8, 0.6257, 2.503],
    [16, 3, 9, 1.1705, 3.5116],
    [12, 3, 6, 1.5529, 3.1058],
  ] as const) {
    const outline = outlineOf('wedge', { inner, outer, ring: n });
    const [a, b, c, d] = cornersOf(outline);
    expect(distance(a!, d!)).toBeCloseTo(innerChord, 4);
    expect(distance(b!, c!)).toBeCloseTo(outerChord, 4);
    expect(edgesOf(outline).map(({ arc }) => arc?.radius ?? 0)).toEqual([0, outer, 0, inner]);
    expect(outline).toEqual(outlineOf('wedge', { inner, outer, angle: 360 / n }));
  }
});

test('impossible shapes are refused with the reason, at the size that is wrong', () => {
  expect(faultsOf(row('triangle-sides', { a: 2, b: 3, c: 6 }))).toEqual([
    'c: sides of 2 in, 3 in and 6 in make no triangle: the longest must be shorter than the other two together, 5 in',
  ]);
  expect(faultsOf(row('wedge', { outer: 3, inner: 4, ring: 20 }))).toEqual([
    'inner: the inner radius must be less than the outer, 3 in; found 4 in',
  ]);
  expect(faultsOf(row('wedge', { outer: 3, ring: 20, angle: 18 }))[0]).toMatch(/^ring: say either/);
  expect(faultsOf(row('wedge', { outer: 3 }))[0]).toMatch(/^ring: say how many wedges/);
  expect(faultsOf(row('polygon', { corners: 2, side: 3 }))[0]).toMatch(/^corners: .* from 3 to 60 sides; found 2/);
  expect(faultsOf(row('rectangle', { width: -2 }))[0]).toMatch(/^width: expected a length above zero; found “-2”/);
  expect(faultsOf(row('rectangle', {}, { count: '1.5', facing: 'sideways' }))).toEqual([
    'width: width is missing',
    'count: expected a whole number from 1 to 9999; found “1.5”',
    expect.stringMatching(/^facing: “sideways” is no way for a print to point/),
  ]);
  expect(faultsOf(row('wedge', { outer: 3, ring: 9 }, { facing: 'along 2' }))[0]).toMatch(/^facing: side 2 is an arc/);
  expect(faultsOf(row('rectangle', { width: 3 }, { facing: 'along 5' }))[0]).toMatch(/sides 1 to 4; found 5/);
  expect(faultsOf(row('blob', {}))[0]).toMatch(/^shape: “blob” is no shape known here; choose one of rectangle/);
});

test('sizes are read as she writes them, in their own units or in the one shown', () => {
  const widths = ['2 1/2', '2½ in', '2,5', '6.35 cm', '63,5 mm', '2.5"'].map((width) => {
    const { min, max } = outlineBox(outlineOf('rectangle', { width, height: 1 }));
    return max[0] - min[0];
  });
  for (const width of widths) {
    expect(width).toBeCloseTo(2.5, 9);
  }
  const metric = readRow(row('rectangle', { width: '10' }), { quilt: 'in', shown: 'cm' });
  expect('piece' in metric && outlineBox(metric.piece.outline).max[0]).toBeCloseTo(5 / 2.54, 9);
});

test('no word means two shapes', () => {
  const words = SHAPES.flatMap(({ shape, title, alias }) => [...new Set([shape, title.toLowerCase(), ...alias])]);
  expect(new Set(words).size).toBe(words.length);
  expect(shapeCalled(' Trapezoid ')?.shape).toBe('trapezium');
});
