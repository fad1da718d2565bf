import { expect, test } from 'vitest';
import type { CutList } from '../../src/cutting/cut-list.ts';
import { Planner } from '../../src/page/planner.ts';
import type { Tally } from '../../src/plan/tally.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { answer, FakePackers } from './fake-packer.ts';

/** A quilt as far as the planner looks: the cut list below makes a group of each "cloth:size". */
const quilt = (...groups: readonly string[]): Quilt => ({ name: groups.join(' ') }) as unknown as Quilt;

async function makeCutList({ name }: Quilt): Promise<CutList> {
  if (name === 'broken') {
    throw new Error('no scheme fills the role "sky"');
  }
  const groups = name.split(' ').map((text) => {
    const [id = '', size = '1'] = text.split(':');
    const blanks = Array.from({ length: Number(size) }, (_, index) => ({ id: `${index}`, demand: 1 }));
    return {
      id,
      cloths: [id],
      job: { method: 'strips', cloths: [{ id, width: 42 }], blanks } as const,
      blanks: [],
      lengths: [],
    };
  });
  return { groups, problems: [] };
}

function setUp() {
  const packers = new FakePackers();
  const makeTally = (_: Quilt, __: CutList, answers: readonly { readonly cost: number }[]): Tally =>
    ({ price: answers.reduce((sum, { cost }) => sum + cost, 0) }) as Tally;
  const planner = new Planner({ startPacker: packers.start, makeCutList, makeTally, patience: 40 });
  return { packers, planner, statuses: () => planner.state.groups.map((group) => group.status).join(' ') };
}

/** Lets settled promises reach the planner. */
const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

test('two packers take the smallest jobs first, and a plan is shown once every group has an answer', async () => {
  const { packers, planner, statuses } = setUp();
  planner.plan(quilt('a:9', 'b:1', 'c:2'));
  await settle();
  expect(packers.open.map((call) => call.job.cloths[0]?.id)).toEqual(['b', 'c']);
  expect(statuses()).toBe('waiting planning planning');
  packers.openFor('b').finish(answer(1));
  packers.openFor('c').finish(answer(2));
  await settle();
  expect(planner.state.plan).toBeNull();
  packers.openFor('a').progress(answer(30, 'feasible', 10), 10);
  expect(planner.state).toMatchObject({ busy: true, current: true, plan: { tally: { price: 33 } } });
  packers.openFor('a').progress(answer(20, 'feasible', 10), 10);
  expect(planner.state.plan?.tally.price).toBe(23);
  packers.openFor('a').finish(answer(20));
  await settle();
  expect(planner.state).toMatchObject({ busy: false, current: true });
  expect(statuses()).toBe('planned planned planned');
});

test('a change replans only the groups whose job changed; the former plan stays, marked, until the new one is whole', async () => {
  const { packers, planner } = setUp();
  planner.plan(quilt('a', 'b'));
  await settle();
  packers.openFor('a').finish(answer(1));
  packers.openFor('b').finish(answer(2));
  await settle();
  planner.plan(quilt('a', 'b:2'));
  await settle();
  expect(packers.calls).toHaveLength(3);
  expect(planner.state).toMatchObject({ busy: true, current: false, plan: { tally: { price: 3 } } });
  packers.openFor('b').finish(answer(5));
  await settle();
  expect(planner.state).toMatchObject({ current: true, plan: { tally: { price: 6 } } });
});

test('going back to a choice planned before costs nothing', async () => {
  const { packers, planner } = setUp();
  for (const choice of ['a', 'a:2']) {
    planner.plan(quilt(choice));
    await settle();
    packers.openFor('a').finish(answer(choice.length));
    await settle();
  }
  planner.plan(quilt('a'));
  await settle();
  expect(packers.calls).toHaveLength(2);
  expect(planner.state).toMatchObject({ busy: false, current: true, plan: { tally: { price: 1 } } });
});

