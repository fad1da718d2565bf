import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { startPacker } from '../../src/cli/start-packer.ts';
import type { Progress } from '../../src/plan/layout-job.ts';
import { exposePacker, handlePacker, type PackerHandle } from '../../workers/door.ts';
import { answerOf, FakePacker, jobThat } from './fake-packer.ts';

/** The packer on this same thread, over a channel as to a worker. */
function sameThread(grace?: number): PackerHandle {
  return handlePacker((died) => {
    const { port1, port2 } = new MessageChannel();
    const end = () => {
      port1.close();
      port2.close();
    };
    exposePacker(new FakePacker(() => died('the packer died')), port2);
    port1.start();
    return { endpoint: port1, end };
  }, grace);
}

const nodeWorker = () => startPacker(new URL('./fake-worker.mjs', import.meta.url));

describe.each([
  ['on the same thread', () => sameThread()],
  ['in a worker of Node', nodeWorker],
])('a packer %s', (_, start) => {
  let packer: PackerHandle;
  beforeEach(() => {
    packer = start();
  });
  afterEach(() => packer.end());

  /** Plans and waits until the packer has begun. */
  async function begun(behaviour: Parameters<typeof jobThat>[0]) {
    let plan: Promise<unknown> = Promise.resolve();
    await new Promise<void>((resolve) => {
      plan = packer.plan(jobThat(behaviour), () => resolve());
      // Each test looks at the plan itself; a failure before the first progress must not hang it.
      plan.catch(() => resolve());
    });
    return { plan };
  }

  test('answers, and tells its progress before', async () => {
    const progress: Progress[] = [];
    expect(await packer.plan(jobThat('answers'), (each) => progress.push(each))).toEqual(answerOf('done'));
    expect(progress.map((each) => each.doing)).toEqual(['begun', 'half done']);
  });

  test('answers when nobody listens to progress', async () => {
    expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
  });

  test('plans one job after another in the same worker', async () => {
    for (let i = 0; i < 3; i++) expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
  });

  test('refuses a second job while the first is under way, and the first goes on', async () => {
    const { plan } = await begun('waits');
    await expect(packer.plan(jobThat('answers'))).rejects.toThrow('a plan is under way already');
    packer.stop();
    expect(await plan).toEqual(answerOf('stopped'));
  });

  test('finishes with the best so far when it is asked to stop', async () => {
    const { plan } = await begun('waits');
    packer.stop();
    expect(await plan).toEqual(answerOf('stopped'));
  });

  test('takes no harm from being stopped or ended when it does nothing', async () => {
    packer.stop();
    packer.end();
    expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
    packer.stop();
    packer.end();
    packer.end();
  });

  test('a fault of the packer rejects with its own message, and the next plan is answered', async () => {
    await expect(packer.plan(jobThat('throws'))).rejects.toThrow('the plan does not pass');
    expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
  });

  test('a worker that dies in mid-plan rejects the plan, and the next plan starts another', async () => {
    await expect(packer.plan(jobThat('dies'))).rejects.toThrow('the packer died');
    expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
  });

  test('a worker that is ended in mid-plan rejects the plan with the reason, and the next plan starts another', async () => {
    const { plan } = await begun('waits');
    packer.end('another plan is wanted');
    await expect(plan).rejects.toThrow('another plan is wanted');
    expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
  });

  test('a plan asked for right after the end of another is not disturbed by it', async () => {
    const first = packer.plan(jobThat('waits'));
    packer.end('too late');
    const second = packer.plan(jobThat('answers'));
    await expect(first).rejects.toThrow('too late');
    expect(await second).toEqual(answerOf('done'));
  });

  test('a listener that throws ends the plan with its error', async () => {
    const plan = packer.plan(jobThat('waits'), () => {
      throw new Error('the page cannot show this');
    });
    await expect(plan).rejects.toThrow('the page cannot show this');
  });
});

test('a packer that falls silent is given up some time after its job should have ended', async () => {
  const packer = sameThread(0.1);
  await expect(packer.plan(jobThat('waits', 0.1))).rejects.toThrow('no answer in its time');
  expect(await packer.plan(jobThat('answers', 1000))).toEqual(answerOf('done'));
  packer.end();
});

test('a job that may take longer than any timer can wait is not given up at once', async () => {
  const packer = sameThread();
  const plan = packer.plan(jobThat('waits', 1e9));
  await new Promise((resolve) => setTimeout(resolve, 50));
  packer.stop();
  expect(await plan).toEqual(answerOf('stopped'));
  packer.end();
});

test('a worker of Node that is stuck in a loop can be ended, and the next plan is answered', async () => {
  const packer = nodeWorker();
  const plan = packer.plan(jobThat('blocks'));
  const told = expect(plan).rejects.toThrow('enough');
  await new Promise((resolve) => setTimeout(resolve, 500));
  packer.end('enough');
  await told;
  expect(await packer.plan(jobThat('answers'))).toEqual(answerOf('done'));
  packer.end();
});

test('a worker of Node whose file is not there rejects the plan', async () => {
  const packer = startPacker(new URL('./no-such-worker.mjs', import.meta.url));
  await expect(packer.plan(jobThat('answers'))).rejects.toThrow('the packer died');
});

test('what is printed in a worker of Node does not reach standard output', async () => {
  const out = vi.spyOn(process.stdout, 'write');
  const err = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const packer = nodeWorker();
  await packer.plan(jobThat('prints'));
  await vi.waitFor(() => expect(err.mock.calls.flat().join('')).toContain('what a library prints'));
  expect(out.mock.calls.flat().join('')).not.toContain('what a library prints');
  packer.end();
  vi.restoreAllMocks();
});
