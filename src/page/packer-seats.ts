import type { PackerHandle } from '../../workers/door.ts';
import { bestAnswer } from './best-answer.ts';
import { endTurn, failTurn, inTurn, nextTurn, type PlanTask } from './plan-task.ts';

interface Seat {
  packer: PackerHandle | null;
  task: PlanTask | null;
}

/** A few packers, each at one task at a time; they are kept from task to task and replaced when they die. */
export class PackerSeats {
  private readonly seats: readonly Seat[];
  private readonly startPacker: () => PackerHandle;
  private readonly changed: () => void;
  private readonly patience: number;

  /**
   * @param changed called whenever a task has come further
   * @param patience how many milliseconds a packer that is asked to stop may go on
   */
  constructor(count: number, startPacker: () => PackerHandle, changed: () => void, patience: number) {
    this.seats = Array.from({ length: count }, () => ({ packer: null, task: null }));
    this.startPacker = startPacker;
    this.changed = changed;
    this.patience = patience;
  }

  /**
   * Gives the free packers something to do. First looks at the plan come first; then questions asked aside have one packer,
   * and all of them only where the plan needs none.
   */
  fill(tasks: readonly PlanTask[], asides: readonly PlanTask[] = []): void {
    const planning = [...inTurn(tasks)];
    const asked = [...inTurn(asides)];
    for (const seat of this.seats) {
      if (seat.task === null) {
        const isAsked = this.seats.some(({ task }) => task !== null && asides.includes(task));
        const planFirst = planning[0] !== undefined && (!planning[0].looked || isAsked || asked.length === 0);
        const task = planFirst ? planning.shift() : asked.shift();
        if (task !== undefined) {
          void this.work(seat, task);
        }
      }
    }
  }

  /** Has a packer end its turn with what it has, as it would of itself a little later. */
  finish(task: PlanTask): void {
    this.seats.find((seat) => seat.task === task)?.packer?.stop();
  }

  /** Ends work on tasks that are not among these. */
  dropAllBut(tasks: readonly PlanTask[]): void {
    for (const seat of this.seats) {
      if (seat.task !== null && !tasks.includes(seat.task)) {
        this.vacate(seat, 'a newer choice is being planned');
      }
    }
  }

  /** Asks every packer at these tasks to finish with the best it has; one that is deep in a solve is ended after a while. */
  stop(tasks: readonly PlanTask[]): void {
    for (const seat of this.seats) {
      const { task } = seat;
      if (task !== null && tasks.includes(task)) {
        task.stopping = true;
        seat.packer?.stop();
        setTimeout(() => {
          if (seat.task === task && task.stopping) {
            this.vacate(seat, 'it did not stop when asked');
            task.status = 'stopped';
            this.changed();
          }
        }, this.patience);
      }
    }
  }

  private async work(seat: Seat, task: PlanTask): Promise<void> {
    seat.task = task;
    task.status = 'planning';
    task.progress = null;
    task.since = performance.now();
    const isOurs = (): boolean => seat.task === task;
    try {
      seat.packer ??= this.startPacker();
      const answer = await seat.packer.plan(nextTurn(task), (progress) => {
        if (isOurs()) {
          task.progress = progress;
          task.answer = bestAnswer(task.answer, progress.answer);
          this.changed();
        }
      });
      if (isOurs()) {
        seat.task = null;
        endTurn(task, answer);
        this.changed();
      }
    } catch (error) {
      if (isOurs()) {
        this.vacate(seat, 'it failed');
        failTurn(task, error instanceof Error ? error.message : String(error));
        this.changed();
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
}
