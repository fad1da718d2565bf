/** A packer that does what the test tells it, one call at a time. */
import type { LayoutAnswer, LayoutJob, Progress } from '../../src/plan/layout-job.ts';
import type { PackerHandle } from '../../workers/door.ts';

export interface Call {
  readonly job: LayoutJob;
  readonly progress: (answer: LayoutAnswer | null, bound?: number) => void;
  readonly finish: (answer: LayoutAnswer) => void;
  readonly fail: (message: string) => void;
  stopped: boolean;
  ended: string | null;
}

export class FakePackers {
  readonly calls: Call[] = [];
  started = 0;
  /** The calls that are neither finished nor ended. */
  open: Call[] = [];

  readonly start = (): PackerHandle => {
    this.started++;
    let current: Call | null = null;
    return {
      plan: (job, onProgress) =>
        new Promise((resolve, reject) => {
          const close = (): void => {
            this.open = this.open.filter((one) => one !== call);
          };
          const tell = (progress: Progress): void => onProgress?.(progress);
          const call: Call = {
            job,
            stopped: false,
            ended: null,
            progress: (answer, bound = 0) => tell({ seconds: 1, doing: 'choosing strips', bound, answer }),
            finish: (answer) => {
              close();
              resolve(answer);
            },
            fail: (message) => {
              close();
              reject(new Error(message));
            },
          };
          current = call;
          this.calls.push(call);
          this.open.push(call);
        }),
      stop: () => {
        if (current !== null) {
          current.stopped = true;
        }
      },
      end: (reason = 'ended') => {
        if (current !== null && this.open.includes(current)) {
          current.ended = reason;
          current.fail(reason);
        }
      },
    };
  };

  openFor(cloth: string): Call {
    const call = this.open.find((one) => one.job.cloths[0]?.id === cloth);
    if (call === undefined) {
      throw new Error(`nobody is planning ${cloth}; open: ${this.open.map((one) => one.job.cloths[0]?.id)}`);
    }
    return call;
  }
}

export function answer(cost: number, status: LayoutAnswer['status'] = 'optimal', bound = cost): LayoutAnswer {
  const layouts = [{ cloth: 'x', count: 1, length: cost, placements: [] }];
  return { status, cost, bound, boundFrom: 'a test', seconds: 0, unplaced: [], layouts };
}
