/**
 * The class that comlink exposes: start reading here. One packer plans one job at a time. The same class serves a
 * browser worker, a Node worker and, in tests, the same thread.
 */
import type { LayoutAnswer, LayoutJob, Progress } from '../src/plan/layout-job.ts';
import { startClock } from './clock.ts';
import { planOneCloth } from './master/plan-one-cloth.ts';
import { planOneClothStacked } from './master/plan-one-cloth-stacked.ts';
import { planStacks } from './master/plan-stacks.ts';
import { planStrips } from './master/plan-strips.ts';
import { openSolver } from './programme/glpk.ts';
import { proofread } from './proof/proofread.ts';

export class Packer {
  private stopping = false;

  /**
   * Plans a job and answers with the best plan found, read by the proof-reader.
   * @param job checked already (read-layout-job.ts)
   * @param onProgress called with each better plan or bound, and now and then while it works
   * @throws Error when the engine is at fault (its own plan does not pass the proof-reader): never a silent wrong plan
   */
  async plan(job: LayoutJob, onProgress: (progress: Progress) => unknown = () => {}): Promise<LayoutAnswer> {
    if (job.method !== 'strips') throw new Error(`method: '${job.method}' is not built yet; use 'strips'`);
    this.stopping = false;
    const clock = startClock(job.seconds ?? 10, () => this.stopping);
    const solver = await openSolver(() => clock.left() <= 0);
    const stacked = job.stages === 3;
    const planIt = job.oneCloth?.length
      ? stacked
        ? planOneClothStacked
        : planOneCloth
      : stacked
        ? planStacks
        : planStrips;
    const answer = await planIt(job, solver, clock, (progress) => {
      if (progress.answer) this.read(job, progress.answer);
      onProgress(progress);
    });
    this.read(job, answer);
    return answer;
  }

  /** Ends the planning under way soon; its promise resolves with the best plan so far. */
  stop(): void {
    this.stopping = true;
  }

  private read(job: LayoutJob, answer: LayoutAnswer): void {
    const faults = proofread(job, answer);
    if (faults.length > 0) throw new Error(`the proof-reader refuses the plan: ${JSON.stringify(faults[0])}`);
  }
}
