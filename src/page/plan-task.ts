/** One group's job on its way through the planner. The planner and its seats are the only ones that change it. */
import type { LayoutAnswer, LayoutJob, Progress } from '../plan/layout-job.ts';
import { bestAnswer } from './best-answer.ts';
import type { GroupStatus } from './plan-state.ts';

export interface PlanTask {
  /** The job as text: two groups with the same job are one task. */
  readonly key: string;
  readonly job: LayoutJob;
  status: GroupStatus;
  progress: Progress | null;
  /** When its present turn began, in milliseconds of `performance.now()`. */
  since: number;
  answer: LayoutAnswer | null;
  error: string | null;
  /** She asked for the best so far. */
  stopping: boolean;
  /** Whether it had its first, short turn. */
  looked: boolean;
  /** How often a packer died over it. */
  deaths: number;
}

/** Seconds of a job's first turn: enough for a first plan of each group, and for the proof of most. */
const FIRST_LOOK = 0.3;

export function newTask(key: string, job: LayoutJob): PlanTask {
  const common = { progress: null, since: 0, answer: null, error: null, stopping: false, looked: false, deaths: 0 };
  return { key, job, status: 'waiting', ...common };
}

/** The job as it is given to a packer in the task's next turn. */
export function nextTurn({ job, looked }: PlanTask): LayoutJob {
  return looked ? job : { ...job, seconds: Math.min(FIRST_LOOK, secondsOf(job)) };
}

/** What a packer's turn came to: the task is done, or has its long turn before it. */
export function endTurn(task: PlanTask, answer: LayoutAnswer): void {
  task.answer = bestAnswer(task.answer, answer) ?? answer;
  if (task.answer.status === 'optimal') {
    task.status = 'planned';
  } else if (task.stopping) {
    task.status = 'stopped';
  } else if (!task.looked && secondsOf(task.job) > FIRST_LOOK) {
    task.looked = true;
    task.status = 'waiting';
  } else {
    task.status = 'planned';
  }
}

/** A packer that dies over a task once may have been unlucky; twice, and the task is at fault. */
export function failTurn(task: PlanTask, why: string): void {
  task.deaths++;
  task.status = task.deaths < 2 ? 'waiting' : 'failed';
  task.error = task.deaths < 2 ? null : why;
}

/** Those without a first look before those with, so that a whole plan is there soon; small jobs before large ones. */
export function inTurn(tasks: readonly PlanTask[]): readonly PlanTask[] {
  const order = (task: PlanTask): number =>
    task.job.blanks.length * task.job.cloths.length + (task.looked ? Number.MAX_SAFE_INTEGER / 2 : 0);
  return tasks.filter((task) => task.status === 'waiting').sort((a, b) => order(a) - order(b));
}

const secondsOf = (job: LayoutJob): number => job.seconds ?? 10;
