/** Jobs planned beside the plan: questions about it, that must neither hold it up nor be lost in it. */
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';
import { newTask, type PlanTask } from './plan-task.ts';

export interface Aside {
  /** Rejects when it was cancelled or when its packer failed for good. */
  readonly answer: Promise<LayoutAnswer>;
  cancel(): void;
}

/** What a question that was cancelled rejects with. */
export class Cancelled extends Error {}

interface Open {
  readonly task: PlanTask;
  readonly resolve: (answer: LayoutAnswer) => void;
  readonly reject: (error: Error) => void;
}

/** Answers kept for questions asked again. */
const REMEMBERED = 300;

export class Asides {
  private open: readonly Open[] = [];
  private readonly remembered = new Map<string, LayoutAnswer>();

  /** Those without an answer yet. */
  get tasks(): readonly PlanTask[] {
    return this.open.map(({ task }) => task);
  }

  /**
   * @param known a task of the same job that came to an end
   * @param cancelled called with the task that nobody waits for any more
   */
  begin(key: string, job: LayoutJob, known: PlanTask | null, cancelled: (task: PlanTask) => void): Aside {
    const answer = known?.answer ?? this.remembered.get(key);
    if (answer) {
      return { answer: Promise.resolve(answer), cancel: () => {} };
    }
    const task = newTask(key, job);
    const pending = new Promise<LayoutAnswer>((resolve, reject) => {
      this.open = [...this.open, { task, resolve, reject }];
    });
    const cancel = (): void => {
      const mine = this.open.find((one) => one.task === task);
      if (mine !== undefined) {
        this.open = this.open.filter((one) => one !== mine);
        mine.reject(new Cancelled('the question was taken back'));
        cancelled(task);
      }
    };
    return { answer: pending, cancel };
  }

  /** Answers those that came to an end. */
  settle(): void {
    const ended = this.open.filter(({ task }) => task.status === 'planned' || task.status === 'failed');
    if (ended.length === 0) {
      return;
    }
    this.open = this.open.filter((one) => !ended.includes(one));
    for (const { task, resolve, reject } of ended) {
      if (task.status === 'planned' && task.answer !== null) {
        this.remember(task.key, task.answer);
        resolve(task.answer);
      } else {
        reject(new Error(task.error ?? 'its packer failed'));
      }
    }
  }

  private remember(key: string, answer: LayoutAnswer): void {
    this.remembered.set(key, answer);
    const [oldest] = this.remembered.keys();
    if (this.remembered.size > REMEMBERED && oldest !== undefined) {
      this.remembered.delete(oldest);
    }
  }
}
