/**
 * Answers questions about the plan, without a page: what facing and room cost, and whether the cloth in hand will do. Each is
 * asked by her, planned beside the plan on the planner's own packers, and told as its plans come.
 */

import type { CutList } from '../cutting/cut-list.ts';
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';
import { sideBySide } from '../plan/side-by-side.ts';
import { type KnownPlan, knownPlans, takenOver } from '../plan/take-over.ts';
import type { Try } from '../plan/try-with-hand.ts';
import { willThisDo } from '../plan/will-this-do.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import { type Aside, Cancelled } from './asides.ts';
import type { Plan } from './plan-state.ts';
import type { HandAsked, PricesAsked, Questions } from './questions.ts';

export interface AskerParts {
  readonly aside: (job: LayoutJob, seconds: number) => Aside;
  /** Unlike the planner's own: of several that wait, each is made. */
  readonly makeCutList: (quilt: Quilt) => Promise<CutList>;
  /** Says what is wrong with a plan; nothing for a clean one. */
  readonly read: (job: LayoutJob, answer: LayoutAnswer) => readonly unknown[];
}

/** Seconds that one job of a question may take. */
const SECONDS = 5;

/** One question on its way. */
class Run {
  private asides: readonly Aside[] = [];
  cancelled = false;

  add(aside: Aside): Promise<LayoutAnswer> {
    this.asides = [...this.asides, aside];
    return aside.answer;
  }

  cancel(): void {
    this.cancelled = true;
    for (const aside of this.asides) {
      aside.cancel();
    }
  }
}

export class Asker {
  private readonly parts: AskerParts;
  private readonly listeners = new Set<(questions: Questions) => void>();
  /** Under way, by 'prices' or the cloth's id behind a slash. */
  private readonly runs = new Map<string, Run>();
  private told: Questions = { prices: null, hands: new Map() };

  constructor(parts: AskerParts) {
    this.parts = parts;
  }

  get questions(): Questions {
    return this.told;
  }

  subscribe(listener: (questions: Questions) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** What facing and room cost in a plan that is whole and of the quilt as it is. */
  async askPrices(plan: Plan): Promise<void> {
    const run = this.begin('prices');
    let asked: PricesAsked = { quilt: plan.quilt, status: 'working', error: null, versions: new Map() };
    const tell = (news: Partial<PricesAsked>): void => {
      asked = { ...asked, ...news };
      this.tell({ ...this.told, prices: asked });
    };
    tell({});
    await this.carry('prices', run, tell, () =>
      sideBySide(plan, { ...this.answerer(run), read: this.parts.read }, (version) =>
        run.cancelled ? undefined : tell({ versions: new Map(asked.versions).set(version.kind, version) }),
      ),
    );
  }

  /** @throws RangeError in words where it cannot be asked */
  async askHand(quilt: Quilt, cloth: string, have: Length): Promise<void> {
    const run = this.begin(keyOf(cloth));
    let asked: HandAsked = { quilt, cloth, have, status: 'working', error: null, open: [[]], tries: [] };
    const tell = (news: Partial<HandAsked>): void => {
      asked = { ...asked, ...news };
      this.tell({ ...this.told, hands: new Map(this.told.hands).set(cloth, asked) });
    };
    tell({});
    const listener = {
      onAsk: (changes: HandAsked['open']) => (run.cancelled ? undefined : tell({ open: changes })),
      onMoot: (changes: HandAsked['open'][number]) =>
        run.cancelled ? undefined : tell({ open: asked.open.filter((one) => one !== changes) }),
      onTry: (found: Try) =>
        run.cancelled
          ? undefined
          : tell({ open: asked.open.filter((one) => one !== found.changes), tries: [...asked.tries, found] }),
    };
    await this.carry(keyOf(cloth), run, tell, async () => {
      const { tries } = await willThisDo({ quilt, cloth, have }, this.answerer(run), listener);
      tell({ tries });
    });
  }

  /** Ends a question; what was found so far stays. @param about a cloth's id, or null for the prices */
  stop(about: string | null): void {
    this.runs.get(about === null ? 'prices' : keyOf(about))?.cancel();
  }

  /** Ends every question: they were about a quilt that is another now. */
  stopAll(): void {
    for (const run of this.runs.values()) {
      run.cancel();
    }
  }

  /** The plans that are known already for the quilt that takes a try over, each read. */
  async takeOver({ quilt, cloth, have }: HandAsked, found: Try): Promise<readonly KnownPlan[]> {
    const cutList = await this.parts.makeCutList(takenOver(quilt, cloth, have, found.changes));
    return knownPlans(cutList, found, cloth).filter(({ job, answer }) => this.parts.read(job, answer).length === 0);
  }

  private begin(key: string): Run {
    this.runs.get(key)?.cancel();
    const run = new Run();
    this.runs.set(key, run);
    return run;
  }

  private answerer(run: Run) {
    return {
      plan: async (job: LayoutJob): Promise<LayoutAnswer> => {
        if (run.cancelled) {
          throw new Cancelled('the question was taken back');
        }
        return run.add(this.parts.aside(job, SECONDS));
      },
      cut: (quilt: Quilt): Promise<CutList> => {
        if (run.cancelled) {
          throw new Cancelled('the question was taken back');
        }
        return this.parts.makeCutList(quilt);
      },
    };
  }

  /** Carries a question through; a newer one about the same leaves nothing of it to tell. */
  private async carry(
    key: string,
    run: Run,
    tell: (news: { readonly status: HandAsked['status']; readonly error?: string; readonly open?: [] }) => void,
    ask: () => Promise<unknown>,
  ): Promise<void> {
    try {
      await ask();
      if (this.runs.get(key) === run) {
        tell({ status: run.cancelled ? 'stopped' : 'answered' });
      }
    } catch (error) {
      const isOurs = this.runs.get(key) === run;
      if (isOurs && run.cancelled) {
        tell({ status: 'stopped' });
      } else if (isOurs) {
        run.cancel();
        tell({ status: 'failed', error: error instanceof Error ? error.message : String(error) });
      }
    } finally {
      if (this.runs.get(key) === run) {
        this.runs.delete(key);
      }
    }
  }

  private tell(questions: Questions): void {
    this.told = questions;
    for (const listener of this.listeners) {
      listener(questions);
    }
  }
}

const keyOf = (cloth: string): string => `/${cloth}`;
