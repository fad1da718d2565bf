/** The planner's work on a group of which one block is cut first: the whole as without that wish, the test block, the rest. */
import type { Group } from '../cutting/cut-list.ts';
import { joinFirst } from '../plan/join-first.ts';
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';
import { type RestJob, restJob, testJob } from '../plan/test-first.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { GroupState, GroupStatus } from './plan-state.ts';
import type { PlanTask } from './plan-task.ts';

/** Gives the task of a job: one that is known already, or a new one. */
export type TaskOf = (job: LayoutJob) => PlanTask;
/** What is wrong with an answer; nothing for a clean one. */
export type Read = (job: LayoutJob, answer: LayoutAnswer) => readonly unknown[];

export class FirstTasks {
  private readonly group: Group;
  private readonly block: string;
  private readonly test: PlanTask;
  private rest: { readonly of: LayoutAnswer; readonly split: RestJob | null; readonly task: PlanTask | null } | null =
    null;
  private fault: string | null = null;
  private joined: { readonly from: readonly unknown[]; readonly answer: LayoutAnswer } | null = null;

  private constructor(group: Group, block: string, test: PlanTask) {
    this.group = group;
    this.block = block;
    this.test = test;
  }

  /** Null where no block is cut first, or the group has none of it. */
  static of(quilt: Quilt, group: Group, taskOf: TaskOf): FirstTasks | null {
    const job = testJob(quilt, group);
    return job === null ? null : new FirstTasks(group, quilt.testBlock!, taskOf(job));
  }

  get tasks(): readonly PlanTask[] {
    return [this.test, ...(this.rest?.task == null ? [] : [this.rest.task])];
  }

  /** The rest can be asked for once the test block's strips are settled. */
  advance(taskOf: TaskOf): void {
    const { answer, status } = this.test;
    const isSettled = answer !== null && (status === 'planned' || status === 'stopped');
    if (isSettled && this.rest?.of !== answer) {
      const split = answer.unplaced.length > 0 ? null : restJob(this.group.job, answer);
      this.rest = { of: answer, split, task: split === null ? null : taskOf(split.job) };
    }
  }

  /** What is shown of the group: until the rest has a plan, the whole without that wish. */
  stateOf(whole: PlanTask, read: Read): GroupState {
    const all = [whole, ...this.tasks];
    const acting = all.find(({ status }) => status === 'planning') ?? whole;
    const { progress, since } = acting;
    const answer = whole.answer === null ? null : this.answerWith(whole.answer, read);
    const error = all.find((task) => task.error !== null)?.error ?? this.fault;
    // The bound of one part is none of the whole's.
    const told = progress === null ? null : { ...progress, bound: null };
    return { group: this.group, status: statusOf(all), progress: told, since, answer, error };
  }

  private answerWith(whole: LayoutAnswer, read: Read): LayoutAnswer {
    const { rest, test } = this;
    if (test.answer === null || rest === null || (rest.task !== null && rest.task.answer === null)) {
      return whole;
    }
    const answer = rest.task?.answer ?? null;
    const from = [whole, rest.of, answer];
    if (this.joined?.from.every((each, i) => each === from[i]) !== true) {
      const { block, group } = this;
      const joined = joinFirst({ block, job: group.job, test: rest.of, rest: rest.split, answer, whole });
      const [fault] = read(group.job, joined);
      // No plan reaches a person unread: the one without that wish was read, and is shown instead.
      this.fault = fault === undefined ? null : `with the test block first: ${JSON.stringify(fault)}`;
      this.joined = { from, answer: fault === undefined ? joined : whole };
    }
    return this.joined!.answer;
  }
}

/** Under way as long as any part is; else the worst that befell one. */
function statusOf(tasks: readonly PlanTask[]): GroupStatus {
  const order: readonly GroupStatus[] = ['planning', 'waiting', 'failed', 'stopped'];
  return order.find((status) => tasks.some((task) => task.status === status)) ?? 'planned';
}
