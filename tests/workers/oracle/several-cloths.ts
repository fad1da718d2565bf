/**
 * Small seeded jobs with several bolts and pieces, of boxes or of slanted blanks, some of which may not be cut from every cloth;
 * and the least that they can cost, by trying every way to share the blanks out among bolts, pieces and strips.
 */
import type { JobCloth, LayoutJob } from '../../../src/plan/layout-job.ts';
import { rectangle } from '../../outside/engine.ts';
import { type Draw, numbers, pickFrom, vectors } from '../numbers.ts';
import { leastLengths, priceOf } from './least-length.ts';
import { listedSlants, lowestListed } from './listed-rows.ts';
import { slantedOutline, stripHeights } from './slanted-job.ts';
import { type Kind, waysToLie } from './slanted-rows.ts';

export interface SeveralCloths {
  readonly kinds: readonly Kind[];
  readonly ruler?: number;
  readonly cloths: readonly JobCloth[];
  /** By kind, the cloths that it may be cut from. */
  readonly from: readonly (readonly string[])[];
}

export function severalCloths(seed: number): SeveralCloths {
  const draw = numbers(seed + 7000);
  const slanted = draw(0, 1) === 1;
  const ruler = pickFrom(draw, [undefined, 0.5, 1]);
  const kinds: Kind[] = [];
  let left = slanted ? 5 : 8;
  for (let n = draw(1, 3); n > 0 && left > 0; n--) {
    const demand = Math.min(left, draw(1, 4));
    left -= demand;
    kinds.push(slanted ? slantedKind(draw, demand) : boxKind(draw, demand));
  }
  const widest = Math.max(...waysToLie(kinds).map((lying) => lying.width));
  // The first bolt takes every blank, so that nothing is left unplaced.
  const cloths = [
    bolt(draw, 'bolt0', widest),
    ...(draw(0, 1) === 0 ? [bolt(draw, 'bolt1', 0)] : []),
    ...Array.from({ length: draw(0, 2) }, (_, i) => piece(draw, `piece${i}`)),
  ];
  const others = cloths.slice(1).map((cloth) => cloth.id);
  const from = kinds.map(() => ['bolt0', ...others.filter(() => draw(0, 3) > 0)]);
  return { kinds, cloths, from, ...(ruler === undefined ? {} : { ruler }) };
}

const quarters = (draw: Draw, from: number, to: number): number => draw(4 * from, 4 * to) / 4;

const slantedKind = (draw: Draw, demand: number): Kind => ({
  outline: slantedOutline(draw),
  demand,
  turns: pickFrom(draw, [[0], [0, 180]]),
});

const boxKind = (draw: Draw, demand: number): Kind => ({
  outline: rectangle(quarters(draw, 1, 5), quarters(draw, 1, 5)),
  demand,
  turns: pickFrom(draw, [[0], [0, 90]]),
});

const bolt = (draw: Draw, id: string, least: number): JobCloth => ({
  id,
  width: Math.max(least, quarters(draw, 5, 10)),
  cost: pickFrom(draw, [1, 1, 0.75, 1.5]),
  ...pickFrom(draw, [{}, { step: 2.25 }, { step: 4.5 }]),
});

const piece = (draw: Draw, id: string): JobCloth => ({
  id,
  width: quarters(draw, 3, 8),
  length: quarters(draw, 3, 8),
  cost: pickFrom(draw, [0, 0, 1.5, 4]),
  count: draw(1, 2),
});

export const severalClothsJob = ({ kinds, ruler, cloths, from }: SeveralCloths): LayoutJob => ({
  method: 'strips',
  seconds: 2,
  ...(ruler === undefined ? {} : { ruler }),
  cloths,
  blanks: kinds.map(({ outline, turns, demand }, i) => ({ id: `${i}`, outline, turns, demand, cloths: from[i]! })),
});

/** The least cost over all plans with subcuts of listed slants. */
export function leastCost(job: SeveralCloths): number {
  const demand = job.kinds.map((kind) => kind.demand);
  const free = new Map([[demand.map(() => 0).join(), 0]]);
  let least: ReadonlyMap<string, number> = free;
  for (const cloth of job.cloths) {
    const costs = costsOn(job, cloth);
    for (let i = 0; i < (cloth.length == null ? 1 : (cloth.count ?? 1)); i++) least = withCloth(demand, least, costs);
  }
  return least.get(demand.join())!;
}

/** The least cost of every part of the demand when it may be shared with one more bolt or piece. */
function withCloth(demand: readonly number[], before: ReadonlyMap<string, number>, costs: ReadonlyMap<string, number>) {
  const least = new Map<string, number>();
  for (const counts of vectors(demand)) {
    let best = Infinity;
    for (const held of vectors(counts)) {
      const rest = before.get(counts.map((n, i) => n - held[i]!).join()) ?? Infinity;
      best = Math.min(best, rest + costs.get(held.join())!);
    }
    least.set(counts.join(), best);
  }
  return least;
}

/** What it costs to cut so many of each kind from this one bolt or piece; Infinity where it cannot be. */
function costsOn(job: SeveralCloths, cloth: JobCloth): ReadonlyMap<string, number> {
  const demand = job.kinds.map((kind, i) => (job.from[i]!.includes(cloth.id) ? kind.demand : 0));
  // Turned blanks that this cloth is too narrow for are no way to lie, and neither are those that are not cut from it.
  const ways = waysToLie(job.kinds).filter((way) => demand[way.kind]! > 0 && way.width <= cloth.width * (1 + 1e-9));
  const heights = stripHeights(
    ways.map((way) => way.height),
    job.ruler,
  );
  const slants = listedSlants(ways);
  const asked = { width: cloth.width, ways, heights, reading: 'whole' as const };
  const lengths = leastLengths(demand, (counts) => lowestListed(asked, slants, counts));
  const cost = (length: number) => {
    if (length === 0) return 0;
    if (cloth.length == null) return cloth.cost! * priceOf(length, cloth.step);
    return length <= cloth.length * (1 + 1e-9) ? cloth.cost! : Infinity;
  };
  return new Map(
    [...vectors(job.kinds.map((kind) => kind.demand))].map((counts) => {
      const found = lengths.get(counts.join());
      return [counts.join(), found ? cost(found.length) : Infinity];
    }),
  );
}
