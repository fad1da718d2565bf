/** Cut sizes that come out of the geometry, against formulas that quilters publish. Inches, seam allowance 1/4, no paper. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { Facing } from '../../src/quilt/quilt.ts';
import { growthLimits, withinLimits } from '../../src/shape/grow.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { distance, type Point, type Polygon } from '../../src/shape/point.ts';
import { polygonArea, polygonBox, polygonPerimeter } from '../../src/shape/polygon.ts';
import { samePlace } from '../../src/shape/same-outline.ts';
import { clothOf, quiltOf, roleOf, unitOf } from '../cutting/sample-quilt.ts';

const upright: Facing = { to: 'upright' };
const upToEighth = (value: number): number => Math.ceil(value * 8 - 1e-6) / 8;

/** The blank of one patch cut from a print that stands as drawn: the slant, or the box where the slant is one. */
function cut(outline: Outline, ruler = 0.125): Polygon {
  const roles = [roleOf('r', upright, { shapes: ['slant'] })];
  const quilt = quiltOf([unitOf(outline, { count: 1 })], upright, clothOf('one-way'), { roles, ruler });
  return makeCutList(quilt).groups[0]!.blanks[0]!.shapes[0]!.outline;
}
const width = (polygon: Polygon): number => polygonBox(polygon).max[0] - polygonBox(polygon).min[0];
const height = (polygon: Polygon): number => polygonBox(polygon).max[1] - polygonBox(polygon).min[1];

const rectangle = (w: number, h: number): Outline => [
  [10, 10],
  [10 + w, 10],
  [10 + w, 10 + h],
  [10, 10 + h],
];
const halfSquare = (leg: number): Outline => [
  [10, 10],
  [10 + leg, 10],
  [10, 10 + leg],
];
/** Its long side below. */
const quarterSquare = (long: number): Outline => [
  [10, 10],
  [10 + long, 10],
  [10 + long / 2, 10 + long / 2],
];

test('squares and rectangles: finished + 1/2 each way (formula sheet, karencombs.com/page.php?ID=31)', () => {
  for (const [w, h] of [
    [1, 1],
    [2, 2],
    [3.5, 3.5],
    [2.5, 6],
    [12, 4.25],
  ] as const) {
    expect([width(cut(rectangle(w, h))), height(cut(rectangle(w, h)))]).toEqual([w + 0.5, h + 0.5]);
  }
});

test('half-square triangles: leg + 7/8 (allpeoplequilt.com/print/325998)', () => {
  for (let leg = 1; leg <= 12; leg += 0.25) {
    const triangle = cut(halfSquare(leg));
    expect(triangle).toHaveLength(3);
    expect([width(triangle), height(triangle)]).toEqual([leg + 0.875, leg + 0.875]);
    expect(polygonArea(triangle)).toBeCloseTo((leg + 0.875) ** 2 / 2, 9);
  }
});

test('half-square triangles of solid cloth, which may lie any way, come out the same', () => {
  for (const leg of [1.5, 2, 3, 4.5, 6]) {
    const quilt = quiltOf(
      [unitOf(halfSquare(leg), { count: 1 }, {}), unitOf(rectangle(60, 60), { count: 4 }, { id: 'B' })],
      { to: 'free' },
      clothOf('solid'),
    );
    const [slant] = makeCutList(quilt).groups[0]!.blanks[0]!.shapes;
    expect(slant!.outline).toHaveLength(3);
    expect([width(slant!.outline), height(slant!.outline)]).toEqual([leg + 0.875, leg + 0.875]);
  }
});

test('exactly, a half-square triangle grows by (2 + √2)/4 on the leg (derived)', () => {
  const fine = 1 / 256;
  for (const leg of [2, 3.7]) {
    const exact = leg + (2 + Math.SQRT2) / 4;
    expect(exact - leg).toBeCloseTo(0.8536, 4);
    const triangle = cut(halfSquare(leg), fine);
    expect(triangle).toHaveLength(3);
    expect(width(triangle)).toBeGreaterThanOrEqual(exact);
    expect(width(triangle)).toBeLessThan(exact + fine);
  }
});

test('quarter-square triangles: long side + 1 1/4 (formula sheet as above); exactly (2 + 2√2)/4 (derived)', () => {
  expect((2 + 2 * Math.SQRT2) / 4).toBeCloseTo(1.2071, 4);
  for (let long = 2; long <= 16; long += 0.5) {
    const triangle = cut(quarterSquare(long));
    expect(triangle).toHaveLength(3);
    expect(width(triangle)).toBe(long + 1.25);
    expect(height(triangle)).toBe((long + 1.25) / 2);
  }
});

test('setting triangles of a quilt set on point (table, quilterscache.com/H/howtomakesettingtriangles.html)', () => {
  const table = [
    [4, 7, 3.75],
    [6, 9.75, 5.125],
    [8, 12.625, 6.625],
    [9, 14, 7.25],
    [10, 15.5, 8],
    [12, 18.25, 9.375],
    [14, 21.125, 10.875],
    [15, 22.5, 11.5],
  ] as const;
  for (const [block, side, corner] of table) {
    // The side triangle's long side is the block's diagonal; the published square is never smaller than ours, and at most
    // an eighth larger, because 1.25 stands for 1.2071.
    const ours = width(cut(quarterSquare(block * Math.SQRT2)));
    expect(ours).toBeLessThanOrEqual(side);
    expect(ours).toBeGreaterThanOrEqual(side - 0.125);
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the published factor; true √2 rounds 16 up to 24
    expect(upToEighth(block * 1.414 + 1.25)).toBe(side);
    expect(width(cut(halfSquare(block / Math.SQRT2)))).toBe(corner);
  }
});

