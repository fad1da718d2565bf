import { handlePacker, type PackerHandle } from '../../workers/door.ts';

/** Workers that wait for their first job. */
const ready = new Set<Worker>();

const newWorker = (): Worker =>
  new Worker(new URL('../../workers/browser-worker.ts', import.meta.url), { type: 'module', name: 'packer' });

/** Begins to load workers before there is anything to plan, so that the first plan need not wait for them. */
export function readyPackers(count: number): void {
  for (let made = 0; made < count; made++) {
    const worker = newWorker();
    ready.add(worker);
    // One that fails before it is wanted is tried anew when it is, and told of then.
    worker.addEventListener('error', () => ready.delete(worker));
  }
}

/** A packer in a worker of the page, so that nothing on the page blocks while it plans. */
export function startPacker(): PackerHandle {
  return handlePacker((died) => {
    const [waiting] = ready;
    const worker = waiting ?? newWorker();
    ready.delete(worker);
    worker.addEventListener('error', (event) => {
      died(`the packer died: ${event.message || 'its file could not be loaded'}`);
    });
    worker.addEventListener('messageerror', () => died('the packer sent what cannot be read'));
    return { endpoint: worker, end: () => worker.terminate() };
  });
}
