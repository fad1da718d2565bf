/** Whether the cloth she has in hand will do; and if it is short, which of the plans that ask for less would fit. */
import { lengthIn } from '../quilt/measure.ts';
import type { Length, Quilt } from '../quilt/quilt.ts';
import type { Answerer } from './answerer.ts';
import { allTogether, asksNoMore, type Change, choices, lessAsked, otherCloths, rolesOf } from './give-up.ts';
import type { LayoutAnswer, LayoutJob } from './layout-job.ts';
import { type Asked, askedKey, askFor, judged, type Try } from './try-with-hand.ts';

/** What she asks. */
export interface Question {
  readonly quilt: Quilt;
  readonly cloth: string;
  /** In hand at the cloth's whole width, as bought and unwashed; bare numbers in the quilt's unit. */
  readonly have: Length;
}

export interface WillItDo {
  readonly cloth: string;
  readonly have: Length;
  /** The quilt as wanted first; then each change alone; then, where none of those fits, several together. */
  readonly tries: readonly Try[];
  /** The first that fits. */
  readonly suffices: Try | null;
}

/** Told what is being tried, then each plan as it comes. */
export interface Listener {
  readonly onAsk?: (changes: readonly (readonly Change[])[]) => void;
  readonly onTry?: (found: Try) => void;
  /** A plan that says nothing of its own: another cloth beside the one in hand that then does all of it. */
  readonly onMoot?: (changes: readonly Change[]) => void;
}

const fits = ({ verdict }: Try): boolean => verdict === 'fits';

/**
 * Plans the quilt's cloth from what she has of it and, where that is short, with less asked for: each change alone, and
 * another of her cloths in a role of it. Only where none of that is enough are changes made together: first all of them, for
 * if that does not fit nothing between does; then as few as are enough. Of a cloth with a single role another in its stead
 * leaves nothing of what is in hand in use, so that is told but does not end the search. A change that makes no difference to
 * what is cut is not tried. Only the groups of cloths concerned are planned.
 * @throws RangeError where the quilt has no such cloth, the scheme cuts nothing from it, or the length is not above zero;
 * and whatever `plan` rejects with
 */
export async function willThisDo(question: Question, by: Answerer, listener: Listener = {}): Promise<WillItDo> {
  const { quilt, cloth, have } = question;
  const fault = questionFault(question);
  if (fault !== null) {
    throw new RangeError(fault);
  }
  const search = new Search(question, by, listener);
  const wanted = await search.ask([]);
  checkAsked(question, wanted);
  const tries = [...(await search.attempt([wanted]))];
  const done = (): WillItDo => ({ cloth, have, tries, suffices: tries.find(fits) ?? null });
  if (tries.some(fits)) {
    return done();
  }
  const less = await search.askNew(lessAsked(quilt, cloth).map((change) => [change]));
  const others = await search.askNew(otherCloths(quilt, cloth).map((change) => [change]));
  const single = await search.attempt([...less, ...others]);
  tries.push(...single);
  const several = rolesOf(quilt, cloth).length > 1;
  const ends = (each: Try) => fits(each) && (several || each.changes.every((change) => change.kind !== 'cloth'));
  if (single.some(ends)) {
    return done();
  }
  const alone = less.flatMap(({ changes }) => changes);
  const all = allTogether(alone);
  const [together] = await search.attempt(all.length > 1 ? await search.askNew([all]) : []);
  if (together !== undefined && fits(together)) {
    for (let size = 2; size <= all.length && !tries.slice(1 + single.length).some(fits); size++) {
      tries.push(...(await search.attempt(await search.askNew(choices(alone, size)))));
    }
  } else if (several) {
    const both = others.flatMap(({ changes }) => (all.length === 0 ? [] : [[...all, ...changes]]));
    tries.push(...(await search.attempt(await search.askNew(both))));
  }
  tries.push(...(together === undefined ? [] : [together]));
  return done();
}

