/** A packer that does as the id of the job's first cloth says, to test the way to and from a worker. */
import type { LayoutAnswer, LayoutJob, Progress } from '../../src/plan/layout-job.ts';
import type { Packing } from '../../workers/door.ts';

export type Behaviour = 'answers' | 'prints' | 'waits' | 'throws' | 'dies' | 'blocks';

export const jobThat = (behaviour: Behaviour, seconds = 10): LayoutJob => ({
  method: 'strips',
  seconds,
  cloths: [{ id: behaviour, width: 1 }],
  blanks: [],
});

export const answerOf = (boundFrom: string): LayoutAnswer => ({
  status: 'optimal',
  cost: 0,
  bound: 0,
  boundFrom,
  seconds: 0,
  layouts: [],
  unplaced: [],
});

export class FakePacker implements Packing {
  private finish: () => void = () => {};

  /** @param die ends the thread that this runs in, as a fault deep in a library would */
  constructor(private readonly die: () => void) {}

  async plan(job: LayoutJob, onProgress?: (progress: Progress) => unknown): Promise<LayoutAnswer> {
    const tell = (doing: string) => onProgress?.({ seconds: 0, doing, bound: null, answer: null });
    const stopped = new Promise<void>((resolve) => {
      this.finish = resolve;
    });
    tell('begun');
    switch (job.cloths[0]?.id as Behaviour) {
      case 'answers':
        tell('half done');
        return answerOf('done');
      case 'prints':
        console.log('what a library prints');
        return answerOf('done');
      case 'waits':
        await stopped;
        return answerOf('stopped');
      case 'throws':
        throw new RangeError('the plan does not pass');
      case 'dies':
        setTimeout(this.die, 20);
        return new Promise(() => {});
      case 'blocks':
        // Time for what was told to leave, then no more of anything.
        await new Promise((resolve) => setTimeout(resolve, 20));
        for (;;);
    }
  }

  stop(): void {
    this.finish();
  }
}
