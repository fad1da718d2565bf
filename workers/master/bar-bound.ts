/**
 * A bound for bolts that may be cut along their length. A line right across the cloth meets blanks side by side, whichever way
 * the strips run, so that at every place what lies across fits the width; how much length each such set takes is a linear
 * programme (the bar relaxation of strip packing: Scheithauer 1999). Blanks that slant may share places with their neighbours:
 * of them only the area counts.
 */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Solver } from '../programme/glpk.ts';
import type { ProgrammeColumn } from '../programme/programme.ts';
import type { Family } from '../strips/family.ts';
import { bestBounded } from './bounded-slots.ts';
import type { Breath } from './generate.ts';
import { isBolt } from './strip-master.ts';

/** A blank as it lies on a cloth: how far across, how far along; a slanted one has only its area. */
interface Lie {
  readonly blank: number;
  readonly across: number;
  readonly along: number;
  readonly area: number;
  readonly boxed: boolean;
}

/** What lies across a cloth at one place: by blank, how many of it a length of 1 holds. */
interface Bar {
  readonly cloth: number;
  readonly gives: ReadonlyMap<number, number>;
}

const MOST_ROUNDS = 100;
const AMISS = 1e-9;

/** A bound on the cost of lengths, squaring and whole steps not counted; 0 where nothing is found in time. */
export async function barBound(
  solver: Solver,
  job: LayoutJob,
  families: readonly Family[],
  demand: Int32Array,
  breath: Breath,
): Promise<number> {
  const lies = job.cloths.map((_, cloth) => liesOn(families.filter((f) => f.clothIndex === cloth)));
  const wanted = [...demand.keys()].filter((b) => demand[b]! > 0);
  const bars: Bar[] = lies.flatMap((own, cloth) =>
    own.map((lie) => ({ cloth, gives: new Map([[lie.blank, rate(lie)]]) })),
  );
  const rates = job.cloths.map((c) => (isBolt(c) ? (c.cost ?? 1) : (c.cost ?? c.length!) / c.length!));
  const room = job.cloths.map((c) =>
    isBolt(c) ? Infinity : (c.count === undefined ? 1 : (c.count ?? Infinity)) * c.length!,
  );
  let bound = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const columns: ProgrammeColumn[] = bars.map((bar) => ({
      cost: rates[bar.cloth]!,
      lower: 0,
      upper: Infinity,
      integer: false,
    }));
    const limited = [...room.keys()].filter((c) => room[c]! < Infinity);
    const result = solver.linear({
      columns,
      rows: [
        ...wanted.map((b) => ({
          lower: demand[b]!,
          upper: Infinity,
          entries: bars.flatMap((bar, i) => (bar.gives.has(b) ? [[i, bar.gives.get(b)!] as const] : [])),
        })),
        ...limited.map((c) => ({
          lower: -Infinity,
          upper: room[c]!,
          entries: bars.flatMap((bar, i) => (bar.cloth === c ? [[i, 1] as const] : [])),
        })),
      ],
    });
    if (result.status !== 'optimal') return bound;
    const values = new Float64Array(demand.length);
    wanted.forEach((b, i) => {
      values[b] = Math.max(0, result.duals[i]!);
    });
    // Prices scaled down until every bolt can pay; pieces charge what they are worth beyond their cost as rent.
    const income = wanted.reduce((sum, b) => sum + demand[b]! * values[b]!, 0);
    const best = lies.map((own, cloth) => bestBar(own, job.cloths[cloth]!.width, values, demand));
    const scale = best.reduce(
      (least, bar, c) => (room[c] === Infinity && bar.value > 0 ? Math.min(least, rates[c]! / bar.value) : least),
      1,
    );
    const rent = best.reduce(
      (sum, bar, c) => (room[c]! < Infinity ? sum + room[c]! * Math.max(0, scale * bar.value - rates[c]!) : sum),
      0,
    );
    bound = Math.max(bound, scale * income - rent);
    let added = false;
    best.forEach((bar, cloth) => {
      const at = limited.indexOf(cloth);
      const price = rates[cloth]! + (at < 0 ? 0 : Math.max(0, -result.duals[wanted.length + at]!));
      if (bar.value <= price + AMISS * (1 + price)) return;
      bars.push({ cloth, gives: bar.gives });
      added = true;
    });
    if (!added || !(await breath())) return bound;
  }
  return bound;
}

/** How many of it a length of 1 holds where it lies all along. */
const rate = (lie: Lie): number => (lie.boxed ? 1 / lie.along : lie.across / lie.area);

function liesOn(families: readonly Family[]): readonly Lie[] {
  const lies: Lie[] = [];
  for (const family of families) {
    const boxedAll = family.slopes.length === 1;
    for (const v of family.variants) {
      const [across, along] = family.along ? [v.height, v.width] : [v.width, v.height];
      const boxed = boxedAll && Math.abs(v.area - v.width * v.height) < 1e-9 * (1 + v.area);
      if (lies.some((l) => l.blank === v.blank && l.across === across && l.along === along && l.boxed === boxed))
        continue;
      lies.push({ blank: v.blank, across, along, area: v.area, boxed });
    }
  }
  return lies;
}

/**
 * The set worth most that fits across: boxes by number, of each no more than are wanted, since a line meets each once; and for the
 * rest of the width as much of a slanted one as goes in.
 */
function bestBar(
  lies: readonly Lie[],
  width: number,
  values: Float64Array,
  demand: Int32Array,
): { value: number; gives: Map<number, number> } {
  const fluid = lies
    .filter((l) => !l.boxed)
    .map((l) => ({ blank: l.blank, area: l.area, each: values[l.blank]! / l.area }))
    .sort((a, b) => b.each - a.each)[0];
  const each = fluid?.each ?? 0;
  const boxes = lies.filter((l) => l.boxed);
  const best = bestBounded(
    boxes.map((l) => ({
      size: l.across,
      value: values[l.blank]! / l.along - each * l.across,
      most: demand[l.blank]!,
    })),
    width,
  );
  const gives = new Map<number, number>();
  let left = width;
  best.counts.forEach((n, i) => {
    const lie = boxes[i]!;
    if (n === 0) return;
    gives.set(lie.blank, (gives.get(lie.blank) ?? 0) + n / lie.along);
    left -= n * lie.across;
  });
  if (fluid && left > 0) gives.set(fluid.blank, (gives.get(fluid.blank) ?? 0) + left / fluid.area);
  return { value: each * width + best.value, gives };
}
