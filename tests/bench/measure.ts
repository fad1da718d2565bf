/** One plan with a watch beside it. */
import type { LayoutAnswer, LayoutJob } from '../../src/plan/layout-job.ts';
import { readLayoutJobValue } from '../../src/plan/read-layout-job.ts';
import { Packer } from '../../workers/packer.ts';
import { checkAnswer } from '../checker/check-answer.ts';

export interface Measured {
  readonly answer: LayoutAnswer;
  /** Seconds until the first plan, until the last that cost less, and until the proof; null where nothing was proved. */
  readonly toFirst: number;
  readonly toBest: number;
  readonly toProof: number | null;
  /** Seconds until the answer, whatever it was; the checking of it not counted. */
  readonly took: number;
}

/** @throws Error when the outside checker finds something wrong with the plan: then no figure counts */
export async function measure(job: unknown, seconds: number, seed = 1): Promise<Measured> {
  const read: LayoutJob = { ...readLayoutJobValue(job), seconds, seed };
  let [least, missing, toFirst, toBest] = [Infinity, Infinity, Infinity, 0];
  const started = performance.now();
  const since = () => (performance.now() - started) / 1000;
  const answer = await new Packer().plan(read, (progress) => {
    if (!progress.answer) return;
    toFirst = Math.min(toFirst, since());
    const left = progress.answer.unplaced.reduce((sum, { count }) => sum + count, 0);
    if (left > missing || (left === missing && progress.answer.cost > least - 1e-6)) return;
    [missing, least, toBest] = [left, progress.answer.cost, since()];
  });
  const took = since();
  const wrong = checkAnswer(read, answer);
  if (wrong.length > 0) throw new Error(`the plan is not clean: ${wrong[0]}`);
  return { answer, toFirst, toBest, toProof: answer.status === 'optimal' ? took : null, took };
}

/** The benchmark jobs at hand beside the project, or a word that they are not. */
export const BESIDE = new URL('../../../shared/benchmarks/', import.meta.url);

export const say = (...cells: readonly (string | number | null)[]): void =>
  console.log(cells.map((cell) => told(cell).padStart(10)).join(' '));

const told = (cell: string | number | null): string => {
  if (cell === null) return '–';
  return typeof cell === 'number' ? String(Math.round(cell * 100) / 100) : cell;
};

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
