/** The one door to comlink: a packer that lives in a worker, and what the worker's side needs to be reached. */
import { type Endpoint, expose, proxy, type Remote, releaseProxy, wrap } from 'comlink';
import type { LayoutAnswer, LayoutJob, Progress } from '../src/plan/layout-job.ts';

export type { Endpoint } from 'comlink';

/** A packer that lives in a worker, as seen from the page or the command line. */
export interface PackerHandle {
  /** Resolves with the best plan; rejects when the worker dies or `end` is called meanwhile. */
  plan(job: LayoutJob, onProgress?: (progress: Progress) => void): Promise<LayoutAnswer>;
  /** Asks it to finish with the best so far. */
  stop(): void;
  /** Ends the worker; a pending plan rejects with the reason. */
  end(reason?: string): void;
}

/** What a worker offers: the calls of the Packer (packer.ts). */
export interface Packing {
  plan(job: LayoutJob, onProgress?: (progress: Progress) => unknown): Promise<LayoutAnswer>;
  stop(): void;
}

/** Far more than the longest step of the search takes between two looks at the clock, on a slow and busy machine. */
const GRACE = 60;
/** In milliseconds: a longer timer rings at once. */
const LONGEST_TIMER = 2 ** 31 - 1;

/** A worker just started, whatever kind it is. */
export interface StartedWorker {
  readonly endpoint: Endpoint;
  /** Ends it at once, whatever it is doing. */
  end(): void;
}

/**
 * A packer in a worker that is started at the first plan and, once it has died or was ended, again at the next. It plans
 * one job at a time: a second plan meanwhile rejects.
 * @param start starts a worker; it is to call `died` when the worker can do no more
 * @param grace seconds that a plan may be late by: a browser that is short of memory ends a worker without a word
 */
export function handlePacker(start: (died: (reason: string) => void) => StartedWorker, grace = GRACE): PackerHandle {
  let worker: { readonly started: StartedWorker; readonly packer: Remote<Packing> } | null = null;
  let pending: { readonly reject: (error: unknown) => void } | null = null;
  let watch: ReturnType<typeof setTimeout> | undefined;

  // Comlink leaves a call hanging when its other side is gone, so whoever ends the worker settles the call.
  const end = (error: unknown) => {
    clearTimeout(watch);
    worker?.started.end();
    worker = null;
    pending?.reject(error);
    pending = null;
  };

  const open = (): Remote<Packing> => {
    if (worker) return worker.packer;
    // The news that a worker ended may come when another has taken its place already.
    const started = start((reason) => worker?.started === started && end(new Error(reason)));
    worker = { started, packer: wrap<Packing>(started.endpoint) };
    return worker.packer;
  };

  return {
    plan: (job, onProgress) =>
      new Promise((resolve, reject) => {
        if (pending) throw new Error('a plan is under way already: stop it or end it first');
        const own = { reject };
        // The calls below may come late, when the plan they belong to was ended and another is under way.
        const ifPending = (act: () => void) => {
          if (pending !== own) return;
          try {
            act();
          } catch (error) {
            end(error);
          }
        };
        const listener = onProgress && proxy((progress: Progress) => ifPending(() => onProgress(progress)));
        pending = own;
        const late = () => ifPending(() => end(new Error('the packer gave no answer in its time')));
        watch = setTimeout(late, Math.min(LONGEST_TIMER, 1000 * ((job.seconds ?? 10) + grace)));
        ifPending(() => {
          open()
            .plan(job, listener)
            .then((answer) =>
              ifPending(() => {
                clearTimeout(watch);
                pending = null;
                resolve(answer);
              }),
            )
            // A packer that failed may have left its solver in pieces, so the next plan starts another.
            .catch((error) => ifPending(() => end(error)));
        });
      }),
    stop() {
      if (pending) worker?.packer.stop().catch(() => {});
    },
    end: (reason = 'the packer was ended') => end(new Error(reason)),
  };
}

/** Serves a packer to whoever holds the other end; without an endpoint, to whoever started this worker. */
export function exposePacker(packer: Packing, endpoint?: Endpoint): void {
  const served = {
    async plan(job: LayoutJob, listener?: Remote<(progress: Progress) => void>): Promise<LayoutAnswer> {
      try {
        // Progress is told and not awaited: a page that is busy must not hold up the search.
        return await packer.plan(job, listener && ((progress) => void listener(progress).catch(() => {})));
      } finally {
        // Without this the channel of every listener stays open, and keeps Node alive.
        listener?.[releaseProxy]();
      }
    },
    stop: () => packer.stop(),
  };
  expose(served, endpoint);
}
