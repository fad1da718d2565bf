import { Worker } from 'node:worker_threads';
import { handlePacker, type PackerHandle } from '../../workers/door.ts';
import { nodeEndpoint } from '../../workers/node-endpoint.ts';

const PACKER = new URL('../../workers/node-worker.mjs', import.meta.url);

/**
 * A packer in a worker of Node, so that the command can still be interrupted while a solve blocks its thread. End it, or
 * the process stays alive.
 * @param entry the worker's file; tests start one of their own
 */
export function startPacker(entry: URL = PACKER): PackerHandle {
  return handlePacker((died) => {
    // The worker loads TypeScript by itself, so it takes over no loader of this process; and what a library prints there
    // must not mix with the answer on standard output.
    const worker = new Worker(entry, { execArgv: [], stdout: true });
    worker.stdout.pipe(process.stderr, { end: false });
    worker.on('error', (error) => died(`the packer died: ${error.message}`));
    worker.on('messageerror', () => died('the packer sent what cannot be read'));
    worker.on('exit', (code) => died(`the packer died: its thread ended with ${code}`));
    return { endpoint: nodeEndpoint(worker), end: () => void worker.terminate() };
  });
}
