/** Blocks of one cloth each against every way to share them out among the cloths, each way tried by going through all its plans. */
import { expect, test } from 'vitest';
import type { JobCloth, LayoutJob, OneCloth } from '../../../src/plan/layout-job.ts';
import { readLayoutJobValue } from '../../../src/plan/read-layout-job.ts';
import { proofread } from '../../../workers/proof/proofread.ts';
import { checkAnswer } from '../../checker/check-answer.ts';
import { planned, rectangle } from '../../outside/engine.ts';
import { numbers, pickFrom } from '../numbers.ts';
import { leastCost, type SeveralCloths } from './several-cloths.ts';

interface Blocks {
  /** The last kind is of no block. */
  readonly kinds: SeveralCloths['kinds'];
  readonly cloths: readonly JobCloth[];
  readonly group: OneCloth;
}

function blocksJob(seed: number): Blocks {
  const draw = numbers(seed + 400);
  const quarters = (from: number, to: number) => draw(4 * from, 4 * to) / 4;
  const blocks = draw(2, 3);
  const per = [1, draw(1, 2)].slice(0, draw(1, 2));
  const kind = (demand: number) => ({
    outline: rectangle(quarters(1, 4), quarters(1, 4)),
    demand,
    turns: pickFrom(draw, [[0], [0, 90]]),
  });
  const kinds = [...per.map((n) => kind(n * blocks)), kind(draw(1, 2))];
  const bolt = (id: string): JobCloth => ({
    id,
    width: quarters(5, 9),
    cost: pickFrom(draw, [1, 1, 0.75]),
    ...pickFrom(draw, [{}, { step: 2.25 }, { step: 4.5 }]),
  });
  const piece: JobCloth = { id: 'scrap', width: quarters(4, 8), length: quarters(3, 6), cost: 0 };
  const cloths = [bolt('blue'), bolt('navy'), ...(draw(0, 1) === 0 ? [piece] : [])];
  const lists =
    cloths.length === 2
      ? [['blue'], ['navy']]
      : pickFrom(draw, [
          [['blue', 'scrap'], ['navy']],
          [['blue'], ['navy'], ['scrap']],
        ]);
  const blanks = Object.fromEntries(per.map((n, i) => [`${i}`, n]));
  return { kinds, cloths, group: { id: 'star', blocks, blanks, cloths: lists } };
}

const asJob = ({ kinds, cloths, group }: Blocks): LayoutJob => ({
  method: 'strips',
  seconds: 10,
  cloths,
  blanks: kinds.map(({ outline, turns, demand }, i) => ({ id: `${i}`, outline, turns, demand })),
  oneCloth: [group],
});

/** Every way to write `total` as a sum over so many lists. */
function splits(total: number, lists: number): readonly (readonly number[])[] {
  if (lists === 1) return [[total]];
  return Array.from({ length: total + 1 }, (_, n) => splits(total - n, lists - 1).map((rest) => [n, ...rest])).flat();
}

function leastOfAll({ kinds, cloths, group }: Blocks): number {
  const all = cloths.map(({ id }) => id);
  const costs = splits(group.blocks, group.cloths.length).map((split) => {
    const parts = kinds.flatMap((kind, i) => {
      const per = group.blanks[`${i}`];
      if (per === undefined) return [{ kind, from: all }];
      return split.map((n, k) => ({ kind: { ...kind, demand: per * n }, from: group.cloths[k]! }));
    });
    const some = parts.filter(({ kind }) => kind.demand > 0);
    return leastCost({ kinds: some.map(({ kind }) => kind), from: some.map(({ from }) => from), cloths });
  });
  return Math.min(...costs);
}

test('the plan costs the least there is over every way to share the blocks out, and that is proved', async () => {
  let shared = 0;
  let dearer = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const blocks = blocksJob(seed);
    const answer = await planned(asJob(blocks));
    const least = leastOfAll(blocks);
    expect([seed, answer.status, answer.cost]).toEqual([seed, 'optimal', expect.closeTo(least, 6)]);
    if (answer.oneCloth![0]!.blocks.filter((n) => n > 0).length > 1) shared++;
    const { oneCloth: _, ...free } = asJob(blocks);
    if ((await planned(free)).cost < least - 1e-6) dearer++;
  }
  // Some have blocks of several cloths, and for some one cloth a block costs more than none need keep to.
  expect(shared).toBeGreaterThan(3);
  expect(dearer).toBeGreaterThan(0);
});

