/**
 * From a quilt to its plan, without a page: cut list, a queue of jobs for the packers, their answers, the tally. A newer
 * quilt supersedes an older one at any time; groups whose job is the same keep their answer or go on being planned.
 */
import type { PackerHandle } from '../../workers/door.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import type { CutList } from '../cutting/cut-list.ts';
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';
import type { Tally } from '../plan/tally.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { type Aside, Asides } from './asides.ts';
import { FirstTasks } from './first-tasks.ts';
import { PackerSeats } from './packer-seats.ts';
import type { GroupState, Plan, PlannerState } from './plan-state.ts';
import { newTask, type PlanTask } from './plan-task.ts';

export interface PlannerParts {
  readonly startPacker: () => PackerHandle;
  readonly makeCutList: (quilt: Quilt) => Promise<CutList>;
  readonly makeTally: (quilt: Quilt, cutList: CutList, answers: readonly LayoutAnswer[]) => Tally;
  /** How many packers work at once. Default 2. */
  readonly packers?: number;
  /** How many milliseconds a packer that is asked to stop may go on before it is ended. Default 1500. */
  readonly patience?: number;
}

/** Tasks kept for undo and for choices tried before. */
const REMEMBERED = 300;

export class Planner {
  private readonly parts: PlannerParts;
  private readonly seats: PackerSeats;
  private readonly listeners = new Set<(state: PlannerState) => void>();
  /** Every task that came to an end, latest last. */
  private readonly remembered = new Map<string, PlanTask>();
  private quilt: Quilt | null = null;
  private cutList: CutList | null = null;
  /** The quilt that the cut list is of; the one wanted may be ahead of it. */
  private cutQuilt: Quilt | null = null;
  private cutting = false;
  /** One for each group. */
  private tasks: readonly PlanTask[] = [];
  /** For each group, what is planned beside it where one block is cut first. */
  private firsts: readonly (FirstTasks | null)[] = [];
  private readonly asides = new Asides();
  private lastPlan: Plan | null = null;
  private error: string | null = null;

  constructor(parts: PlannerParts) {
    this.parts = parts;
    this.seats = new PackerSeats(parts.packers ?? 2, parts.startPacker, () => this.refresh(), parts.patience ?? 1500);
  }

  get state(): PlannerState {
    return {
      quilt: this.quilt,
      cutList: this.cutList,
      groups: this.groupStates(),
      plan: this.lastPlan,
      current: this.lastPlan !== null && this.lastPlan.quilt === this.quilt,
      busy: this.cutting || this.allTasks().some((task) => task.status === 'waiting' || task.status === 'planning'),
      error: this.error,
    };
  }

