/**
 * Of all orders in which a unit can be sewn, one for each patch to begin with: that whose seams run across the least length of
 * seams sewn before, since each crossing is a lump to be matched and pressed, and then the one nearest to the drawn numbers.
 */
import { cross, distance, dot, modulo, type Point, type Polygon, subtract } from '../shape/point.ts';
import { isInside } from '../shape/polygon.ts';
import { alongLine, isOn, lineThrough, offLine, type SeamLine, seamLine } from './seam-line.ts';
import { type Seam, stepOnto } from './sewing-step.ts';
import type { SewingUnit, SharedRun } from './sewing-unit.ts';
import { indicesOf, keyOf, removableFrom, takeOff, without } from './take-off.ts';

/** In so many sets of patches the best is looked for; in units with more, each order is taken as it is found first. */
const MOST_SETS = 1500;

/** @param known an order that can be sewn. @returns orders, the best first, no two with the same first patch */
export function ordersByStart(unit: SewingUnit, known: readonly number[]): readonly (readonly number[])[] {
  const crossings = new Crossings(unit);
  const found = bestOrders(unit, crossings) ?? firstOrders(unit, crossings, known);
  return [...found.values()]
    .sort((a, b) => (same(a.crossed, b.crossed, unit) ? compareDrawn(a.order, b.order) : a.crossed - b.crossed))
    .map(({ order }) => order);
}

interface Ranked {
  readonly order: readonly number[];
  /** Length of earlier seams that its seams run across. */
  readonly crossed: number;
}

const same = (a: number, b: number, unit: SewingUnit): boolean => Math.abs(a - b) <= unit.tolerance;

/** Which of two orders comes first by the drawn numbers: patch by patch from the first. */
function compareDrawn(a: readonly number[], b: readonly number[]): number {
  const differing = a.findIndex((index, i) => index !== b[i]);
  return differing < 0 ? 0 : a[differing]! - b[differing]!;
}

type ByStart = ReadonlyMap<number, Ranked>;

/** Over all sets that are left on some way; null where they are too many. */
function bestOrders(unit: SewingUnit, crossings: Crossings): ByStart | null {
  const known = new Map<string, ByStart>();
  const best = (there: readonly boolean[]): ByStart | null => {
    const left = indicesOf(there);
    if (left.length === 1) {
      return new Map([[left[0]!, { order: left, crossed: 0 }]]);
    }
    const key = keyOf(there);
    const before = known.get(key);
    if (before !== undefined) {
      return before;
    }
    if (known.size >= MOST_SETS) {
      return null;
    }
    const found = new Map<number, Ranked>();
    for (const last of removableFrom(unit, there)) {
      const rest = without(there, last);
      const orders = best(rest);
      if (orders === null) {
        return null;
      }
      const more = crossings.lengthOf(last, rest);
      for (const [start, { order, crossed }] of orders) {
        const each = { order: [...order, last], crossed: crossed + more };
        const other = found.get(start);
        if (other === undefined || isBetter(each, other, unit)) {
          found.set(start, each);
        }
      }
    }
    known.set(key, found);
    return found;
  };
  return best(unit.patches.map(() => true));
}

const isBetter = (a: Ranked, b: Ranked, unit: SewingUnit): boolean =>
  same(a.crossed, b.crossed, unit) ? compareDrawn(a.order, b.order) < 0 : a.crossed < b.crossed;

function firstOrders(unit: SewingUnit, crossings: Crossings, known: readonly number[]): ByStart {
  const found = new Map<number, Ranked>();
  const add = (order: readonly number[]): void => {
    const there = unit.patches.map(() => false);
    let crossed = 0;
    for (const index of order) {
      crossed += crossings.lengthOf(index, there);
      there[index] = true;
    }
    found.set(order[0]!, { order, crossed });
  };
  unit.patches.forEach((_, start) => {
    const { taken, left } = takeOff(unit, start);
    if (left.length === 1) {
      add([...left, ...[...taken].reverse()]);
    }
  });
  add(known);
  return found;
}

/** The straight lines along which patches meet, and how long the seams are that end on another. */
class Crossings {
  private readonly unit: SewingUnit;
  /** For each patch, the line of each of its runs. */
  private readonly lines: readonly (readonly number[])[];
  /** For each patch, the ends of each of its runs that lie within the unit. */
  private readonly ends: readonly (readonly (readonly Point[])[])[];

  constructor(unit: SewingUnit) {
    this.unit = unit;
    const lines: SeamLine[] = [];
    const lineOf = (run: SharedRun): number => {
      const found = lines.findIndex(
        (line) => isOn(line, run.from, unit.tolerance) && isOn(line, run.to, unit.tolerance),
      );
      return found >= 0 ? found : lines.push(lineThrough([run.from, run.to])) - 1;
    };
    this.lines = unit.patches.map((patch) => patch.shared.map(lineOf));
    this.ends = unit.patches.map((patch) =>
      patch.shared.map(({ from, to }) => [from, to].filter((end) => this.isWithin(end))),
    );
  }

  /** The length of the seams among some patches that end where the next patch's seam runs. */
  lengthOf(next: number, before: readonly boolean[]): number {
    const step = stepOnto(this.unit, next, before);
    if ('fault' in step) {
      return 0;
    }
    const sizes = new Map<number, number>();
    const ending = new Set<number>();
    for (const index of indicesOf(before)) {
      this.unit.patches[index]!.shared.forEach((run, i) => {
        if (before[run.with] && run.with > index) {
          const line = this.lines[index]![i]!;
          sizes.set(line, (sizes.get(line) ?? 0) + distance(run.from, run.to));
          if (this.ends[index]![i]!.some((end) => this.isOnSeam(step.seam, end))) {
            ending.add(line);
          }
        }
      });
    }
    return [...ending].reduce((sum, line) => sum + sizes.get(line)!, 0);
  }

  private isOnSeam({ line }: Seam, place: Point): boolean {
    const { tolerance } = this.unit;
    const at = alongLine(line, place);
    return Math.abs(offLine(line, place)) <= tolerance && at >= -tolerance && at <= line.size + tolerance;
  }

  /** Whether patches lie all round a place. Seams that end on the unit's outside end in what is trimmed, and are no lump. */
  private isWithin(place: Point): boolean {
    const degrees = this.unit.patches.reduce(
      (sum, { polygon }) => sum + angleAt(polygon, place, this.unit.tolerance),
      0,
    );
    return degrees > 359;
  }
}

/** How much of the turn about a place a polygon takes. */
function angleAt(polygon: Polygon, place: Point, tolerance: number): number {
  const corner = polygon.findIndex((each) => distance(each, place) <= tolerance);
  if (corner >= 0) {
    const after = subtract(polygon[(corner + 1) % polygon.length]!, polygon[corner]!);
    const before = subtract(polygon.at(corner - 1)!, polygon[corner]!);
    return modulo((Math.atan2(cross(after, before), dot(after, before)) * 180) / Math.PI, 360);
  }
  const onEdge = polygon.some((from, i) => {
    const line = seamLine(from, polygon[(i + 1) % polygon.length]!);
    const at = alongLine(line, place);
    return Math.abs(offLine(line, place)) <= tolerance && at > 0 && at < line.size;
  });
  return onEdge ? 180 : isInside(polygon, ...place) ? 360 : 0;
}
