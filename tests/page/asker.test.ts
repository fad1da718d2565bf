import { expect, test } from 'vitest';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { Aside } from '../../src/page/asides.ts';
import { Asker } from '../../src/page/asker.ts';
import type { Questions } from '../../src/page/questions.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { makeTally } from '../../src/plan/make-tally.ts';
import { takenOver } from '../../src/plan/take-over.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { blockOf, clothOf, oblong, quiltOf, unitOf } from '../cutting/sample-quilt.ts';

/** Ten squares of 4 in on paper, on cloth 45 in wide: of 4 1/2 in, without room, they fill one strip. */
function sample(): Quilt {
  const unit = unitOf(oblong(0, 0, 4, 4), { count: 1 }, { paper: true });
  const cloth = clothOf('solid', { width: 45, price: { amount: 12, per: 'yd', currency: '$' } });
  return quiltOf([], { to: 'free' }, cloth, { blocks: [blockOf([unit], { count: 10 })] });
}

interface Open {
  readonly job: LayoutJob;
  cancelled: boolean;
}

/** Plans with a packer on the same thread, or, where it is held, never. */
function setUp({ held = false, read = proofread as typeof proofread | (() => readonly unknown[]) } = {}) {
  const open: Open[] = [];
  const aside = (job: LayoutJob, seconds: number): Aside => {
    const one: Open = { job, cancelled: false };
    open.push(one);
    let cancel = (): void => {};
    const answer = new Promise<LayoutAnswer>((resolve, reject) => {
      cancel = () => {
        one.cancelled = true;
        reject(new Error('taken back'));
      };
      if (!held) {
        new Packer().plan({ ...job, seconds }).then(resolve, reject);
      }
    });
    return { answer, cancel };
  };
  const told: Questions[] = [];
  const asker = new Asker({ aside, makeCutList: async (quilt) => makeCutList(quilt), read });
  asker.subscribe((questions) => told.push(questions));
  return { asker, told, open };
}

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

async function planOf(quilt: Quilt) {
  const cutList = makeCutList(quilt);
  const answers = await Promise.all(cutList.groups.map(({ job }) => new Packer().plan({ ...job, seconds: 2 })));
  return { quilt, cutList, answers, tally: makeTally(quilt, cutList, answers) };
}

test('the tries of a question are told one after the other, and what is still being tried', async () => {
  const { asker, told } = setUp();
  const quilt = sample();
  await asker.askHand(quilt, 'solid', '4 1/2 in');
  const hands = told.map(({ hands: all }) => all.get('solid')!);
  expect(hands[0]).toMatchObject({ status: 'working', open: [[]], tries: [] });
  expect(hands.some(({ tries, open }) => tries.length === 1 && open.length === 2)).toBe(true);
  expect(hands.at(-1)).toMatchObject({ status: 'answered', open: [], quilt });
  expect(hands.at(-1)!.tries.map(({ verdict }) => verdict)).toEqual(['short', 'short', 'fits']);
});

test('a question that is stopped keeps what was found, and its packers are freed', async () => {
  const { asker, open } = setUp({ held: true });
  const asking = asker.askHand(sample(), 'solid', '4 1/2 in');
  await settle();
  expect(open).toHaveLength(1);
  asker.stop('solid');
  await asking;
  expect(asker.questions.hands.get('solid')).toMatchObject({ status: 'stopped', tries: [] });
  expect(open[0]!.cancelled).toBe(true);
});

test('a newer question about the same cloth takes the older one’s place', async () => {
  const { asker } = setUp();
  const quilt = sample();
  await Promise.all([asker.askHand(quilt, 'solid', '4 1/2 in'), asker.askHand(quilt, 'solid', '2 yd')]);
  expect(asker.questions.hands.get('solid')).toMatchObject({ status: 'answered', have: '2 yd' });
  expect(asker.questions.hands.get('solid')!.tries).toHaveLength(1);
});

test('the prices are told version by version, each of them read', async () => {
  const { asker, told } = setUp();
  await asker.askPrices(await planOf(sample()));
  const { prices } = asker.questions;
  expect(prices).toMatchObject({ status: 'answered', error: null });
  expect([...prices!.versions.keys()].sort()).toEqual(['as wanted', 'facing ignored', 'no room', 'rule of thumb']);
  expect([...prices!.versions.values()].every(({ whole }) => whole)).toBe(true);
  expect(told.some((each) => each.prices?.status === 'working' && each.prices.versions.size === 2)).toBe(true);
});

test('a fault ends a question with words, and all questions end when the quilt changes', async () => {
  const { asker } = setUp({ read: () => ['overlap'] });
  await asker.askPrices(await planOf(sample()));
  expect(asker.questions.prices).toMatchObject({ status: 'failed', error: expect.stringContaining('overlap') });
  await asker.askHand(sample(), 'solid', 0);
  expect(asker.questions.hands.get('solid')!.error).toMatch(/must be above zero/);
  const asking = asker.askHand(sample(), 'solid', 9);
  asker.stopAll();
  await asking;
  expect(asker.questions.hands.get('solid')!.status).toBe('stopped');
});

test('what is taken over comes with its plan, and never with one that a reader refuses', async () => {
  const { asker } = setUp();
  const quilt = sample();
  await asker.askHand(quilt, 'solid', '4 1/2 in');
  const asked = asker.questions.hands.get('solid')!;
  const found = asked.tries.at(-1)!;
  const [known] = await asker.takeOver(asked, found);
  expect(known!.answer.cost).toBe(0);
  const after = makeCutList(takenOver(quilt, 'solid', '4 1/2 in', found.changes));
  expect(known!.job).toEqual(after.groups[0]!.job);
  expect(await setUp({ read: () => ['overlap'] }).asker.takeOver(asked, found)).toEqual([]);
});
