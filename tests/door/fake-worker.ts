import { parentPort } from 'node:worker_threads';
import { exposePacker } from '../../workers/door.ts';
import { nodeEndpoint } from '../../workers/node-endpoint.ts';
import { FakePacker } from './fake-packer.ts';

exposePacker(new FakePacker(() => process.exit(3)), nodeEndpoint(parentPort!));
