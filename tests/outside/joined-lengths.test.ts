/** Binding and backing worked out in public by quilters, from the quilt file through the engine to what is bought. */
import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import type { Cloth, JoinedLength, LengthUnit } from '../../src/quilt/quilt.ts';
import { clothOf, quiltOf } from '../cutting/sample-quilt.ts';
import { planned, stripCount } from './engine.ts';

async function bought(unit: LengthUnit, cloth: Partial<Cloth>, joined: Omit<JoinedLength, 'id' | 'name' | 'role'>) {
  const quilt = quiltOf([], { to: 'free' }, clothOf('solid', cloth), {
    unit,
    blocks: [],
    ruler: unit === 'in' ? 0.125 : 0.5,
    joined: [{ id: 'j', name: 'Joined', role: 'r', ...joined }],
  });
  const cutList = makeCutList(quilt);
  const answers = await Promise.all(cutList.groups.map((group) => planned({ ...group.job, seconds: 5 })));
  const [tally] = makeTally(quilt, cutList, answers).cloths;
  const pieces = cutList.groups[0]!.blanks.reduce((sum, blank) => sum + blank.demand, 0);
  return {
    strips: stripCount(answers[0]!),
    pieces,
    need: tally!.need,
    buy: tally!.buy,
    proof: tally!.proof.state,
    answer: answers[0]!,
  };
}

test.each([
  // castillejacotton.blogspot.com/2013/06, read: 50 by 60 in, 2 in lost a join, 6 strips; 2 1/2 in wide is practice.
  ['50 by 60 in', 'in', 40, { length: 2 * (50 + 60), width: 2.5, join: 2 }, 6, 15],
  // sylviasquiltdepot.com, read: 46 by 46 in, 5 strips, 12 1/2 in.
  ['46 by 46 in', 'in', 40, { length: 4 * 46, width: 2.5, join: 0 }, 5, 12.5],
  // eternalmaker.com/fabric-measuring-tips, read: 1.5 by 1 m, 5 strips of 12 cm, 60 cm.
  ['1.5 by 1 m', 'cm', 110, { length: 2 * (150 + 100), width: 12, join: 0 }, 5, 60],
] as const)('binding for %s, with and without a shorter last piece', async (_, unit, width, joined, strips, need) => {
  const cloth = { width, step: unit === 'in' ? 4.5 : 10 };
  for (const shortest of [{}, { shortest: width / 4 }]) {
    const plan = await bought(unit, cloth, { ...joined, ...shortest });
    expect([plan.pieces, plan.strips, plan.proof]).toEqual([strips, strips, 'least']);
    expect(plan.need).toBeCloseTo(need, 9);
  }
});

test('a backing of 80 by 56 in from 40 in usable buys two widths, 112 in, 3 1/8 yd', async () => {
  // quiltingboard.com t290638, read.
  const plan = await bought('in', { width: 40, step: '1/8 yd' }, { kind: 'panels', width: 80, length: 56, join: 0 });
  expect([plan.pieces, plan.need, plan.proof]).toEqual([2, expect.closeTo(112, 9), 'least']);
  expect(plan.buy / 36).toBeCloseTo(3 + 1 / 8, 9);
});

test('the last piece of a binding comes from a shelf piece, and a strip less is bought', async () => {
  // 220 in with 2 in a join: five strips and one piece of 30 in (derived); a scrap of 31 by 3 in holds that one.
  const joined = { length: 220, width: 2.5, join: 2, shortest: 12 };
  const scrap = { pieces: [{ id: 'scrap', width: 31, length: 3 }] };
  const plan = await bought('in', { width: 40, step: 2.5, ...scrap }, joined);
  expect([plan.need, plan.proof]).toEqual([expect.closeTo(12.5, 9), 'least']);
  expect(plan.answer.layouts.find((layout) => layout.cloth === 'solid/scrap')?.placements).toMatchObject([
    { blank: 'Joined, last' },
  ]);
});
