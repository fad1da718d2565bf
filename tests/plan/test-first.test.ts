import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cuttingLines } from '../../src/cli/plan-text.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { inCuttingOrder } from '../../src/plan/cutting-order.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { priceOfTestFirst, sayTestFirst } from '../../src/plan/say-test-first.ts';
import { planTestFirst } from '../../src/plan/test-first.ts';
import type { Cloth, Quilt } from '../../src/quilt/quilt.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { blockOf, clothOf, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

const packer = new Packer();
/** One packer plans one job at a time. */
let last: Promise<unknown> = Promise.resolve();
const plan = (job: LayoutJob): Promise<LayoutAnswer> => {
  const next = last.then(() => packer.plan({ ...job, seconds: 2 }));
  last = next;
  return next;
};

/** A block of squares of 5 in cut size, on cloth 40 wide: eight to a strip. Plain arithmetic from there. */
function squares(each: number, count: number, cloth: Partial<Cloth> = {}, more: Partial<Quilt> = {}): Quilt {
  const outline = [
    [0, 0],
    [4.5, 0],
    [4.5, 4.5],
    [0, 4.5],
  ] as const;
  const block = blockOf([unitOf(outline, { count: each })], { count });
  return quiltOf([], { to: 'free' }, clothOf('tossed', { width: 40, step: 5, ...cloth }), {
    room: 0,
    testBlock: 'b',
    ...more,
    blocks: [block],
  });
}

async function begun(quilt: Quilt) {
  const cutList = makeCutList(quilt);
  const wholes = await Promise.all(cutList.groups.map(({ job }) => plan(job)));
  const answers = await planTestFirst(quilt, cutList.groups, wholes, plan, proofread);
  const [group, answer] = [cutList.groups[0]!, answers[0]!];
  const ordered = inCuttingOrder(group, answer);
  expect(proofread(group.job, answer)).toEqual([]);
  expect(proofread(group.job, ordered)).toEqual([]);
  return { quilt, cutList, group, answer, ordered, tally: makeTally(quilt, cutList, answers) };
}

/** How many blanks are cut at the first sitting and how many after it, over all layouts. */
function split({ layouts, testFirst }: LayoutAnswer): readonly [first: number, later: number] {
  const { held, strips } = testFirst!;
  expect(held.map((own) => own.length)).toEqual(strips);
  const first = layouts.map(({ count }, i) => count * (held[i] ?? []).reduce((sum, each) => sum + each, 0));
  const all = layouts.map(({ count, placements }) => count * placements.length);
  const sum = (list: readonly number[]) => list.reduce((total, each) => total + each, 0);
  return [sum(first), sum(all) - sum(first)];
}

/** A block of one square of 4 in cut size, and one of seven of 5 in: together they fill a strip 5 in high but for 1 in. */
function lowAndTall(testBlock: string): Quilt {
  const square = (size: number) =>
    [
      [0, 0],
      [size, 0],
      [size, size],
      [0, size],
    ] as const;
  const low = blockOf([unitOf(square(3.5), { count: 1 })], { id: 'low', name: 'Low' });
  const tall = blockOf([unitOf(square(4.5), { count: 7 })], { id: 'tall', name: 'Tall' });
  return { ...squares(1, 1), blocks: [low, tall], testBlock };
}

