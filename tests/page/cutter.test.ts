import { expect, test } from 'vitest';
import type { CutList } from '../../src/cutting/cut-list.ts';
import { type CutterReply, type CutterWorker, startCutter } from '../../src/page/cutter.ts';
import type { Quilt } from '../../src/quilt/quilt.ts';

class SlowWorker implements CutterWorker {
  onmessage: CutterWorker['onmessage'] = null;
  onerror: CutterWorker['onerror'] = null;
  readonly asked: string[] = [];
  postMessage(quilt: Quilt): void {
    this.asked.push(quilt.name);
  }
  reply(data: CutterReply): void {
    this.onmessage?.({ data } as MessageEvent<CutterReply>);
  }
}

const quilt = (name: string): Quilt => ({ name }) as Quilt;
const list = (): CutList => ({ groups: [], problems: [] });

test('of several wishes that wait, only the latest is worked on', async () => {
  const worker = new SlowWorker();
  const cut = startCutter(() => worker);
  const first = cut(quilt('first'));
  const second = cut(quilt('second'));
  const third = cut(quilt('third'));
  await expect(second).rejects.toThrow('a newer choice took its place');
  const lists = [list(), list()];
  worker.reply({ cutList: lists[0]! });
  worker.reply({ cutList: lists[1]! });
  expect(await first).toBe(lists[0]);
  expect(await third).toBe(lists[1]);
  expect(worker.asked).toEqual(['first', 'third']);
});

test('a cut list that cannot be made rejects with the reason, and the next is made', async () => {
  const worker = new SlowWorker();
  const cut = startCutter(() => worker);
  const bad = cut(quilt('bad'));
  worker.reply({ error: 'an outline crosses itself' });
  await expect(bad).rejects.toThrow('an outline crosses itself');
  const good = cut(quilt('good'));
  worker.reply({ cutList: list() });
  await expect(good).resolves.toEqual(list());
});

test('a worker that dies is replaced', async () => {
  const workers: SlowWorker[] = [];
  const cut = startCutter(() => {
    workers.push(new SlowWorker());
    return workers.at(-1)!;
  });
  const lost = cut(quilt('lost'));
  workers[0]!.onerror?.({ message: '' } as ErrorEvent);
  await expect(lost).rejects.toThrow('died');
  const kept = cut(quilt('kept'));
  workers[1]!.reply({ cutList: list() });
  await expect(kept).resolves.toEqual(list());
});
