/** A page that has packers in workers, started as the real page starts them, and nothing to see: tests call it from outside. */
import { startPacker } from '../../../src/page/start-packer.ts';
import type { LayoutAnswer, LayoutJob, Progress } from '../../../src/plan/layout-job.ts';
import type { PackerHandle } from '../../../workers/door.ts';

/** What to do to a packer in the middle of its plan. */
export interface Meanwhile {
  readonly after: number;
  readonly how: 'stop' | 'end';
}

export interface Outcome {
  readonly answer: LayoutAnswer | null;
  /** The word of a plan that was not answered. */
  readonly error: string | null;
  /** The last plan that it told of before. */
  readonly last: LayoutAnswer | null;
  /** Milliseconds from the interference to the end. */
  readonly endedAfter: number | null;
}

export interface PackerPage {
  /** Plans with one packer that is kept, also over its own death. @param meanwhile milliseconds from now, and what then */
  plan(job: LayoutJob, meanwhile?: Meanwhile): Promise<Outcome>;
}

const packer: PackerHandle = startPacker();

const page: PackerPage = {
  async plan(job, meanwhile) {
    let last: LayoutAnswer | null = null;
    let interfered: number | null = null;
    const onProgress = (progress: Progress) => {
      last = progress.answer ?? last;
    };
    const planning = packer.plan(job, onProgress);
    if (meanwhile)
      setTimeout(() => {
        interfered = performance.now();
        if (meanwhile.how === 'stop') packer.stop();
        else packer.end('ended in the middle');
      }, meanwhile.after);
    const done = (answer: LayoutAnswer | null, error: string | null): Outcome => ({
      answer,
      error,
      last,
      endedAfter: interfered === null ? null : performance.now() - interfered,
    });
    return planning.then(
      (answer) => done(answer, null),
      (error: Error) => done(null, error.message),
    );
  },
};

Object.assign(window, { packerPage: page });
