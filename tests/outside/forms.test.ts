/** Forms against plane geometry worked out on its own, and against the trade's published sizes. */
import { describe, expect, test } from 'vitest';
import { drawForm, type Form } from '../../src/quilt/forms/forms.ts';
import { placesOf } from '../../src/quilt/places.ts';
import type { Unit } from '../../src/quilt/quilt.ts';
import type { Outline } from '../../src/shape/outline.ts';
import { type Point, subtract } from '../../src/shape/point.ts';
import { area, type Side, sides, span } from '../quilt/exact-outline.ts';

const inches = (form: Form): readonly Unit[] => drawForm(form, 'in');
const size = (side: Side): number => Math.hypot(...subtract(side.to, side.from));
const first = (units: readonly Unit[], role: string): Outline =>
  units.flatMap(({ patches }) => patches).find((patch) => patch.role === role)!.outline;
const arcs = (outline: Outline, turn: 'clockwise' | 'anticlockwise'): readonly Side[] =>
  sides(outline).filter(({ arc }) => arc?.turn === turn);
const straight = (outline: Outline): readonly number[] =>
  sides(outline)
    .filter(({ arc }) => arc === null)
    .map(size);
const angleBetween = ([ax, ay]: Point, [bx, by]: Point): number =>
  (Math.acos((ax * bx + ay * by) / Math.hypot(ax, ay) / Math.hypot(bx, by)) * 180) / Math.PI;

/** Plane geometry: chord 2r sin(θ/2), arc rθ, sagitta R(1 − cos(θ/2)), area θ(R² − r²)/2, with θ = 2π/n; four decimals. */
const RINGS = [
  { n: 20, r: 2, R: 8, innerChord: 0.6257, outerChord: 2.503, arc: 2.5133, sagitta: 0.0985, wedge: 9.4248 },
  { n: 16, r: 3, R: 9, innerChord: 1.1705, outerChord: 3.5116, arc: 3.5343, sagitta: 0.1729, wedge: 14.1372 },
  { n: 32, r: 4, R: 10, innerChord: 0.7841, outerChord: 1.9603, arc: 1.9635, sagitta: 0.0482, wedge: 8.2467 },
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a published figure to four decimals that happens to be π
  { n: 12, r: 3, R: 6, innerChord: 1.5529, outerChord: 3.1058, arc: 3.1416, sagitta: 0.2044, wedge: 7.0686 },
];

describe.each(RINGS)('a ring of $n between $r and $R', ({ n, r, R, innerChord, outerChord, arc, sagitta, wedge }) => {
  const ring = { kind: 'wedge-ring', wedges: n, inner: r, outer: R, side: 3 * R } as const;

  test('has wedges with curved edges of the table’s chords, arcs, sagitta and area', () => {
    const outline = first(inches(ring), 'wedge');
    const [outer, inner] = [arcs(outline, 'anticlockwise')[0]!, arcs(outline, 'clockwise')[0]!];
    expect(size(outer)).toBeCloseTo(outerChord, 4);
    expect(size(inner)).toBeCloseTo(innerChord, 4);
    expect(span(outer) * R).toBeCloseTo(arc, 4);
    expect(R - outer.from[1]).toBeCloseTo(sagitta, 4);
    expect(area(outline)).toBeCloseTo(wedge, 4);
  });

  test('has flat edges as long as the chord, and loses the segment beyond it', () => {
    const outline = first(inches({ ...ring, edge: 'flat' }), 'wedge');
    expect(Math.min(...straight(outline).map((each) => Math.abs(each - outerChord)))).toBeLessThan(1e-4);
    const θ = (2 * Math.PI) / n;
    expect(area(outline)).toBeCloseTo(wedge - (R * R * (θ - Math.sin(θ))) / 2, 4);
  });

  test('has pointed wedges of two straight sides up to the shoulder and two to the tip', () => {
    const outline = first(inches({ ...ring, edge: 'pointed', tip: 1 }), 'wedge');
    const half = Math.PI / n;
    const slope = Math.sqrt(R ** 2 + (R - 1) ** 2 - 2 * R * (R - 1) * Math.cos(half));
    const lengths = [R - 1 - r, slope, slope, R - 1 - r];
    straight(outline).forEach((each, i) => {
      expect(each).toBeCloseTo(lengths[i]!, 9);
    });
  });

  test('shares its sectors’ area among geese and sky, tip on the middle of the next one’s base', () => {
    // A table's ring may be too narrow for geese so long; they are drawn where they fit.
    const form = {
      kind: 'geese-ring',
      geese: n,
      together: 2,
      inner: r,
      outer: R,
      side: 3 * R,
      way: 'anticlockwise',
    } as const;
    const [goose, outerSky, innerSky, next] = inches(form)[0]!.patches.map(({ outline }) => outline);
    expect(area(goose!) + area(outerSky!) + area(innerSky!)).toBeCloseTo(wedge, 4);
    const [inner, outer] = next as readonly [Point, Point, Point];
    const tip = goose![2] as Point;
    expect(tip[0]).toBeCloseTo((inner[0] + outer[0]) / 2, 9);
    expect(tip[1]).toBeCloseTo((inner[1] + outer[1]) / 2, 9);
    expect(straight(goose!)[0]).toBeCloseTo(R - r, 9);
  });
});

