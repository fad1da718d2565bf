/** The packer as a worker of Node; node-worker.mjs starts it. */
import { parentPort } from 'node:worker_threads';
import { exposePacker } from './door.ts';
import { nodeEndpoint } from './node-endpoint.ts';
import { Packer } from './packer.ts';

if (!parentPort) throw new Error('node-worker.ts runs as a worker only: start it through src/cli/start-packer.ts');
exposePacker(new Packer(), nodeEndpoint(parentPort));
