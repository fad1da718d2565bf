/** Seeded jobs of bolts and shelf pieces: two to four cloths, two to eight kinds; odd seeds boxes, even ones slanted blanks. */
import type { JobBlank, JobCloth, LayoutJob, Turns } from '../../src/plan/layout-job.ts';
import type { Polygon } from '../../src/shape/point.ts';
import { randomFrom } from '../../workers/master/plan-strips.ts';

export function shelfJob(seed: number): LayoutJob {
  const random = randomFrom(seed * 7919);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const eighth = (v: number) => Math.round(v * 8) / 8;
  const step = pick([4.5, 9]);
  const priced = random() < 0.4;
  const bolt = (id: string): JobCloth => ({
    id,
    width: pick([40, 41, 42, 43, 44]),
    length: null,
    step,
    cost: priced ? pick([0.3, 0.35, 0.4]) : 1,
    ...(random() < 0.5 ? { squaring: 0.5 } : {}),
  });
  // Fat quarters, squares sold ready, a remnant.
  const piece = (id: string): JobCloth => ({
    id,
    ...pick([
      { width: 21, length: 18, count: pick([1, 2, 3]) },
      { width: 10, length: 10, count: pick([2, 4]) },
      { width: eighth(8 + random() * 20), length: eighth(6 + random() * 20), count: 1 },
    ]),
    cost: 0,
    firstCut: 'either',
  });
  const cloths = [bolt('bolt0')];
  for (let more = 1 + Math.floor(random() * 3), i = 1; i <= more; i++)
    cloths.push(random() < 0.4 ? bolt(`bolt${i}`) : piece(`piece${i}`));
  const slanted = seed % 2 === 0;
  const isBolt = (id: string) => id.startsWith('bolt');
  const kinds = 2 + Math.floor(random() * 7);
  const blanks = Array.from({ length: kinds }, (_, i): JobBlank => {
    const h = eighth(1.5 + random() * 5);
    const b = eighth(1.25 + random() * 4);
    const a = eighth(0.5 + random() * b * 0.7);
    const line = (...xs: readonly number[]): Polygon => xs.map((x, k): [number, number] => [x, k < 2 ? 0 : h]);
    const box = line(0, b, b, 0);
    const outline = slanted ? pick([line(0, b, (b + a) / 2, (b - a) / 2), line(0, b, b / 2), box]) : box;
    const turns = slanted
      ? pick<Turns>([[0], [0, 180], [{ centre: 0, within: 5 }], [0, 180]])
      : pick<Turns>([[0], [0, 90], [0, 90]]);
    const demand = pick([4, 8, 12, 16, 20, 24, 32]);
    const some = cloths.filter(() => random() < 0.6).map(({ id }) => id);
    const from = some.some(isBolt) ? some : [...some, pick(cloths.filter(({ id }) => isBolt(id))).id];
    return { id: `k${i}`, outline, demand, turns, ...(random() < 0.5 ? {} : { cloths: from }) };
  });
  return { method: 'strips', stages: 2, ruler: 0.125, seed: 1, cloths, blanks };
}