test('stacks never cost more, and what is proved of rows is not told of them', async () => {
  for (let seed = 1; seed <= 8; seed++) {
    const blocks = blocksJob(seed);
    const answer = await planned({ ...asJob(blocks), stages: 3, seconds: 1 });
    expect(answer.cost, `seed ${seed}`).toBeLessThanOrEqual(answer.twoStageCost! + 1e-6);
    expect(answer.twoStageCost, `seed ${seed}`).toBeGreaterThanOrEqual(leastOfAll(blocks) - 1e-6);
    expect([seed, answer.bound]).toEqual([seed, 0]);
  }
});

test('more blocks than the pieces hold are planned as far as they go', async () => {
  const job: LayoutJob = {
    method: 'strips',
    seconds: 0.5,
    cloths: [
      { id: 'a', width: 5, length: 4 },
      { id: 'b', width: 5, length: 4 },
    ],
    blanks: [{ id: '0', outline: rectangle(2, 4), demand: 9 }],
    oneCloth: [{ id: 'star', blocks: 4, blanks: { '0': 2 }, cloths: [['a'], ['b']] }],
  };
  const answer = await planned(job);
  expect(answer).toMatchObject({ status: 'partial', unplaced: [{ blank: '0', count: 5 }] });
});

test('both readers see a block of two cloths', async () => {
  const job: LayoutJob = {
    method: 'strips',
    seconds: 5,
    cloths: [
      { id: 'a', width: 4 },
      { id: 'b', width: 4 },
    ],
    blanks: [{ id: '0', outline: rectangle(2, 4), demand: 4 }],
    oneCloth: [{ id: 'star', blocks: 2, blanks: { '0': 2 }, cloths: [['a'], ['b']] }],
  };
  const answer = await planned(job);
  const [blocks] = [answer.oneCloth![0]!.blocks];
  expect(blocks.reduce((a, b) => a + b, 0)).toBe(2);
  for (const wrong of [[1, 1], [3, -1], [2], [1, 0]].filter((each) => each.join() !== blocks.join())) {
    // A bolt holds a whole block in a strip, so a plan of one cloth may hold to one split only.
    const told = { ...answer, oneCloth: [{ id: 'star', blocks: wrong }] };
    const single = answer.layouts.length === 1;
    if (!single) continue;
    expect(proofread(job, told).map(({ what }) => what)).toContain('one cloth');
    expect(checkAnswer(job, told)).not.toEqual([]);
  }
  const { oneCloth: _, ...silent } = answer;
  expect(proofread(job, silent).map(({ what }) => what)).toEqual(['one cloth']);
  expect(checkAnswer(job, silent)).not.toEqual([]);
});

test('what cannot be is refused in one line that names the field', () => {
  const job = asJob(blocksJob(1));
  const group = job.oneCloth![0]!;
  const cases: readonly (readonly [object, RegExp])[] = [
    [{ blanks: { nothing: 1 } }, /^oneCloth\[0\]\.blanks: names no blank/],
    [{ cloths: [['blue'], ['red']] }, /^oneCloth\[0\]\.cloths\[1\]\[0\]: names no cloth/],
    [{ cloths: [['blue'], ['blue']] }, /oneCloth\[0\]\.cloths \(cloth 1\): is the same/],
    [{ cloths: [] }, /^oneCloth\[0\]\.cloths: is empty/],
    [{ blocks: 100 }, /^oneCloth: asks for more "0" than is wanted/],
    [{ blocks: 1.5 }, /^oneCloth\[0\]\.blocks: is not a whole number/],
  ];
  for (const [change, words] of cases)
    expect(() => readLayoutJobValue({ ...job, oneCloth: [{ ...group, ...change }] })).toThrow(words);
});