  /** Calls back after every change of state until the returned function is called. */
  subscribe(listener: (state: PlannerState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Plans this quilt from now on. Until its cut list is there, what was under way goes on. */
  plan(quilt: Quilt): void {
    this.quilt = quilt;
    this.cutting = true;
    this.refresh();
    this.parts.makeCutList(quilt).then(
      (cutList) => this.takeCutList(quilt, cutList, null),
      (error) => this.takeCutList(quilt, null, messageOf(error)),
    );
  }

  /** Ends the planning with the best that each group has; what was not begun stays unplanned until `resume`. */
  stop(): void {
    for (const task of this.allTasks()) {
      if (task.status === 'waiting') {
        task.status = 'stopped';
      }
    }
    this.seats.stop(this.allTasks());
    this.refresh();
  }

  /**
   * Plans a job that is no part of the plan, on the same packers, without holding the plan up. It ends as soon as its least
   * cost is proved. A job that the planner knows already is answered at once.
   * @param seconds of wall time that it may take
   */
  aside(job: LayoutJob, seconds: number): Aside {
    const key = JSON.stringify(job);
    const known = this.allTasks().find((task) => task.key === key) ?? this.remembered.get(key);
    const aside = this.asides.begin(key, { ...job, seconds }, isDone(known) ? known : null, (task) => {
      this.seats.dropAllBut([...this.allTasks(), ...this.asides.tasks.filter((one) => one !== task)]);
      this.refresh();
    });
    this.refresh();
    return aside;
  }

  /** Remembers a clean plan for a job that may have to be planned soon: it is shown at once, and planning goes on from there. */
  know(job: LayoutJob, answer: LayoutAnswer): void {
    const key = JSON.stringify(job);
    if (!this.remembered.has(key)) {
      this.remembered.set(key, { ...newTask(key, job), answer });
    }
  }

  /** Takes up again what was stopped or failed. The best so far is kept until a better is found. */
  resume(): void {
    for (const task of this.allTasks()) {
      if (task.status === 'stopped' || task.status === 'failed') {
        Object.assign(task, { status: 'waiting', stopping: false, error: null, deaths: 0 });
      }
    }
    this.refresh();
  }

  private takeCutList(quilt: Quilt, cutList: CutList | null, error: string | null): void {
    if (quilt !== this.quilt) {
      return;
    }
    const kept = cutList === null ? null : keepGroups(this.cutList, cutList);
    Object.assign(this, { cutList: kept, cutQuilt: quilt, cutting: false, error });
    const groups = kept?.groups ?? [];
    const tasks = groups.map(({ job }) => this.taskOf(job));
    this.firsts = groups.map((group) => FirstTasks.of(quilt, group, (job) => this.taskOf(job)));
    this.tasks = tasks;
    this.askForRests();
    this.seats.dropAllBut([...this.allTasks(), ...this.asides.tasks]);
    this.refresh();
  }

  /** The task of a job that is planned or was, unless it failed; else a new one. */
  private taskOf(job: LayoutJob): PlanTask {
    const key = JSON.stringify(job);
    const same = this.allTasks().find((task) => task.key === key) ?? this.remembered.get(key);
    return same !== undefined && same.status !== 'failed' ? same : newTask(key, job);
  }

  private allTasks(): readonly PlanTask[] {
    return [...this.tasks, ...this.firsts.flatMap((first) => first?.tasks ?? [])];
  }

  private askForRests(): void {
    for (const first of this.firsts) {
      first?.advance((job) => this.taskOf(job));
    }
  }

  private groupStates(): readonly GroupState[] {
    return (this.cutList?.groups ?? []).map((group, index) => {
      const task = this.tasks[index]!;
      const first = this.firsts[index] ?? null;
      if (first !== null) {
        return first.stateOf(task, proofread);
      }
      const { status, progress, since, answer, error } = task;
      return { group, status, progress, since, answer, error };
    });
  }

  private refresh(): void {
    this.askForRests();
    this.asides.settle();
    for (const task of this.asides.tasks) {
      if (task.status === 'planning' && task.answer?.status === 'optimal') {
        this.seats.finish(task);
      }
    }
    this.seats.fill(this.allTasks(), this.asides.tasks);
    this.remember();
    this.tellPlan();
    const state = this.state;
    for (const listener of this.listeners) {
      listener(state);
    }
  }

  private remember(): void {
    for (const task of this.allTasks()) {
      if (task.status === 'planned' || task.status === 'stopped') {
        this.remembered.delete(task.key);
        this.remembered.set(task.key, task);
      }
    }
    for (const oldest of this.remembered.keys()) {
      if (this.remembered.size <= REMEMBERED) {
        break;
      }
      this.remembered.delete(oldest);
    }
  }

  /** A whole plan is told anew when an answer of it changed. */
  private tellPlan(): void {
    const { cutQuilt: quilt, cutList, lastPlan } = this;
    const answers = this.groupStates().map(({ answer }) => answer);
    if (quilt === null || cutList === null || !answers.every((answer) => answer !== null)) {
      return;
    }
    const isSame =
      lastPlan?.cutList === cutList && answers.every((answer, index) => answer === lastPlan.answers[index]);
    if (isSame) {
      return;
    }
    try {
      this.lastPlan = { quilt, cutList, answers, tally: this.parts.makeTally(quilt, cutList, answers) };
    } catch (error) {
      this.error = messageOf(error);
    }
  }
}

const isDone = (task: PlanTask | undefined): task is PlanTask => task?.status === 'planned' && task.answer !== null;

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Groups that came again unchanged keep their identity, so that nothing drawn from them is drawn anew. */
function keepGroups(old: CutList | null, fresh: CutList): CutList {
  const before = new Map(old?.groups.map((group) => [group.id, group]));
  const groups = fresh.groups.map((group) => {
    const same = before.get(group.id);
    return same !== undefined && JSON.stringify(same) === JSON.stringify(group) ? same : group;
  });
  return { ...fresh, groups };
}
