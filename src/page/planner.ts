/**
 * From a quilt to its plan, without a page: cut list, a queue of jobs for the packers, their answers, the tally. A newer
 * quilt supersedes an older one at any time; groups whose job is the same keep their answer or go on being planned.
 */
import type { PackerHandle } from '../../workers/door.ts';
import type { CutList } from '../cutting/cut-list.ts';
import type { LayoutAnswer, LayoutJob, Progress } from '../plan/layout-job.ts';
import type { Tally } from '../plan/tally.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { bestAnswer } from './best-answer.ts';
import type { GroupStatus, Plan, PlannerState } from './plan-state.ts';

export interface PlannerParts {
  readonly startPacker: () => PackerHandle;
  readonly makeCutList: (quilt: Quilt) => Promise<CutList>;
  readonly makeTally: (quilt: Quilt, cutList: CutList, answers: readonly LayoutAnswer[]) => Tally;
  /** How many packers work at once. Default 2. */
  readonly packers?: number;
}

interface Task {
  readonly key: string;
  readonly job: LayoutJob;
  status: GroupStatus;
  progress: Progress | null;
  answer: LayoutAnswer | null;
  error: string | null;
  /** She asked for the best so far. */
  stopping: boolean;
  /** How often a packer died over it. */
  deaths: number;
}

interface Seat {
  packer: PackerHandle | null;
  task: Task | null;
}

interface Remembered {
  readonly status: 'planned' | 'stopped';
  readonly answer: LayoutAnswer;
}

/** Answers kept for undo and for choices tried before. */
const REMEMBERED = 300;

export class Planner {
  private readonly parts: PlannerParts;
  private readonly seats: Seat[];
  private readonly listeners = new Set<(state: PlannerState) => void>();
  private readonly remembered = new Map<string, Remembered>();
  private quilt: Quilt | null = null;
  private cutList: CutList | null = null;
  /** The quilt that the cut list is of; the one wanted may be ahead of it. */
  private cutQuilt: Quilt | null = null;
  private cutting = false;
  private tasks: readonly Task[] = [];
  private lastPlan: Plan | null = null;
  private error: string | null = null;

  constructor(parts: PlannerParts) {
    this.parts = parts;
    this.seats = Array.from({ length: parts.packers ?? 2 }, () => ({ packer: null, task: null }));
  }

  get state(): PlannerState {
    return {
      quilt: this.quilt,
      cutList: this.cutList,
      groups: (this.cutList?.groups ?? []).map((group, index) => {
        const { status, progress, answer, error } = this.tasks[index]!;
        return { group, status, progress, answer, error };
      }),
      plan: this.lastPlan,
      current: this.lastPlan !== null && this.lastPlan.quilt === this.quilt,
      busy: this.cutting || this.tasks.some((task) => task.status === 'waiting' || task.status === 'planning'),
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

  private takeCutList(quilt: Quilt, cutList: CutList | null, error: string | null): void {
    if (quilt !== this.quilt) {
      return;
    }
    Object.assign(this, { cutList, cutQuilt: quilt, cutting: false, error });
    const before = new Map(this.tasks.map((task) => [task.key, task]));
    this.tasks = (cutList?.groups ?? []).map(({ job }) => {
      const key = JSON.stringify(job);
      const same = before.get(key);
      return same !== undefined && same.status !== 'failed' ? same : this.newTask(key, job);
    });
    this.dropUnwanted();
    this.refresh();
  }

  /** Ends the planning with the best that each group has; what was not begun stays unplanned until `resume`. */
  stop(): void {
    for (const task of this.tasks) {
      if (task.status === 'waiting') {
        task.status = 'stopped';
      }
    }
    for (const seat of this.seats) {
      if (seat.task !== null) {
        seat.task.stopping = true;
        seat.packer?.stop();
      }
    }
    this.refresh();
  }

  /** Takes up again what was stopped or failed. The best so far is kept until a better is found. */
  resume(): void {
    for (const task of this.tasks) {
      if (task.status === 'stopped' || task.status === 'failed') {
        Object.assign(task, { status: 'waiting', stopping: false, error: null, deaths: 0 });
      }
    }
    this.refresh();
  }

  /** Ends every packer. */
  end(): void {
    for (const seat of this.seats) {
      this.vacate(seat, 'the page is closed');
    }
  }

  private newTask(key: string, job: LayoutJob): Task {
    const { status, answer } = this.remembered.get(key) ?? { status: 'waiting', answer: null };
    return { key, job, status, progress: null, answer, error: null, stopping: false, deaths: 0 };
  }

  private dropUnwanted(): void {
    for (const seat of this.seats) {
      if (seat.task !== null && !this.tasks.includes(seat.task)) {
        this.vacate(seat, 'a newer choice is being planned');
      }
    }
  }

  /** A solve cannot be interrupted, so the packer goes with its task; the next task starts a fresh one. */
  private vacate(seat: Seat, reason: string): void {
    const packer = seat.packer;
    seat.packer = null;
    seat.task = null;
    packer?.end(reason);
  }

  /** Small jobs first: most are proved at once, and the large ones then share the cores. */
  private seatTasks(): void {
    const waiting = this.tasks.filter((task) => task.status === 'waiting').sort((a, b) => sizeOf(a) - sizeOf(b));
    for (const seat of this.seats) {
      const task = seat.task === null ? waiting.shift() : undefined;
      if (task !== undefined) {
        void this.work(seat, task);
      }
    }
  }

  private async work(seat: Seat, task: Task): Promise<void> {
    seat.task = task;
    task.status = 'planning';
    const isOurs = (): boolean => seat.task === task;
    try {
      seat.packer ??= this.parts.startPacker();
      const answer = await seat.packer.plan(task.job, (progress) => {
        if (isOurs()) {
          task.progress = progress;
          task.answer = bestAnswer(task.answer, progress.answer);
          this.refresh();
        }
      });
      if (isOurs()) {
        const best = bestAnswer(task.answer, answer) ?? answer;
        const status = task.stopping && answer.status !== 'optimal' ? 'stopped' : 'planned';
        Object.assign(task, { status, answer: best });
        this.remember(task.key, { status, answer: best });
        seat.task = null;
      }
    } catch (error) {
      if (isOurs()) {
        this.vacate(seat, 'it failed');
        task.deaths++;
        task.status = task.deaths < 2 ? 'waiting' : 'failed';
        task.error = task.deaths < 2 ? null : messageOf(error);
      }
    }
    this.refresh();
  }

  private remember(key: string, what: Remembered): void {
    this.remembered.delete(key);
    this.remembered.set(key, what);
    for (const oldest of this.remembered.keys()) {
      if (this.remembered.size <= REMEMBERED) {
        break;
      }
      this.remembered.delete(oldest);
    }
  }

  private refresh(): void {
    this.seatTasks();
    this.tellPlan();
    const state = this.state;
    for (const listener of this.listeners) {
      listener(state);
    }
  }

  /** A whole plan is told anew when an answer of it changed. */
  private tellPlan(): void {
    const { cutQuilt: quilt, cutList, tasks, lastPlan } = this;
    const answers = tasks.map((task) => task.answer);
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

const sizeOf = (task: Task): number => task.job.blanks.length * task.job.cloths.length;

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