test('a newer choice ends the planning of the older one but not of a group that stayed the same', async () => {
  const { packers, planner } = setUp();
  planner.plan(quilt('a', 'b'));
  await settle();
  const [old, same] = [packers.openFor('a'), packers.openFor('b')];
  planner.plan(quilt('a:2', 'b'));
  await settle();
  expect(old.ended).toBe('a newer choice is being planned');
  expect(same.ended).toBeNull();
  old.finish(answer(99));
  packers.openFor('a').finish(answer(4));
  same.finish(answer(2));
  await settle();
  expect(planner.state.plan?.tally.price).toBe(6);
});

test('stopping keeps the best of each group, leaves the rest unplanned, and planning can go on', async () => {
  const { packers, planner, statuses } = setUp();
  planner.plan(quilt('a', 'b', 'c:5'));
  await settle();
  packers.openFor('a').progress(answer(8, 'feasible', 4), 4);
  planner.stop();
  expect(packers.calls.every((call) => call.stopped)).toBe(true);
  packers.openFor('a').finish(answer(8, 'feasible', 4));
  packers.openFor('b').finish(answer(2));
  await settle();
  expect(statuses()).toBe('stopped planned stopped');
  expect(planner.state).toMatchObject({ busy: false, plan: null });
  planner.resume();
  expect(statuses()).toBe('planning planned planning');
  packers.openFor('a').finish(answer(9, 'feasible', 5));
  packers.openFor('c').finish(answer(1));
  await settle();
  // The second run of "a" found worse than the first had, so the first is kept.
  expect(planner.state.plan?.tally.price).toBe(8 + 2 + 1);
});

test('a packer that dies is replaced once; twice, the group fails and the last plan stays', async () => {
  const { packers, planner, statuses } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(1));
  await settle();
  planner.plan(quilt('a:2'));
  await settle();
  packers.openFor('a').fail('out of memory');
  await settle();
  expect(statuses()).toBe('planning');
  packers.openFor('a').fail('out of memory');
  await settle();
  expect(planner.state.groups[0]).toMatchObject({ status: 'failed', error: 'out of memory' });
  expect(planner.state).toMatchObject({ busy: false, current: false, plan: { tally: { price: 1 } } });
});

test('a quilt that cannot be planned says why and leaves the last plan', async () => {
  const { packers, planner } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(1));
  await settle();
  planner.plan(quilt('broken'));
  await settle();
  expect(planner.state).toMatchObject({
    error: 'no scheme fills the role "sky"',
    current: false,
    groups: [],
    plan: { tally: { price: 1 } },
  });
  planner.plan(quilt('a'));
  await settle();
  expect(planner.state).toMatchObject({ error: null, current: true });
});

test('an answer told again unchanged makes no new plan, so nothing is drawn anew', async () => {
  const { packers, planner } = setUp();
  planner.plan(quilt('a'));
  await settle();
  const call = packers.openFor('a');
  call.progress(answer(8, 'feasible', 4), 4);
  const first = planner.state.plan;
  call.progress(answer(8, 'feasible', 4), 4);
  expect(planner.state.plan).toBe(first);
  call.progress(answer(8, 'feasible', 6), 6);
  expect(planner.state.plan).not.toBe(first);
  expect(planner.state.plan?.answers[0]?.layouts).toBe(first?.answers[0]?.layouts);
});

test('every group has a short look before any has its long turn, and a proof found at once needs no second turn', async () => {
  const { packers, planner, statuses } = setUp();
  planner.plan(quilt('a', 'b:2', 'c:3'));
  await settle();
  expect(packers.open.map((call) => call.job.seconds)).toEqual([0.3, 0.3]);
  packers.openFor('a').finish(answer(8, 'feasible', 4));
  packers.openFor('b').finish(answer(2));
  await settle();
  expect(planner.state.plan).toBeNull();
  expect(packers.openFor('c').job.seconds).toBe(0.3);
  packers.openFor('c').finish(answer(5, 'feasible', 3));
  await settle();
  expect(planner.state).toMatchObject({ busy: true, current: true, plan: { tally: { price: 15 } } });
  expect(packers.openFor('a').job.seconds).toBeUndefined();
  packers.openFor('a').finish(answer(9, 'feasible', 7));
  packers.openFor('c').finish(answer(5, 'feasible', 2));
  await settle();
  expect(statuses()).toBe('planned planned planned');
  // The worse plan of the second turn is dropped, its better bound is kept; and the other way round.
  expect(planner.state.groups.map((group) => [group.answer?.cost, group.answer?.bound])).toEqual([
    [8, 7],
    [2, 2],
    [5, 3],
  ]);
});

