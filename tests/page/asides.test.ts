import { expect, test } from 'vitest';
import type { CutList } from '../../src/cutting/cut-list.ts';
import { Planner } from '../../src/page/planner.ts';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Tally } from '../../src/plan/tally.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { answer, FakePackers } from './fake-packer.ts';

const quilt = (...cloths: readonly string[]): Quilt => ({ name: cloths.join(' ') }) as unknown as Quilt;
const jobOf = (id: string): LayoutJob => ({
  method: 'strips',
  cloths: [{ id, width: 42 }],
  blanks: [{ id: 'a', demand: 1 }],
});

async function makeCutList({ name }: Quilt): Promise<CutList> {
  const groups = name.split(' ').map((id) => ({ id, cloths: [id], job: jobOf(id), blanks: [], lengths: [] }));
  return { groups, problems: [] };
}

function setUp() {
  const packers = new FakePackers();
  const makeTally = (): Tally => ({ price: 0 }) as Tally;
  const planner = new Planner({ startPacker: packers.start, makeCutList, makeTally, patience: 40 });
  return { packers, planner, open: () => packers.open.map(({ job }) => job.cloths[0]!.id) };
}

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
/** A plan that is not proved, so that another turn follows. */
const half = answer(2, 'feasible', 1);

test('first looks at the plan come first; then one packer plans on while the other answers what is asked', async () => {
  const { packers, planner, open } = setUp();
  planner.plan(quilt('a', 'b', 'c'));
  await settle();
  const asked = [planner.aside(jobOf('x'), 5), planner.aside(jobOf('y'), 5)];
  expect(open()).toEqual(['a', 'b']);
  packers.openFor('a').finish(half);
  await settle();
  expect(open()).toEqual(['b', 'c']);
  packers.openFor('b').finish(half);
  packers.openFor('c').finish(half);
  await settle();
  expect(open()).toContain('x');
  expect(open()).not.toContain('y');
  expect(planner.state.busy).toBe(true);
  packers.openFor('x').finish(answer(7));
  expect(await asked[0]!.answer).toMatchObject({ cost: 7 });
  await settle();
  expect(open()).toContain('y');
  expect(open()).toHaveLength(2);
});

test('where the plan needs no packer all of them answer, and the plan stays as it was', async () => {
  const { packers, planner, open } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(1));
  await settle();
  const { plan } = planner.state;
  planner.aside(jobOf('x'), 5);
  planner.aside(jobOf('y'), 5);
  expect(open()).toEqual(['x', 'y']);
  expect(planner.state).toMatchObject({ busy: false, current: true });
  planner.stop();
  expect(packers.open.map(({ stopped }) => stopped)).toEqual([false, false]);
  expect(planner.state.plan).toBe(plan);
});

test('what is known already is answered without a packer', async () => {
  const { packers, planner } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(3));
  await settle();
  expect(await planner.aside(jobOf('a'), 5).answer).toMatchObject({ cost: 3 });
  const first = planner.aside(jobOf('x'), 5);
  packers.openFor('x').finish(answer(4));
  await first.answer;
  expect(await planner.aside(jobOf('x'), 5).answer).toMatchObject({ cost: 4 });
  expect(packers.calls).toHaveLength(2);
});

test('a question that is taken back frees its packer at once', async () => {
  const { packers, planner, open } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(1));
  await settle();
  const asked = planner.aside(jobOf('x'), 5);
  const rejected = expect(asked.answer).rejects.toThrow('taken back');
  asked.cancel();
  await rejected;
  expect(open()).toEqual([]);
  expect(packers.calls.at(-1)!.ended).not.toBeNull();
});

test('a newer quilt leaves what is asked alone, and one that dies twice over its packer is told of', async () => {
  const { packers, planner, open } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(1));
  await settle();
  const asked = planner.aside(jobOf('x'), 5);
  const rejected = expect(asked.answer).rejects.toThrow('out of memory');
  planner.plan(quilt('b'));
  await settle();
  expect(open().sort()).toEqual(['b', 'x']);
  packers.openFor('x').fail('out of memory');
  await settle();
  packers.openFor('x').fail('out of memory');
  await rejected;
  expect(open()).toEqual(['b']);
});

test('a question ends as soon as its least cost is proved', async () => {
  const { packers, planner } = setUp();
  planner.plan(quilt('a'));
  await settle();
  packers.openFor('a').finish(answer(1));
  await settle();
  planner.aside(jobOf('x'), 5);
  packers.openFor('x').progress(half, 1);
  expect(packers.openFor('x').stopped).toBe(false);
  packers.openFor('x').progress(answer(2), 2);
  expect(packers.openFor('x').stopped).toBe(true);
});

test('a plan that is known before its quilt is planned is there at once, and kept unless a better is found', async () => {
  const { packers, planner } = setUp();
  planner.know(jobOf('a'), answer(2, 'feasible', 0));
  planner.plan(quilt('a'));
  await settle();
  expect(planner.state.groups[0]!.answer).toMatchObject({ cost: 2 });
  expect(planner.state.busy).toBe(true);
  packers.openFor('a').finish(answer(5, 'feasible', 1));
  await settle();
  expect(planner.state.groups[0]!.answer).toMatchObject({ cost: 2, bound: 1 });
});