test('geese that fly clockwise are the others in a mirror', () => {
  const ring = (way: 'clockwise' | 'anticlockwise') =>
    inches({ kind: 'geese-ring', geese: 12, together: 3, inner: 4, outer: 7, side: 16, way })[0]!.patches;
  const other = ring('anticlockwise');
  ring('clockwise').forEach(({ outline }, i) => {
    const corners = (each: Outline) => each.filter((entry) => !('arc' in entry)) as readonly Point[];
    const there = corners(other[i]!.outline).map(([x, y]) => [-x, y] as const);
    for (const [x, y] of corners(outline)) {
      expect(Math.min(...there.map((each) => Math.hypot(each[0] - x, each[1] - y)))).toBeLessThan(1e-12);
    }
    expect(area(outline)).toBeCloseTo(area(other[i]!.outline), 12);
  });
});

test.each([
  [8, 5, 8],
  [12, 6, 9],
  [5, 3, 10],
])('%i points of a quarter ring from %i to %i: tip angle, base, meeting bases', (n, r, R) => {
  const [spiked] = inches({ kind: 'spiked-arc', spikes: n, together: n, inner: r, outer: R, side: 1.2 * R });
  const spikes = spiked!.patches.filter(({ role }) => role === 'spikes').map(({ outline }) => outline);
  expect(spikes).toHaveLength(n);
  const half = Math.PI / 4 / n;
  const total = spikes.reduce((sum, outline) => sum + span(arcs(outline, 'clockwise')[0]!), 0);
  expect(total).toBeCloseTo(Math.PI / 2, 12);
  spikes.forEach((outline, k) => {
    const [right, tip, left] = outline as unknown as readonly [Point, Point, Point];
    expect(Math.hypot(...tip)).toBeCloseTo(R, 12);
    // Half the tip's angle has the half base as its far side and the height of the tip over the base's ends beside it.
    const tipAngle = 2 * Math.atan2(r * Math.sin(half), R - r * Math.cos(half));
    expect(angleBetween(subtract(right, tip), subtract(left, tip))).toBeCloseTo((tipAngle * 180) / Math.PI, 9);
    const next = spikes[k + 1]?.[0] as Point | undefined;
    expect(next === undefined ? 0 : Math.hypot(...subtract(next, left))).toBeLessThan(1e-12);
  });
});

