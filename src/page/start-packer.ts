import { handlePacker, type PackerHandle } from '../../workers/door.ts';

/** A packer in a worker of the page, so that nothing on the page blocks while it plans. */
export function startPacker(): PackerHandle {
  return handlePacker((died) => {
    const worker = new Worker(new URL('../../workers/browser-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('error', (event) => {
      died(`the packer died: ${event.message || 'its file could not be loaded'}`);
    });
    worker.addEventListener('messageerror', () => died('the packer sent what cannot be read'));
    return { endpoint: worker, end: () => worker.terminate() };
  });
}
