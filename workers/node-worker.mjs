// Node 20 cannot start a worker written in TypeScript, so this one first loads what reads it.
import { register } from 'tsx/esm/api';

register();
await import('./node-worker.ts');
