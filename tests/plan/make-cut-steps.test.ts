import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alike } from '../../src/plan/alike-strips.ts';
import type { Layout, LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { makeCutSteps } from '../../src/plan/make-cut-steps.ts';
import type { Point, Polygon } from '../../src/shape/point.ts';

const rectangle = (w: number, h: number): Polygon => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];
/** Parallel sides 1 (at the top) and 3, height 2. */
const trapezium: Polygon = [
  [0, 0],
  [3, 0],
  [2, 2],
  [1, 2],
];

function place(blank: string, x: number, y: number, more: Partial<Placement> = {}): Placement {
  return { blank, shape: 0, turn: 0, mirror: false, x, y, ...more };
}

function steps(job: Partial<LayoutJob>, ...layouts: readonly Partial<Layout>[]) {
  const whole: LayoutJob = {
    method: 'strips',
    ruler: 0.125,
    cloths: [{ id: 'bolt', width: 20 }],
    blanks: [],
    ...job,
  };
  const answer: LayoutAnswer = {
    status: 'optimal',
    cost: 0,
    bound: 0,
    boundFrom: '',
    seconds: 0,
    unplaced: [],
    layouts: layouts.map((layout) => ({ cloth: 'bolt', count: 1, length: 10, placements: [], ...layout })),
  };
  return makeCutSteps(whole, answer);
}

describe('a strip of rectangles', () => {
  const blanks = [
    { id: 'a', outline: rectangle(4, 3), demand: 2 },
    { id: 'b', outline: rectangle(2.0625, 2), demand: 1 },
  ];

  test('is cut square, from its start, blank after blank', () => {
    const [strip] = steps(
      { blanks },
      { strips: [{ from: 1, height: 3 }], placements: [place('a', 6.0625, 1), place('b', 4, 1.5), place('a', 0, 1)] },
    );
    expect(
      strip?.pieces.map(({ blank, near, far, angle, rulerAngle, onRuler }) => [
        blank,
        near,
        far,
        angle,
        rulerAngle,
        onRuler,
      ]),
    ).toEqual([
      ['a', 4, 4, 90, true, true],
      ['b', 6.0625, 6.0625, 90, true, false],
      ['a', 10.125, 10.125, 90, true, true],
    ]);
    expect(strip).toMatchObject({ cloth: 'bolt', layout: 0, strip: 0, from: 1, height: 3, across: 20, left: 9.875 });
    // The last cut may stand on the next mark of the ruler, because nothing comes after it.
    expect(strip?.pieces[1]?.outline[0]).toEqual([4, 0.5]);
  });

  test('a strip that only squares the end is not ruler work', () => {
    const strips = steps(
      { blanks },
      {
        strips: [
          { from: 0, height: 1 },
          { from: 1, height: 3 },
        ],
        placements: [place('a', 0, 1)],
      },
    );
    expect(strips.map((strip) => strip.strip)).toEqual([1]);
  });

  test('strips along the cloth run from the cut end, their near edge toward x = 0', () => {
    const [strip] = steps(
      { blanks, cloths: [{ id: 'bolt', width: 20, length: 18 }] },
      {
        firstCut: 'along',
        count: 2,
        strips: [{ from: 5, height: 4 }],
        placements: [place('a', 5, 0), place('a', 5, 3)],
      },
    );
    expect(strip).toMatchObject({ firstCut: 'along', count: 2, across: 18, height: 4, left: 12 });
    expect(strip?.pieces.map((piece) => piece.near)).toEqual([3, 6]);
    expect(strip?.pieces[1]?.outline).toEqual([
      [3, 0],
      [3, 4],
      [6, 4],
      [6, 0],
    ]);
  });
});