/** What was asked for already, and what came of it. */
class Search {
  private readonly question: Question;
  private readonly by: Answerer;
  private readonly listener: Listener;
  private readonly known = new Set<string>();
  private readonly planned = new Map<string, Promise<LayoutAnswer>>();

  constructor(question: Question, by: Answerer, listener: Listener) {
    this.question = question;
    this.by = by;
    this.listener = listener;
  }

  ask(changes: readonly Change[]): Promise<Asked> {
    const { quilt, cloth, have } = this.question;
    return askFor(quilt, cloth, have, changes, this.by.cut);
  }

  /** Those that cut anything else than what was asked before, and leave nothing out. */
  async askNew(all: readonly (readonly Change[])[]): Promise<readonly Asked[]> {
    const fresh: Asked[] = [];
    for (const changes of all) {
      const asked = await this.ask(changes);
      if (this.isNew(asked) && !leavesOut(asked)) {
        fresh.push(asked);
      }
    }
    return fresh;
  }

  async attempt(all: readonly Asked[]): Promise<readonly Try[]> {
    this.listener.onAsk?.(all.map(({ changes }) => changes));
    const found = await Promise.all(
      all.map(async (asked): Promise<readonly Try[]> => {
        this.isNew(asked);
        const answers = await Promise.all(asked.cutList.groups.map(({ job }) => this.planOnce(job)));
        const one = judged(asked, this.question.cloth, this.question.have, answers);
        if (isMoot(one)) {
          this.listener.onMoot?.(one.changes);
          return [];
        }
        this.listener.onTry?.(one);
        return [one];
      }),
    );
    return found.flat();
  }

  /** Whichever cloth takes a role over, the rest of the short one is the same job. */
  private planOnce(job: LayoutJob): Promise<LayoutAnswer> {
    const key = JSON.stringify(job);
    const answer = this.planned.get(key) ?? this.by.plan(job);
    this.planned.set(key, answer);
    return answer;
  }

  private isNew(asked: Asked): boolean {
    const before = this.known.size;
    return this.known.add(askedKey(asked)).size > before;
  }
}

/** Another cloth beside the one in hand that leaves it unused is that cloth in its stead, which is tried as well. */
const isMoot = ({ changes, takes }: Try): boolean =>
  takes < 1e-9 && changes.some((change) => change.kind === 'cloth' && change.beside);

/** Another cloth may be too narrow for a blank, or have a print that cannot face as its role asks. */
const leavesOut = ({ changes, cutList }: Asked): boolean =>
  changes.some((change) => change.kind === 'cloth') && cutList.problems.some(({ kind }) => kind === 'error');

function checkAsked({ quilt, cloth }: Question, { cutList }: Asked): void {
  if (!cutList.groups.some((group) => group.cloths.includes(cloth))) {
    const name = quilt.cloths.find(({ id }) => id === cloth)?.name ?? cloth;
    throw new RangeError(`Nothing is cut from the cloth “${name}” in this scheme.`);
  }
}

/**
 * What is wrong with a question before anything is planned.
 * @returns null where it can be asked
 */
export function questionFault({ quilt, cloth, have }: Question): string | null {
  if (!quilt.cloths.some((each) => each.id === cloth)) {
    const ids = quilt.cloths.map((each) => `“${each.id}”`).join(', ');
    return `The quilt has no cloth “${cloth}”; its cloths are ${ids}.`;
  }
  return lengthIn(quilt.unit, have) > 0 ? null : `A length in hand must be above zero; found ${JSON.stringify(have)}.`;
}

/**
 * The least of the cloth that any plan takes which serves for what a try asks: a plan found with more asked for does.
 * A search that fails to fit looks no further, so that a later try's own plan may be the longer one.
 */
export function leastTaken(tries: readonly Try[], wanted: Try): number {
  return Math.min(...tries.filter((each) => each === wanted || asksMore(each, wanted)).map((each) => each.takes));
}

function asksMore(a: Try, b: Try): boolean {
  const placed = a.answers.every(({ unplaced }) => unplaced.length === 0);
  return placed && a.changes.every((change) => b.changes.some((other) => asksNoMore(other, change, b.quilt)));
}