describe('a diamond star', () => {
  test('has eight angles of 45° that fill the centre, four equal edges each, and a side of 2 + √2 edges', () => {
    const units = inches({ kind: 'diamond-star', side: 12, ground: 'whole', inTurn: false });
    const diamond = first(units, 'star') as readonly Point[];
    expect(placesOf(units[0]!)).toHaveLength(8);
    expect(angleBetween(diamond[1]!, diamond[3]!)).toBeCloseTo(45, 12);
    for (const edge of straight(diamond)) {
      expect(edge).toBeCloseTo(12 / (2 + Math.SQRT2), 12);
    }
    // Corner squares are as large as the diamonds' edges, and side triangles have two of them about a right angle.
    const [triangle, square] = units.slice(1).map(({ patches }) => area(patches[0]!.outline));
    expect(square).toBeCloseTo((12 / (2 + Math.SQRT2)) ** 2, 9);
    expect(triangle).toBeCloseTo(square! / 2, 9);
  });

  test('of one cloth on foundations is one unit and its mirror image, four of each', () => {
    const [eighth, ...more] = inches({ kind: 'diamond-star', side: 12, inTurn: false });
    expect(more).toEqual([]);
    expect(placesOf(eighth!).map(({ mirrored }) => mirrored)).toEqual([
      false,
      true,
      false,
      true,
      false,
      true,
      false,
      true,
    ]);
  });

  test('in rows has as many small diamonds in each round as the rows have from it on', () => {
    const units = inches({ kind: 'diamond-star', side: 12, rows: 4 });
    const rounds = [1, 2, 3, 4, 5, 6, 7].map(
      (round) => units.flatMap(({ patches }) => patches).filter(({ role }) => role === `star-${round}`).length,
    );
    expect(rounds).toEqual([1, 2, 3, 4, 3, 2, 1]);
  });
});

// Hexagonal numbers 1 + 3m(m + 1), derived; a hexagon's width across its edges is √3 of them.
test.each([
  [1, 7],
  [2, 19],
  [3, 37],
  [4, 61],
])('%i rings of hexagons are %i', (rings, count) => {
  const units = inches({ kind: 'hexagon-rosette', edge: 1, rings });
  expect(units.reduce((sum, unit) => sum + placesOf(unit).length * unit.patches.length, 0)).toBe(count);
  const hexagon = first(units, 'hexagon-0') as readonly Point[];
  expect(Math.max(...hexagon.map(([x]) => x)) * 2).toBeCloseTo(Math.sqrt(3), 12);
  for (const edge of straight(hexagon)) {
    expect(edge).toBeCloseTo(1, 12);
  }
});

test('a log cabin’s logs grow by one width at every second, from the middle square’s side', () => {
  const [cabin] = inches({ kind: 'log-cabin', rounds: 4, centre: 2, side: 12 });
  const [centre, ...logs] = cabin!.patches.map(({ outline }) => outline);
  expect(straight(centre!)).toEqual([2, 2, 2, 2]);
  expect(logs).toHaveLength(16);
  logs.forEach((log, k) => {
    const lengths = [...straight(log)].sort((a, b) => a - b);
    expect(lengths[0]).toBeCloseTo(1.25, 9);
    expect(lengths[3]).toBeCloseTo(2 + Math.ceil(k / 2) * 1.25, 9);
  });
});

test('a pineapple has four logs to the sides and four to the corners in each round, alike all round', () => {
  const [block] = inches({ kind: 'pineapple', rounds: 6, centre: 3, side: 12 });
  expect(block!.patches).toHaveLength(1 + 6 * 8);
  for (let k = 1; k < 49; k += 4) {
    const areas = block!.patches.slice(k, k + 4).map(({ outline }) => area(outline));
    expect(Math.max(...areas) - Math.min(...areas)).toBeLessThan(1e-9);
  }
});