describe('a strip of slants', () => {
  const blanks = [{ id: 't', outline: trapezium, demand: 9 }];

  test('alternated trapeziums are parted along their slanted sides', () => {
    // Head to tail: n(a + b)/2 + (b − a)/2 for n of parallel sides a < b, by plane geometry: 3 take 3·2 + 1 = 7.
    const [strip] = steps(
      { blanks },
      {
        strips: [{ from: 0, height: 2 }],
        placements: [place('t', 0, 0), place('t', 5, 2, { turn: 180 }), place('t', 4, 0)],
      },
    );
    expect(strip?.pieces.map(({ near, far }) => [near, far])).toEqual([
      [3, 2],
      [4, 5],
      [7, 7],
    ]);
    expect(strip?.pieces[0]?.angle).toBeCloseTo((Math.atan(2) * 180) / Math.PI, 9);
    expect(strip?.pieces[0]).toMatchObject({ rulerAngle: false, onRuler: true });
    expect(strip?.left).toBeCloseTo(13, 9);
  });

  test('an angle that rulers carry may be named, others may not', () => {
    const height = 3;
    const diamond = (degrees: number): Polygon => {
      const lean = height / Math.tan((degrees * Math.PI) / 180);
      return [
        [0, 0],
        [4, 0],
        [4 + lean, height],
        [lean, height],
      ];
    };
    for (const [degrees, carried] of [
      [60, true],
      [45, true],
      [30, true],
      [50, false],
      [60.3, false],
    ] as const) {
      const [strip] = steps(
        { blanks: [{ id: 'd', outline: diamond(degrees), demand: 2 }] },
        { strips: [{ from: 0, height }], placements: [place('d', 0, 0), place('d', 4, 0)] },
      );
      expect(strip?.pieces[0]?.angle).toBeCloseTo(degrees, 6);
      expect(strip?.pieces[0]?.rulerAngle).toBe(carried);
    }
  });

  test('a cut that follows no edge is found where only that one parts', () => {
    // Two corners face each other, one above the other, so that only a leaning cut between them will do.
    const left: Polygon = [
      [0, 0],
      [3, 0],
      [0, 4],
    ];
    const right: Polygon = [
      [2.5, 4],
      [4, 0],
      [6, 0],
      [6, 4],
    ];
    const [strip] = steps(
      {
        blanks: [
          { id: 'l', outline: left, demand: 1 },
          { id: 'r', outline: right, demand: 1 },
        ],
      },
      { strips: [{ from: 0, height: 4 }], placements: [place('r', 0, 0), place('l', 0, 0)] },
    );
    expect(strip?.pieces.map((piece) => piece.blank)).toEqual(['l', 'r']);
    expect(parts(strip!.pieces[0]!, strip!.height, left, [right])).toBe(true);
  });

  test('a plan that no straight cuts part is refused', () => {
    const bowl: Polygon = [
      [0, 0],
      [6, 0],
      [6, 3],
      [4, 3],
      [4, 1],
      [2, 1],
      [2, 3],
      [0, 3],
    ];
    expect(() =>
      steps(
        {
          blanks: [
            { id: 'bowl', outline: bowl, demand: 1 },
            { id: 'in', outline: rectangle(2, 2), demand: 1 },
          ],
        },
        { strips: [{ from: 0, height: 3 }], placements: [place('bowl', 0, 0), place('in', 2, 1)] },
      ),
    ).toThrow(/cannot be parted by straight cuts/);
  });
});

test('whatever convex blanks stand side by side, every cut has its blank before it and all later ones after it', () => {
  const slant = fc.record({
    width: fc.double({ min: 0.5, max: 4, noNaN: true }),
    lean: fc.double({ min: -2, max: 2, noNaN: true }),
    taper: fc.double({ min: 0, max: 0.4, noNaN: true }),
    low: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(slant, { minLength: 1, maxLength: 8 }), fc.integer(), (slants, shuffle) => {
      const height = 3;
      const outlines = slants.map(
        ({ width, lean, taper }): Polygon => [
          [0, 0],
          [width, 0],
          [width - taper * width + lean, 2],
          [taper * width + lean, 2],
        ],
      );
      // Each advances until it clears the one before, tried at both ends of the height that they share.
      const xs: number[] = [];
      outlines.forEach((outline, i) => {
        const clear = outlines.slice(0, i).map((before, k) => {
          const gaps = [0, 0.5, 1, 1.5, 2, 2.5, 3].map(
            (y) => xs[k]! + edgeAt(before, y - slants[k]!.low, 'right') - edgeAt(outline, y - slants[i]!.low, 'left'),
          );
          return Math.max(...gaps);
        });
        xs.push(Math.max(0, ...clear));
      });
      const placements = outlines.map((_, i) => place(`${i}`, xs[i]!, slants[i]!.low));
      const rotated = placements.map((_, i) => placements[(i + Math.abs(shuffle)) % placements.length]!);
      const [strip] = steps(
        {
          blanks: outlines.map((outline, i) => ({ id: `${i}`, outline, demand: 1 })),
          cloths: [{ id: 'bolt', width: 200 }],
        },
        { strips: [{ from: 0, height }], placements: rotated },
      );
      const pieces = strip!.pieces;
      expect(pieces).toHaveLength(slants.length);
      pieces.forEach((piece, i) => {
        const later = pieces.slice(i + 1).map((other) => other.outline);
        expect(parts(piece, height, piece.outline, later)).toBe(true);
      });
    }),
    { numRuns: 60 },
  );
});

test('strips are alike where size and cuts are', () => {
  const strips = [0, 3, 6, 9].map((from) => ({ from, height: 3 }));
  const done = steps(
    { blanks: [{ id: 'a', outline: rectangle(4, 3), demand: 9 }] },
    {
      length: 12,
      strips,
      placements: [place('a', 0, 0), place('a', 0, 3), place('a', 0, 6), place('a', 4, 6), place('a', 0, 9)],
    },
  );
  expect([1, 2, 3].map((i) => alike(done[i - 1]!, done[i]!))).toEqual([true, false, false]);
});

/** Whether the cut lies right of every point of the one and left of every point of the others, within 1e-6 of the width. */
function parts(cut: { near: number; far: number }, height: number, one: Polygon, others: readonly Polygon[]): boolean {
  const off = ([x, y]: Point) => x - cut.near - ((cut.far - cut.near) * y) / height;
  return one.every((p) => off(p) < 3e-4) && others.every((other) => other.every((p) => off(p) > -3e-4));
}

/** Where a slant's left or right side stands at a height, continued beyond its ends. */
function edgeAt(outline: Polygon, y: number, side: 'left' | 'right'): number {
  const [bottom, top] = side === 'left' ? [outline[0]!, outline[3]!] : [outline[1]!, outline[2]!];
  return bottom[0] + ((top[0] - bottom[0]) * y) / 2;
}