test('flying geese, four at a time (alinequilts.blogspot.com/2011/03)', () => {
  for (const [h, w, large, small] of [
    [1, 2, 3.25, 1.875],
    [2, 4, 5.25, 2.875],
    [3, 6, 7.25, 3.875],
  ] as const) {
    expect(width(cut(quarterSquare(w)))).toBe(large);
    expect(width(cut(halfSquare(h)))).toBe(small);
  }
});

test('60° triangles from a strip: its height is the finished height + 3/4 (chrisandbarbaraquilts.wordpress.com/2015/08/20)', () => {
  for (const tall of [1, 2, 3, 4, 5.5]) {
    const half = tall / Math.sqrt(3);
    const triangle = cut([
      [10, 10],
      [10 + 2 * half, 10],
      [10 + half, 10 + tall],
    ]);
    expect(triangle).toHaveLength(3);
    expect(height(triangle)).toBeGreaterThanOrEqual(tall + 0.75);
    // Its sides run on whole eighths, which may ask for another eighth of height.
    expect(height(triangle)).toBeLessThanOrEqual(tall + 0.875);
  }
});

test('diamonds from a strip: its height is the finished width + 1/2, the pitch along it that over sin θ (the same, part 7)', () => {
  for (const angle of [45, 60]) {
    const sine = Math.sin((angle * Math.PI) / 180);
    for (const tall of [2, 2.5, 3]) {
      const side = tall / sine;
      const step = side * Math.cos((angle * Math.PI) / 180);
      const diamond = cut([
        [10, 10],
        [10 + side, 10],
        [10 + side + step, 10 + tall],
        [10 + step, 10 + tall],
      ]);
      expect(height(diamond)).toBe(tall + 0.5);
      // Area over height is what each takes of the strip, whatever the slope of its ends.
      const pitch = polygonArea(diamond) / height(diamond);
      expect(pitch).toBeGreaterThan((tall + 0.5) / sine - 0.5);
      expect(pitch).toBeLessThan((tall + 0.5) / sine + 0.25);
    }
  }
});

test('growing any triangle by s scales it about its incentre by 1 + s/r (derived)', () => {
  const coordinate = fc.double({ min: -9, max: 9, noNaN: true });
  fc.assert(
    fc.property(
      fc.tuple(coordinate, coordinate),
      fc.tuple(coordinate, coordinate),
      fc.tuple(coordinate, coordinate),
      (a, b, c) => {
        const triangle: Polygon = polygonArea([a, b, c]) > 0 ? [a, b, c] : [c, b, a];
        const area = polygonArea(triangle);
        const inradius = (2 * area) / polygonPerimeter(triangle);
        fc.pre(inradius > 0.2);
        const sides = triangle.map((_, i) => distance(triangle[(i + 1) % 3]!, triangle[(i + 2) % 3]!));
        const incentre = [0, 1].map(
          (axis) =>
            triangle.reduce((sum, corner, i) => sum + sides[i]! * corner[axis]!, 0) / polygonPerimeter(triangle),
        );
        const scaled = triangle.map((corner): Point => {
          const by = 1 + 0.25 / inradius;
          return [incentre[0]! + by * (corner[0] - incentre[0]!), incentre[1]! + by * (corner[1] - incentre[1]!)];
        });
        // The first three limits are the moved sides; the square cuts of sharp tips come after them.
        const sidesOnly = growthLimits(triangle, { edges: [0.25, 0.25, 0.25] }).slice(0, 3);
        expect(samePlace(withinLimits(sidesOnly, triangle, 100), scaled, 1e-7)).toBe(true);
      },
    ),
  );
});

test('a mitred tip would run s/sin(θ/2) past its point; ours is cut square at s (derived)', () => {
  for (const [angle, run] of [
    [45, 1.307],
    [22.5, 2.563],
    [11.25, 5.101],
  ] as const) {
    const half = ((angle / 2) * Math.PI) / 180;
    const point: Polygon = [
      [0, 0],
      [8, -8 * Math.tan(half)],
      [8, 8 * Math.tan(half)],
    ];
    const limits = growthLimits(point, { edges: [0.5, 0.5, 0.5] });
    expect(-polygonBox(withinLimits(limits.slice(0, 3), point, 100)).min[0]).toBeCloseTo(run, 3);
    expect(-polygonBox(withinLimits(limits, point, 100)).min[0]).toBeCloseTo(0.5, 12);
  }
});

test('a boxed blank on paper: the patch’s width + 1 by its height + 1, so 2 1/2×6 gives 3 1/2×7 (gailgarber.com/tips/cutting-rules)', () => {
  const roles = [roleOf('r', upright, { shapes: ['box'] })];
  const paper = unitOf(rectangle(2.5, 6), { count: 1 }, { paper: true });
  const quilt = quiltOf([paper], upright, clothOf('one-way'), { roles });
  const [box] = makeCutList(quilt).groups[0]!.blanks[0]!.shapes;
  expect([width(box!.outline), height(box!.outline)]).toEqual([3.5, 7]);
});
