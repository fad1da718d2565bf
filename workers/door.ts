/** The one door to comlink. */
import type { LayoutAnswer, LayoutJob, Progress } from '../src/plan/layout-job.ts';

/** A packer that lives in a worker, as seen from the page or the command line. */
export interface PackerHandle {
  /** Resolves with the best plan; rejects when the worker dies or `end` is called meanwhile. */
  plan(job: LayoutJob, onProgress?: (progress: Progress) => void): Promise<LayoutAnswer>;
  /** Asks it to finish with the best so far. */
  stop(): void;
  /** Ends the worker; a pending plan rejects with the reason. */
  end(reason?: string): void;
}
