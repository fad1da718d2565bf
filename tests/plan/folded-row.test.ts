import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StripSteps } from '../../src/plan/cut-steps.ts';
import { inCuttingOrder } from '../../src/plan/cutting-order.ts';
import { type Fold, foldOf } from '../../src/plan/folded-row.ts';
import type { JobBlank, LayoutAnswer, LayoutJob, Placement } from '../../src/plan/layout-job.ts';
import { makeCutSteps } from '../../src/plan/make-cut-steps.ts';
import { handlingOf } from '../../src/plan/say-fold.ts';
import type { Point, Polygon } from '../../src/shape/point.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { groupOf } from './cut-group.ts';

const WIDTH = 42;
const box = (width: number, height: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
/** A half trapezium: square at its left, slanted at its right. Its mirror image is no turn of it. */
const left: Polygon = [
  [0, 0],
  [4, 0],
  [2, 3],
  [0, 3],
];
const right: Polygon = [
  [0, 0],
  [4, 0],
  [4, 3],
  [2, 3],
];

type Row = readonly { readonly blank: string; readonly width: number; readonly turn?: number }[];

function plan(blanks: readonly JobBlank[], row: Row, cloth: Partial<LayoutJob['cloths'][number]> = {}) {
  const counted = blanks.map((each) => ({ ...each, demand: row.filter(({ blank }) => blank === each.id).length }));
  const job: LayoutJob = {
    method: 'strips',
    ruler: 0.25,
    cloths: [{ id: 'cloth', width: WIDTH, ...cloth }],
    blanks: counted,
  };
  let x = 0;
  const placements = row.map(({ blank, width, turn = 0 }): Placement => {
    const placed = { blank, shape: 0, turn, mirror: false, x: turn === 180 ? x + width : x, y: turn === 180 ? 3 : 0 };
    x += width;
    return placed;
  });
  const strips = [{ from: 0, height: 3 }];
  const layout = { cloth: 'cloth', count: 1, length: 3, firstCut: 'across' as const, strips, placements };
  const answer: LayoutAnswer = {
    status: 'feasible',
    cost: 3,
    bound: 0,
    boundFrom: '',
    seconds: 0,
    layouts: [layout],
    unplaced: [],
  };
  return { job, answer };
}

function folded({ job, answer }: ReturnType<typeof plan>, oneWay?: 'along' | 'across') {
  const found = inCuttingOrder(groupOf(job, {}, oneWay), answer);
  expect(proofread(job, found)).toEqual([]);
  const [strip] = makeCutSteps(job, found);
  return { strip: strip!, fold: foldOf(strip!, oneWay, 1e-6 * WIDTH) };
}

/**
 * Cuts the folded strip and unfolds it: every cut through both layers is two on the cloth, itself and its mirror image.
 * What lies between two neighbouring cuts of a layer must be exactly one blank as it is placed.
 */
function expectUnfolds({ pieces, across, height }: StripSteps, { pairs }: Fold): void {
  const side = ([x, y]: Point, near: number, far: number) => x - (near + ((far - near) * y) / height);
  const before = (outline: Polygon, near: number, far: number) => outline.every((p) => side(p, near, far) <= 1e-4);
  const after = (outline: Polygon, near: number, far: number) => outline.every((p) => side(p, near, far) >= -1e-4);
  const cuts = pieces.slice(0, pairs).map(({ near, far }) => ({ near, far }));
  const lines = [...cuts, ...cuts.map(({ near, far }) => ({ near: across - near, far: across - far })).reverse()];
  for (const { outline } of pieces) {
    for (const { near, far } of lines) {
      expect(before(outline, near, far) || after(outline, near, far)).toBe(true);
    }
  }
  const cells = [{ near: 0, far: 0 }, ...lines, { near: across, far: across }];
  const held = cells
    .slice(1)
    .map((end, i) =>
      pieces.filter(
        ({ outline }) => after(outline, cells[i]!.near, cells[i]!.far) && before(outline, end.near, end.far),
      ),
    );
  held.forEach((inside, cell) => {
    expect(inside.length).toBe(cell === pairs ? pieces.length - 2 * pairs : 1);
  });
  for (const { near, far } of cuts) {
    expect(Math.max(near, far)).toBeLessThanOrEqual(across / 2 + 1e-4);
  }
}

const squares = (count: number): Row => Array.from({ length: count }, () => ({ blank: 'a', width: 4.5 }));
const a: JobBlank = { id: 'a', outline: box(4.5, 3), demand: 0 };

describe('a strip folded selvage to selvage', () => {
  test('gives two rectangles a cut, from both selvages to the fold; the odd one is cut from the middle', () => {
    const { strip, fold } = folded(plan([a], squares(9)));
    expect(fold).toEqual({ pairs: 4, left: 1.5 });
    expectUnfolds(strip, fold!);
    expect(strip.pieces.map(({ outline }) => Math.min(...outline.map(([x]) => x)))).toEqual([
      0, 4.5, 9, 13.5, 18, 24, 28.5, 33, 37.5,
    ]);
  });

  test('gives left and right hands together, whatever order they were planned in', () => {
    const blanks = [
      { id: 'l', outline: left, demand: 0 },
      { id: 'r', outline: right, demand: 0 },
    ];
    const row = ['l', 'l', 'l', 'l', 'l', 'r', 'r', 'r', 'r', 'r'].map((blank) => ({ blank, width: 4 }));
    const { strip, fold } = folded(plan(blanks, row));
    expect(fold?.pairs).toBe(5);
    expectUnfolds(strip, fold!);
    expect(strip.pieces.slice(0, 5).map(({ blank }) => blank)).not.toEqual(
      strip.pieces.slice(5).map(({ blank }) => blank),
    );
    expect(handlingOf(strip, fold, true, 1).between).toBeNull();
  });

  test('gives nothing where only one hand is wanted, and is opened flat before the slanted cuts', () => {
    // Head to tail: the second of each two begins over the slant of the first.
    const row = Array.from({ length: 14 }, (_, i) => ({ blank: 'l', width: i % 2 === 0 ? 2 : 4, turn: (i % 2) * 180 }));
    const { strip, fold } = folded(plan([{ id: 'l', outline: left, demand: 0, turns: [0, 180] }], row));
    expect(fold).toBeNull();
    expect(handlingOf(strip, fold, true, 1).before).toBe('Open it flat, right side up, before the slanted cuts.');
  });

  test('gives one hand twice where the cloth has no wrong side', () => {
    const row = Array.from({ length: 10 }, () => ({ blank: 'l', width: 4 }));
    const { strip, fold } = folded(plan([{ id: 'l', outline: left, demand: 0, mirror: true }], row));
    expect(fold?.pairs).toBe(5);
    expectUnfolds(strip, fold!);
  });

  test('is not folded so that a one-way print lies on its head in one layer', () => {
    expect(folded(plan([a], squares(8)), 'along').fold?.pairs).toBe(4);
    expect(folded(plan([a], squares(8)), 'across').fold).toBeNull();
  });

  test('is left as planned where much of it stays empty', () => {
    const { strip, fold } = folded(plan([a], squares(5)));
    expect(fold).toBeNull();
    expect(strip.left).toBe(WIDTH - 5 * 4.5);
  });
});

describe('a strip along the cloth', () => {
  const along = (oneWay?: 'along' | 'across') => {
    const { job, answer } = plan([{ ...a, outline: box(3, 4.5) }], squares(8), {
      width: 3,
      length: WIDTH,
      firstCut: 'along',
    });
    const turned = answer.layouts[0]!.placements.map((p) => ({ ...p, x: p.y, y: p.x }));
    const layout = { ...answer.layouts[0]!, firstCut: 'along' as const, length: WIDTH, placements: turned };
    return folded({ job, answer: { ...answer, cost: WIDTH, layouts: [layout] } }, oneWay);
  };

  test('may be folded end to end, but never in a one-way print', () => {
    const { strip, fold } = along();
    expect(fold?.pairs).toBe(4);
    expectUnfolds(strip, fold!);
    expect(along('along').fold).toBeNull();
    expect(along('across').fold?.pairs).toBe(4);
  });
});

test('whatever a row holds, what is cut folded unfolds to what was planned', () => {
  const blanks: readonly JobBlank[] = [
    { id: 'l', outline: left, demand: 0, turns: [0, 180] },
    { id: 'r', outline: right, demand: 0, turns: [0, 180] },
    { ...a, outline: box(4, 3) },
    { id: 'b', outline: box(2.5, 3), demand: 0 },
  ];
  const widths: Readonly<Record<string, number>> = { l: 4, r: 4, a: 4, b: 2.5 };
  const one = fc.record({ blank: fc.constantFrom('l', 'r', 'a', 'b'), turn: fc.constantFrom(0, 180) });
  let foldedRows = 0;
  fc.assert(
    fc.property(fc.array(one, { minLength: 8, maxLength: 10 }), (row) => {
      const laid = row.map(({ blank, turn }) => ({
        blank,
        width: widths[blank]!,
        turn: blank === 'a' || blank === 'b' ? 0 : turn,
      }));
      const { strip, fold } = folded(plan(blanks, laid));
      if (fold !== null) {
        foldedRows++;
        expectUnfolds(strip, fold);
      }
    }),
    { numRuns: 80, seed: 3 },
  );
  expect(foldedRows).toBeGreaterThan(20);
});
