/** Blocks of one cloth each, from the quilt file to what is said of each block and what goes into its bag. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import { bagStrips } from '../../src/plan/bagged-strips.ts';
import { inCuttingOrder } from '../../src/plan/cutting-order.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { makeCutSteps } from '../../src/plan/make-cut-steps.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { planTestFirst } from '../../src/plan/test-first.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { readQuilt } from '../../src/quilt/read-quilt.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { planned } from '../outside/engine.ts';

/** Twelve gates, every second one turned; their outside corners of either of two cloths, of one of which there is only a fat quarter. */
function gates(changes: (quilt: Quilt) => Quilt = (quilt) => quilt): Quilt {
  const file = new URL('../../scenarios/garden-gate.yardwright.json', import.meta.url);
  const quilt = readQuilt(readFileSync(file, 'utf8'));
  return changes({
    ...quilt,
    roles: quilt.roles.map((role) => (role.id === 'hedge' ? { ...role, oneCloth: true } : role)),
    schemes: quilt.schemes.map((scheme) => ({
      ...scheme,
      cloths: { ...scheme.cloths, hedge: ['box-hedge', 'clematis'] },
    })),
  });
}

test('the job asks for it by role, block and turn, and lists each cloth with its pieces', () => {
  const group = makeCutList(gates()).groups.find(({ id }) => id === 'clematis+box-hedge')!;
  expect(group.job.oneCloth).toEqual([
    {
      id: '["hedge","gate",0]',
      blocks: 6,
      blanks: { B1: 4 },
      cloths: [['box-hedge'], ['clematis', 'clematis/fat-quarter']],
    },
    {
      id: '["hedge","gate",90]',
      blocks: 6,
      blanks: { B1: 4 },
      cloths: [['box-hedge'], ['clematis', 'clematis/fat-quarter']],
    },
  ]);
});

test('is not asked where one cloth fills the role, nor where the role does not ask', () => {
  const asked = (quilt: Quilt) => makeCutList(quilt).groups.flatMap(({ job }) => job.oneCloth ?? []);
  const single = gates((quilt) => ({
    ...quilt,
    schemes: quilt.schemes.map((s) => ({ ...s, cloths: { ...s.cloths, hedge: 'box-hedge' } })),
  }));
  const free = gates((quilt) => ({ ...quilt, roles: quilt.roles.map(({ oneCloth: _, ...role }) => role) }));
  expect(asked(single)).toEqual([]);
  expect(asked(free)).toEqual([]);
});

test('stacks are left out there, and she is told', () => {
  const { groups, problems } = makeCutList(gates((quilt) => ({ ...quilt, stacks: true })));
  expect(groups.find(({ job }) => job.oneCloth)!.job.stages).toBe(2);
  expect(problems.map(({ text }) => text)).toContain(
    '“Clematis” and “Box hedge”: no stacks where each block keeps to one cloth.',
  );
});

test('the tally says which block is of which cloth, and every bag is filled so', async () => {
  const quilt = gates();
  const cutList = makeCutList(quilt);
  const answers: LayoutAnswer[] = [];
  for (const { job } of cutList.groups) answers.push(await planned({ ...job, seconds: 1 }));
  const { blockCloths } = makeTally(quilt, cutList, answers);
  expect(blockCloths).toMatchObject([{ role: 'Corners, outside' }]);
  const ofClematis = /([^;]*) of Clematis/.exec(blockCloths[0]!.words)?.[1] ?? '';
  const inOrder = cutList.groups.map((group, i) => inCuttingOrder(group, answers[i]!));
  const steps = cutList.groups.map((group, i) => makeCutSteps(group.job, inOrder[i]!));
  const bagsOf = bagStrips(quilt, cutList, inOrder, steps);
  const cloths = new Map<string, Set<string>>();
  const counts = new Map<string, number>();
  cutList.groups.forEach((group, g) => {
    for (const strip of steps[g]!) {
      const layout = inOrder[g]!.layouts[strip.layout]!;
      const cloth = group.lengths.find(({ id }) => id === layout.cloth)!.cloth;
      for (const bagged of bagsOf(group.id, strip.layout, strip.strip, false).flat()) {
        if (bagged.blank !== 'B1' || bagged.bag.block === null) continue;
        cloths.set(bagged.bag.name, (cloths.get(bagged.bag.name) ?? new Set()).add(cloth));
        counts.set(bagged.bag.name, (counts.get(bagged.bag.name) ?? 0) + 1);
      }
    }
  });
  expect(cloths.size).toBe(12);
  expect([...counts.values()]).toEqual(new Array(12).fill(4));
  for (const own of cloths.values()) expect(own.size).toBe(1);
  const clematis = [...cloths].filter(([, own]) => own.has('clematis')).map(([name]) => name.replace('Gate ', ''));
  expect(clematis.length).toBeGreaterThan(0);
  for (const number of clematis) expect(ofClematis).toMatch(new RegExp(`\\b(${number}|to)\\b`));
}, 60_000);

test('with the test block first, the first block’s bag is filled from the first strips, of its own cloth', async () => {
  const quilt = gates((whole) => ({ ...whole, testBlock: 'gate' }));
  const cutList = makeCutList(quilt);
  const { groups } = cutList;
  const plan = (job: LayoutJob) => planned({ ...job, seconds: 1 });
  const wholes = await Promise.all(groups.map(({ job }) => plan(job)));
  const answers = await planTestFirst(quilt, groups, wholes, plan, proofread);
  const at = groups.findIndex(({ job }) => job.oneCloth !== undefined);
  const told = answers[at]!.oneCloth!;
  expect(told.map(({ blocks }) => blocks.reduce((sum, n) => sum + n, 0))).toEqual([6, 6]);
  expect(told[0]!.first).toBeDefined();
  const inOrder = groups.map((group, i) => inCuttingOrder(group, answers[i]!));
  const steps = groups.map((group, i) => makeCutSteps(group.job, inOrder[i]!));
  const bagsOf = bagStrips(quilt, cutList, inOrder, steps);
  const list = groups[at]!.job.oneCloth![0]!.cloths[told[0]!.first!]!;
  const first = steps[at]!.flatMap(({ layout, strip }) =>
    bagsOf(groups[at]!.id, layout, strip, true)
      .flat()
      .filter(({ blank, bag }) => blank === 'B1' && bag.name === 'Gate 1')
      .map(() => ({
        cloth: inOrder[at]!.layouts[layout]!.cloth,
        begun: strip < answers[at]!.testFirst!.strips[layout]!,
      })),
  );
  expect(first).toHaveLength(4);
  expect(first.every(({ cloth, begun }) => list.includes(cloth) && begun)).toBe(true);
}, 60_000);