test('a sawtooth star’s geese are twice as wide as high, its middle half the block', () => {
  const units = inches({ kind: 'sawtooth-star', side: 12 });
  const goose = first(units, 'saw-ground') as readonly Point[];
  const [xs, ys] = [goose.map(([x]) => x), goose.map(([, y]) => y)];
  expect([Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]).toEqual([6, 3]);
  expect(straight(first(units, 'saw-centre'))).toEqual([6, 6, 6, 6]);
});

test('half- and quarter-square triangles have the square’s sides as their legs and as their long sides', () => {
  const half = first(inches({ kind: 'half-squares', side: 12, across: 4 }), 'triangle-dark');
  const quarter = first(inches({ kind: 'quarter-squares', side: 12, across: 4 }), 'triangle-dark');
  const sorted = (outline: Outline) => [...straight(outline)].sort((a, b) => a - b);
  [3, 3, 3 * Math.SQRT2].forEach((each, i) => {
    expect(sorted(half)[i]).toBeCloseTo(each, 12);
  });
  [3 / Math.SQRT2, 3 / Math.SQRT2, 3].forEach((each, i) => {
    expect(sorted(quarter)[i]).toBeCloseTo(each, 12);
  });
});

describe('setting triangles', () => {
  // quilterscache.com/H/howtomakesettingtriangles.html: block B, square for four side triangles, square for two corner ones;
  // B × 1.414 + 1.25 and B ÷ 1.414 + 0.875, up to 1/8.
  test.each([
    [4, 7, 3.75],
    [6, 9.75, 5.125],
    [8, 12.625, 6.625],
    [9, 14, 7.25],
    [10, 15.5, 8],
    [12, 18.25, 9.375],
    [14, 21.125, 10.875],
    [15, 22.5, 11.5],
  ])('round blocks of %i in are cut from squares of %f and %f', (block, sideSquare, cornerSquare) => {
    const units = inches({ kind: 'setting-triangles', block, across: 3, down: 2 });
    const [long, leg] = [units[0]!, units.at(-1)!].map(({ patches }) => {
      const [least, , most] = [...straight(patches[0]!.outline)].sort((a, b) => a - b);
      return { least: least!, most: most! };
    });
    const up = (value: number) => Math.ceil(value * 8 - 0.02) / 8;
    expect(up(long!.most + 1.25)).toBe(sideSquare);
    expect(up(leg!.least + 0.875)).toBe(cornerSquare);
  });

  // Counted on a drawing: m across and n down need 2(m − 1) + 2(n − 1) at the sides, and four corners.
  test.each([
    [1, 1, 0],
    [2, 2, 4],
    [3, 4, 10],
  ])('%i by %i blocks take %i at the sides', (across, down, count) => {
    const units = inches({ kind: 'setting-triangles', block: 10, across, down });
    const counts = units.map((unit) => placesOf(unit).length * unit.patches.length);
    expect(counts.at(-1)).toBe(4);
    expect(counts.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(count);
  });
});

// Counted on a drawing of three by two blocks.
test.each([
  [true, 8 + 9, 12],
  [false, 4 + 3, 2],
])('sashing of three by two blocks, outside %s, is %i strips and %i posts', (outside, strips, posts) => {
  const units = inches({ kind: 'sashing', block: 12, width: 2, across: 3, down: 2, outside });
  const counted = (role: string) =>
    units.flatMap(({ patches }) => patches).filter((patch) => patch.role === role).length;
  expect([counted('sash'), counted('post')]).toEqual([strips, posts]);
});

test('a mitred border is longer by its width at both ends outside, and its ends run at 45°', () => {
  const [sidesUnit] = inches({ kind: 'border', across: 30, down: 40, width: 3, corners: 'mitred' });
  const lengths = [...straight(sidesUnit!.patches[0]!.outline)].sort((a, b) => a - b);
  [3 * Math.SQRT2, 3 * Math.SQRT2, 40, 46].forEach((each, i) => {
    expect(lengths[i]).toBeCloseTo(each, 12);
  });
});
