import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { StripSteps } from '../../src/plan/cut-steps.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { makeCutSteps } from '../../src/plan/make-cut-steps.ts';
import type { Polygon } from '../../src/shape/point.ts';

/** One strip from the start of the cloth, the outlines where they lie in it. */
function row(outlines: readonly Polygon[], height: number, width: number, ruler = 0.125): StripSteps {
  const job: LayoutJob = {
    method: 'strips',
    ruler,
    cloths: [{ id: 'bolt', width }],
    blanks: outlines.map((outline, i) => ({ id: `${i}`, outline, demand: 1 })),
  };
  const placements = outlines.map((_, i) => ({ blank: `${i}`, shape: 0, turn: 0, mirror: false, x: 0, y: 0 }));
  const layout = { cloth: 'bolt', count: 1, length: height, strips: [{ from: 0, height }], placements };
  const answer: LayoutAnswer = {
    status: 'feasible',
    cost: 0,
    bound: 0,
    boundFrom: '',
    seconds: 0,
    layouts: [layout],
    unplaced: [],
  };
  return makeCutSteps(job, answer)[0]!;
}

const marks = (strip: StripSteps) => strip.pieces.map(({ near, far }) => [near, far]);

test('a mark never lies outside the strip, though the edge of the first blank prolonged would', () => {
  // The long edges run from 3.5 at the near edge to 0 at 8.375; at the far edge of a strip of 8.5 they are at −0.052.
  const first: Polygon = [
    [0, 0],
    [3.5, 0],
    [0, 8.375],
  ];
  const second: Polygon = [
    [3.6, 0.1],
    [3.6, 8.475],
    [0.1, 8.475],
  ];
  const strip = row([first, second], 8.5, 42);
  const [near, far] = marks(strip)[0]!;
  expect(far).toBe(0);
  expect(near).toBe(3.5);
  expect(strip.pieces[0]?.onRuler).toBe(true);
});

test('marks stand on the ruler where the gap has room for that, else on its half, else on its quarter', () => {
  const pair = (gap: number): readonly Polygon[] => [
    [
      [0, 0],
      [3.02, 0],
      [1.02, 4],
      [0, 4],
    ],
    [
      [3.02 + gap, 0],
      [8, 0],
      [8, 4],
      [1.02 + gap, 4],
    ],
  ];
  expect(marks(row(pair(0.12), 4, 42))[0]).toEqual([3.125, 1.125]);
  expect(marks(row(pair(0.05), 4, 42))[0]).toEqual([3.0625, 1.0625]);
  expect(marks(row(pair(0.012), 4, 42))[0]).toEqual([3.03125, 1.03125]);
  const [near, far] = marks(row(pair(0.005), 4, 42))[0]!;
  expect(near).toBeGreaterThanOrEqual(3.02 - 1e-4);
  expect(near).toBeLessThanOrEqual(3.025 + 1e-4);
  expect(far).toBeLessThanOrEqual(1.025 + 1e-4);
});

test('a square cut is taken rather than a slanted one where both stand on the ruler', () => {
  const gap: readonly Polygon[] = [
    [
      [0, 0],
      [3, 0],
      [2.5, 4],
      [0, 4],
    ],
    [
      [3.5, 0],
      [6, 0],
      [6, 4],
      [3, 4],
    ],
  ];
  expect(marks(row(gap, 4, 42))[0]).toEqual([3, 3]);
});

test('whatever row is made by cuts that do not cross, its cuts are found again: inside the strip, none crossing another', () => {
  const eighths = (most: number) => fc.integer({ min: 0, max: most });
  const cell = fc.record({ near: eighths(24), far: eighths(24), inset: fc.double({ min: 0, max: 0.3, noNaN: true }) });
  fc.assert(
    fc.property(fc.array(cell, { minLength: 2, maxLength: 9 }), (cells) => {
      const height = 6;
      let [near, far] = [0, 0];
      const outlines = cells.map(({ near: n, far: f, inset }): Polygon => {
        const [startNear, startFar] = [near, far];
        near += (n + 4) / 8;
        far += (f + 4) / 8;
        // Inset less than the cell is wide, so that the blank stays a blank.
        return [
          [startNear + inset / 2, 0],
          [near, 0],
          [far, height],
          [startFar + inset / 2, height],
        ];
      });
      const length = Math.max(near, far);
      const strip = row(outlines, height, length);
      let [lastNear, lastFar] = [0, 0];
      for (const piece of strip.pieces) {
        expect(piece.onRuler).toBe(true);
        expect(Math.min(piece.near, piece.far)).toBeGreaterThanOrEqual(0);
        expect(Math.max(piece.near, piece.far)).toBeLessThanOrEqual(length + 1e-9);
        expect(piece.near).toBeGreaterThanOrEqual(lastNear - 1e-4);
        expect(piece.far).toBeGreaterThanOrEqual(lastFar - 1e-4);
        [lastNear, lastFar] = [piece.near, piece.far];
      }
      expect(strip.left).toBeCloseTo(0, 9);
    }),
    { numRuns: 200 },
  );
});

test('a low blank at the end of a tall strip is parted by a cut that leaves by the end, where no other does', () => {
  const tall: Polygon = [
    [0, 0],
    [10, 0],
    [10, 2],
    [2, 4],
    [0, 4],
  ];
  const wedge: Polygon = [
    [10, 3.5],
    [10, 4],
    [3.5, 4],
  ];
  const strip = row([tall, wedge], 4, 10);
  expect(strip.pieces.map((piece) => piece.blank)).toEqual(['0', '1']);
  // It passes (10, 2) and (3.5, 4), so it would meet the near edge at 16.5.
  const { near, far } = strip.pieces[0]!;
  expect((near + far) / 2).toBeGreaterThanOrEqual(10 - 1e-4);
  expect(far).toBeLessThanOrEqual(3.5 + 1e-4);
});