test('a packer too deep in a solve to hear that it should stop is ended, and its best plan is kept', async () => {
  const { packers, planner, statuses } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').progress(answer(8, 'feasible', 4), 4);
  planner.stop();
  await new Promise((resolve) => setTimeout(resolve, 80));
  expect(packers.calls[0]?.ended).toBe('it did not stop when asked');
  expect(statuses()).toBe('stopped');
  expect(planner.state).toMatchObject({ busy: false, current: true, plan: { tally: { price: 8 } } });
});

test('with a test block the whole is shown until the rest is planned too, and its strips come first then', async () => {
  const packers = new FakePackers();
  const outline = [
    [0, 0],
    [5, 0],
    [5, 5],
    [0, 5],
  ] as const;
  const job = {
    method: 'strips',
    cloths: [{ id: 'a', width: 10 }],
    blanks: [{ id: 'A1', demand: 4, outline }],
  } as const;
  const use = { block: 'b', unit: 'A', patch: 1, place: 0, mirrored: false, count: 4, turn: 0 };
  const group = { id: 'a', cloths: ['a'], job, lengths: [], blanks: [{ id: 'A1', uses: [use] }] };
  const planner = new Planner({
    startPacker: packers.start,
    makeCutList: async () => ({ groups: [group], problems: [] }) as unknown as CutList,
    makeTally: () => ({}) as Tally,
    patience: 40,
  });
  const place = (x: number, y: number) => ({ blank: 'A1', shape: 0, turn: 0, mirror: false, x, y });
  const layouts = (places: readonly (readonly [number, number])[], heights: readonly number[]) => {
    let from = 0;
    const strips = heights.map((height) => ({ from: (from += height) - height, height }));
    const placements = places.map(([x, y]) => place(x, y));
    return [{ cloth: 'a', count: 1, length: from, firstCut: 'across', strips, placements }] as const;
  };
  planner.plan({ blocks: [{ id: 'b', name: 'B', count: 4 }], testBlock: 'b' } as unknown as Quilt);
  await settle();
  const demands = () => packers.open.map((call) => call.job.blanks[0]!.demand);
  expect(demands().sort()).toEqual([1, 4]);
  const whole = {
    ...answer(10),
    layouts: layouts(
      [
        [0, 0],
        [5, 0],
        [0, 5],
        [5, 5],
      ],
      [5, 5],
    ),
  };
  packers.open.find((call) => call.job.blanks[0]!.demand === 4)!.finish(whole);
  await settle();
  expect(planner.state.plan?.answers[0]).toBe(whole);
  expect(planner.state.busy).toBe(true);
  packers.open[0]!.finish({ ...answer(5), layouts: layouts([[0, 0]], [5]) });
  await settle();
  const [rest] = packers.open;
  expect(rest!.job).toMatchObject({
    cloths: [{ squaring: 5 }, { id: 'a end 1.1', width: 5, length: 5, cost: 0 }],
    blanks: [{ demand: 3 }],
  });
  rest!.finish({
    ...answer(15),
    layouts: layouts(
      [
        [0, 5],
        [5, 5],
        [0, 10],
      ],
      [5, 5, 5],
    ),
  });
  await settle();
  expect(planner.state.groups[0]).toMatchObject({ status: 'planned', error: null });
  expect(planner.state.plan?.answers[0]).toMatchObject({
    cost: 15,
    testFirst: { block: 'b', strips: [1], held: [[1]], bound: 15 },
  });
  expect(planner.state.busy).toBe(false);
});
