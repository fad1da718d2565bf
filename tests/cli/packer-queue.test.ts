import { expect, test } from 'vitest';
import { queuePackers } from '../../src/cli/packer-queue.ts';
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';

const job = (id: string): LayoutJob => ({ method: 'strips', cloths: [{ id, width: 40 }], blanks: [] });
const answer = (job: LayoutJob): LayoutAnswer => ({
  status: 'optimal',
  cost: 0,
  bound: 0,
  boundFrom: job.cloths[0]!.id,
  seconds: job.seconds!,
  layouts: [],
  unplaced: [],
});

test('jobs asked for together share the time, and what one does not need goes to those after it', async () => {
  let clock = 100;
  const packer = {
    plan: async (each: LayoutJob) => {
      clock += 1;
      return answer(each);
    },
  };
  const plan = queuePackers([packer], 12, () => clock);
  const answers = await Promise.all(['a', 'b', 'c', 'd'].map((id) => plan(job(id))));
  expect(answers.map((each) => each.boundFrom)).toEqual(['a', 'b', 'c', 'd']);
  expect(answers.map((each) => each.seconds)).toEqual([3, 11 / 3, 5, 9]);
});

test('a packer has one job at a time, and several work side by side', async () => {
  const busy = [0, 0];
  const most = [0, 0];
  const packers = busy.map((_, i) => ({
    plan: async (each: LayoutJob) => {
      most[i] = Math.max(most[i]!, ++busy[i]!);
      await new Promise((resolve) => setTimeout(resolve, 1));
      busy[i]!--;
      return answer(each);
    },
  }));
  const plan = queuePackers(packers, 10, () => 0);
  const answers = await Promise.all(['a', 'b', 'c', 'd', 'e'].map((id) => plan(job(id))));
  expect(answers).toHaveLength(5);
  expect(most).toEqual([1, 1]);
  expect(answers[0]!.seconds).toBe(10 / (5 / 2));
});

test('a job that fails fails alone', async () => {
  const packer = {
    plan: async (each: LayoutJob) => {
      if (each.cloths[0]!.id === 'bad') {
        throw new Error('engine at fault');
      }
      return answer(each);
    },
  };
  const plan = queuePackers([packer], 10, () => 0);
  const [bad, good] = await Promise.allSettled([plan(job('bad')), plan(job('good'))]);
  expect([bad.status, good.status]).toEqual(['rejected', 'fulfilled']);
});
