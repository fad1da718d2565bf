import type { PaperReply, PaperWish } from './paper-wish.ts';

/** What is needed of a browser's worker. */
export interface PaperWorker {
  postMessage(wish: PaperWish): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<PaperReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface MadePaper {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly pages: number;
}

export interface PaperMaking {
  /** Rejects with words for a person when it cannot be made; resolves with null once cancelled. */
  readonly made: Promise<MadePaper | null>;
  cancel(): void;
}

/** Makes a PDF in a worker of its own, which ends with it, so that cancelling is at once and nothing of it stays in memory. */
export function makePaper(
  wish: PaperWish,
  onProgress: (doing: string) => void,
  start: () => PaperWorker = () =>
    new Worker(new URL('./paper-worker.ts', import.meta.url), { type: 'module', name: 'paper' }),
): PaperMaking {
  const worker = start();
  let cancel = (): void => {};
  const made = new Promise<MadePaper | null>((resolve, reject) => {
    const end = (settle: () => void): void => {
      worker.terminate();
      settle();
    };
    cancel = () => end(() => resolve(null));
    worker.onmessage = ({ data }) => {
      switch (data.kind) {
        case 'progress':
          onProgress(data.doing);
          break;
        case 'done':
          end(() => resolve({ bytes: data.bytes, pages: data.pages }));
          break;
        case 'failed':
          end(() => reject(new Error(data.why)));
      }
    };
    worker.onerror = (event) => end(() => reject(new Error(event.message || 'the worker that makes paper died')));
    worker.postMessage(wish);
  });
  return { made, cancel: () => cancel() };
}
