/** Makes cut lists in a worker of its own, one at a time; of several that wait only the latest is made. */
import type { CutList } from '../cutting/cut-list.ts';
import type { Quilt } from '../quilt/quilt.ts';

export type CutterReply = { readonly cutList: CutList } | { readonly error: string };

/** What is needed of a browser's worker. */
export interface CutterWorker {
  postMessage(quilt: Quilt): void;
  onmessage: ((event: MessageEvent<CutterReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Wish {
  readonly quilt: Quilt;
  readonly resolve: (cutList: CutList) => void;
  readonly reject: (error: Error) => void;
}

/**
 * @returns a function that resolves with a quilt's cut list, and rejects when it cannot be made or when a later wish has
 * taken its place in the queue
 */
export function startCutter(
  startWorker: () => CutterWorker = () =>
    new Worker(new URL('./cutter-worker.ts', import.meta.url), { type: 'module', name: 'cutter' }),
): (quilt: Quilt) => Promise<CutList> {
  let worker: CutterWorker | null = null;
  let current: Wish | null = null;
  let next: Wish | null = null;

  function settle(act: (wish: Wish) => void): void {
    const done = current;
    current = null;
    if (done !== null) {
      act(done);
    }
    if (next !== null) {
      const wish = next;
      next = null;
      begin(wish);
    }
  }

  function begin(wish: Wish): void {
    current = wish;
    worker ??= equip(startWorker());
    worker.postMessage(wish.quilt);
  }

  function equip(fresh: CutterWorker): CutterWorker {
    fresh.onmessage = ({ data }) =>
      settle((wish) => ('cutList' in data ? wish.resolve(data.cutList) : wish.reject(new Error(data.error))));
    fresh.onerror = (event) => {
      worker = null;
      settle((wish) => wish.reject(new Error(event.message || 'the worker that makes cut lists died')));
    };
    return fresh;
  }

  return (quilt) =>
    new Promise((resolve, reject) => {
      const wish = { quilt, resolve, reject };
      if (current === null) {
        begin(wish);
      } else {
        next?.reject(new Error('a newer choice took its place'));
        next = wish;
      }
    });
}

/** The same, each in its turn, where none may take another's place in the queue. */
export function oneByOne(make: (quilt: Quilt) => Promise<CutList>): (quilt: Quilt) => Promise<CutList> {
  let last: Promise<unknown> = Promise.resolve();
  return (quilt) => {
    const next = last.then(() => make(quilt));
    last = next.catch(() => {});
    return next;
  };
}
