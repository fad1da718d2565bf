/**
 * The class that comlink exposes: start reading here. One packer plans one job at a time. The same class serves a
 * browser worker, a Node worker and, in tests, the same thread.
 */
import type { LayoutAnswer, LayoutJob, Progress } from '../src/plan/layout-job.ts';

export class Packer {
  /**
   * Plans a job and answers with the best plan found, read by the proof-reader.
   * @param job checked already (read-layout-job.ts)
   * @param onProgress called with each better plan or bound, and now and then while it works
   * @throws Error when the engine is at fault (its own plan does not pass the proof-reader): never a silent wrong plan
   */
  async plan(_job: LayoutJob, _onProgress?: (progress: Progress) => unknown): Promise<LayoutAnswer> {
    throw new Error('not built yet');
  }

  /** Ends the planning under way soon; its promise resolves with the best plan so far. */
  stop(): void {}
}
