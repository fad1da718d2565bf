/** Shelf and bolts in one job: how many purchases are proved least, boxes and slanted blanks apart. */
import { measure, say } from './measure.ts';
import { shelfJob } from './shelf-job.ts';

export async function benchShelf(seeds: readonly number[], seconds: number): Promise<void> {
  say('seed', 'sort', 'bolts', 'pieces', 'kinds', 'cost', 'bound', 'to best', 'to proof');
  const runs: { sort: string; proved: boolean }[] = [];
  for (const seed of seeds) {
    const job = shelfJob(seed);
    const { answer, toBest, toProof } = await measure(job, seconds);
    const sort = seed % 2 === 1 ? 'boxes' : 'slanted';
    const bolts = job.cloths.filter(({ length }) => length === null).length;
    say(seed, sort, bolts, job.cloths.length - bolts, job.blanks.length, answer.cost, answer.bound, toBest, toProof);
    runs.push({ sort, proved: toProof !== null });
  }
  const proved = (some: typeof runs) => `${some.filter((run) => run.proved).length} of ${some.length}`;
  const of = (sort: string) => proved(runs.filter((run) => run.sort === sort));
  console.log(`proved: ${proved(runs)}; boxes: ${of('boxes')}; slanted: ${of('slanted')}`);
}