describe('on a bolt', () => {
  test('a low strip first and a tall one after it, where one tall strip would hold all: it is said what that costs', async () => {
    const { quilt, cutList, answer, ordered, tally } = await begun(lowAndTall('low'));
    expect(split(answer)).toEqual([1, 7]);
    expect(split(ordered)).toEqual([1, 7]);
    expect(answer).toMatchObject({ cost: 10, bound: 5, status: 'feasible', testFirst: { bound: 10 } });
    expect(answer.testFirst!.without.cost).toBe(5);
    expect(tally.cloths[0]!.proof).toMatchObject({ state: 'least', testFirst: true, atLeast: 2 });
    expect(tally.cloths[0]!.proof.words).toBe(
      'No plan with strips cut like these that begins with this test block buys less than 2 × 5 in.',
    );
    expect(priceOfTestFirst(quilt, cutList, [answer], tally)).toEqual([
      'Cutting Low first buys tossed 2 × 5 in instead of 5 in.',
    ]);
  });

  test('the rest goes on in what is left of the first strips', async () => {
    const { quilt, cutList, answer, ordered, tally } = await begun(lowAndTall('tall'));
    expect(answer.layouts[0]!.strips).toEqual([{ from: 0, height: 5 }]);
    expect(answer.testFirst!.held).toEqual([[7]]);
    expect(answer).toMatchObject({ cost: 5, bound: 5, status: 'optimal' });
    const lines = cuttingLines({ quilt, cutList, answers: [ordered], tally }).join('\n');
    expect(lines).toContain('Strip 1: 5 in high, 7 blanks; 5 in left for later');
    expect(lines).toContain('Strip 1, the rest of it: 5 in high, 1 blank; 1 in left over');
    expect(lines).toContain('It was begun for the test block: cut on from there, marks still from its start.');
    expect(lines.match(/Bags: all to (Tall|Low)\./g)).toEqual(['Bags: all to Tall.', 'Bags: all to Low.']);
  });

  test('four squares first and twelve after take no more than sixteen at once', async () => {
    const { answer } = await begun(squares(4, 4));
    expect(split(answer)).toEqual([4, 12]);
    expect(answer).toMatchObject({ cost: 10, bound: 10, status: 'optimal' });
  });

  test('where it costs nothing the proof is over all plans', async () => {
    const { quilt, cutList, answer, tally } = await begun(squares(8, 3));
    expect(answer).toMatchObject({ cost: 15, bound: 15, status: 'optimal' });
    expect(tally.cloths[0]!.proof.testFirst).toBeUndefined();
    expect(priceOfTestFirst(quilt, cutList, [answer], tally)).toEqual([
      'Cutting Block first buys no more than a plan without that wish.',
    ]);
  });

  test('the end is squared once, before the test block, and its strips are told first', async () => {
    const { quilt, cutList, answer, tally } = await begun(squares(4, 4, { step: 1 }, { squaring: 1 }));
    expect(answer.layouts).toHaveLength(1);
    expect(answer.layouts[0]!.strips!.map(({ height }) => height)).toEqual([1, 5, 5]);
    expect(split(answer)).toEqual([4, 12]);
    const lines = cuttingLines({ quilt, cutList, answers: [answer], tally }).join('\n');
    expect(lines).toContain(`  ${sayTestFirst(quilt, [answer])}`);
    const [first, rest] = [lines.indexOf('TEST BLOCK FIRST'), lines.indexOf('THE REST, once Block is sewn')];
    const told = ['Trim 1 in', 'Strip 1: 5 in', 'Strip 1, the rest', 'Strip 2: 5 in'].map((text) =>
      lines.indexOf(text),
    );
    const places = [first, told[0]!, told[1]!, rest, told[2]!, told[3]!];
    expect(Math.min(...places)).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(lines.match(/Bags: .*/g)).toEqual([
      'Bags: all to Block 1.',
      'Bags: all to Block 2.',
      'Bags: 4 each to Block 3 and 4.',
    ]);
  });

  test('a quilt of one such block has nothing left to cut', async () => {
    const { answer } = await begun(squares(4, 1));
    expect(split(answer)).toEqual([4, 0]);
    expect(answer).toMatchObject({ cost: 5, status: 'optimal' });
  });
});

describe('on the shelf', () => {
  const pieces = (length: number, count = 1) => ({ pieces: [{ id: 'p', width: 20, length, count }] });
  const shelfOnly = async (each: number, copies: number, length: number, count?: number) => {
    const quilt = squares(each, copies, pieces(length, count));
    const { step: _, ...cloth } = quilt.cloths[0]!;
    return begun({ ...quilt, cloths: [cloth] });
  };

  test('what remains of a piece is cut on where the test block ends', async () => {
    const { answer } = await shelfOnly(4, 3, 15);
    expect(answer.layouts).toHaveLength(1);
    expect(split(answer)).toEqual([4, 8]);
  });

  test('of several pieces alike only those that were begun have a test block', async () => {
    const { answer } = await shelfOnly(4, 4, 10, 2);
    expect(split(answer)).toEqual([4, 12]);
    expect(answer.layouts.reduce((sum, { count }) => sum + count, 0)).toBe(2);
  });

  test('a block that leaves too little for the rest is not cut first, and it is said', async () => {
    // All of it fits a piece 40 × 5 in; four inches of that for the low square first leave one inch.
    const low = lowAndTall('low');
    const { step: _, ...cloth } = { ...low.cloths[0]!, pieces: [{ id: 'p', width: 40, length: 5 }] };
    const { quilt, cutList, answer, tally } = await begun({ ...low, cloths: [cloth] });
    expect(answer.testFirst).toMatchObject({ bound: null, strips: [0], held: [[]] });
    expect(answer.layouts).toEqual(answer.testFirst!.without.layouts);
    expect(priceOfTestFirst(quilt, cutList, [answer], tally)).toContain(
      'On tossed Low is not cut first: what it leaves would be too little for the rest.',
    );
    expect(sayTestFirst(quilt, [answer])).toBeNull();
  });

  test('what the shelf cannot give is bought', async () => {
    const { answer } = await begun(squares(4, 5, pieces(5)));
    expect(split(answer)).toEqual([4, 16]);
    expect(answer.cost).toBe(10);
  });
});

test('any such quilt is cut whole, once, and no dearer than its bound allows', async () => {
  const quilts = fc.sample(
    fc.record({
      each: fc.integer({ min: 1, max: 9 }),
      count: fc.integer({ min: 1, max: 4 }),
      squaring: fc.constantFrom(0, 1),
      length: fc.integer({ min: 5, max: 16 }),
      shelf: fc.integer({ min: 0, max: 2 }),
    }),
    { numRuns: 8, seed: 11 },
  );
  for (const { each, count, squaring, length, shelf } of quilts) {
    const pieces = shelf === 0 ? [] : [{ id: 'p', width: 21, length, count: shelf }];
    const { answer } = await begun(squares(each, count, { pieces }, { squaring }));
    expect(split(answer)).toEqual([each, each * (count - 1)]);
    expect(answer.bound!).toBeLessThanOrEqual(answer.testFirst!.bound! + 1e-6);
    expect(answer.testFirst!.bound!).toBeLessThanOrEqual(answer.cost + 1e-6);
    expect(answer.testFirst!.without.cost).toBeLessThanOrEqual(answer.cost + 1e-6);
  }
});
