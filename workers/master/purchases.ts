/**
 * What can be bought at all: whole steps of each bolt and whole pieces of each cloth. Costs of plans lie on the sums of these,
 * so that a bound between two of them may be rounded up, and a cheaper plan must cost one of the sums below.
 */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { type Family, gainsByRaising } from '../strips/family.ts';
import { isBolt } from './strip-master.ts';

/** What one cloth of the job can be bought in. n units, where n is above 0, cost `first` + n × `unit`. */
export interface Supply {
  readonly cloth: number;
  /** Cost of a selling step, of a piece, or of the measure that all strip heights share where a bolt has no step. */
  readonly unit: number;
  readonly first: number;
  /** What a unit gives: length of bolt, or 1 for a piece. */
  readonly size: number;
  /** What is lost of the length once, by squaring. */
  readonly lost: number;
  /** How many there are. */
  readonly stock: number;
}

/** By cloth of the job: from and to how many units are bought. */
export interface PurchaseBox {
  readonly least: readonly number[];
  readonly most: readonly number[];
}

export interface Purchase {
  readonly cost: number;
  /** What it is worth at the prices asked about. */
  readonly value: number;
  /** How many units of each supply. */
  readonly units: readonly number[];
}

/** Sums nearer than this are one cost. */
const LOOSE = 1e-6;
const MOST_SUMS = 50_000;
const MOST_WAYS = 2_000_000;

/** Null where some bolt is sold by lengths too fine to count. */
export function suppliesOf(job: LayoutJob, families: readonly Family[]): readonly Supply[] | null {
  const supplies: Supply[] = [];
  for (const [cloth, each] of job.cloths.entries()) {
    if (!isBolt(each)) {
      const stock = each.count === undefined ? 1 : (each.count ?? Infinity);
      supplies.push({ cloth, unit: each.cost ?? each.length!, first: 0, size: 1, lost: 0, stock });
      continue;
    }
    const rate = each.cost ?? 1;
    const squaring = each.squaring ?? 0;
    if (each.step !== undefined) {
      supplies.push({ cloth, unit: rate * each.step, first: 0, size: each.step, lost: squaring, stock: Infinity });
      continue;
    }
    const own = families.filter((f) => f.clothIndex === cloth);
    const size = own.some((f) => f.segment !== null) ? 0 : stripHeights(own).reduce(commonMeasure, 0);
    if (own.length > 0 && size < LOOSE) return null;
    supplies.push({ cloth, unit: rate * size, first: rate * squaring, size, lost: 0, stock: Infinity });
  }
  return supplies.filter((s) => families.some((f) => f.clothIndex === s.cloth));
}

/** Heights that strips can have: every multiple of the ruler where raising may help, else what blanks ask for. */
export function stripHeights(families: readonly Family[]): readonly number[] {
  const ruler = families.find(gainsByRaising)?.ruler ?? null;
  return ruler !== null ? [ruler] : [...new Set(families.flatMap((f) => f.stacks?.heights ?? f.heights))];
}

/** The greatest length that both are multiples of. */
export function commonMeasure(a: number, b: number): number {
  while (b > LOOSE) {
    const rest = a % b;
    [a, b] = [b, rest < LOOSE || b - rest < LOOSE ? 0 : rest];
  }
  return a;
}

export const costOfUnits = (s: Supply, n: number): number => (n > 0 ? s.first + n * s.unit : 0);
/** Length that strips may take of so many units, or so many pieces. */
export const usableOf = (s: Supply, n: number): number => (n > 0 ? Math.max(0, n * s.size - s.lost) : 0);

/** The greatest cost below `cost` that some purchase has; null where there are too many to tell. */
export function costBelow(supplies: readonly Supply[], cost: number): number | null {
  let sums = new Map<number, number>([[0, 0]]);
  for (const s of supplies) {
    if (s.unit <= 0) continue;
    const more = new Map<number, number>();
    for (const sum of sums.values()) {
      for (let n = 0; n <= s.stock; n++) {
        const total = sum + costOfUnits(s, n);
        if (total >= cost - LOOSE) break;
        more.set(Math.round(total / (LOOSE / 4)), total);
        if (more.size > MOST_SUMS) return null;
      }
    }
    sums = more;
  }
  let below: number | null = null;
  for (const sum of sums.values()) if (sum < cost - LOOSE && (below === null || sum > below)) below = sum;
  return below;
}

/** Everything of each cloth that purchases within the box hold. */
export function wholeBox(job: LayoutJob): PurchaseBox {
  return { least: job.cloths.map(() => 0), most: job.cloths.map(() => Infinity) };
}

/** The box without purchases that must cost more than `most`; null when nothing is left of it. */
export function affordable(supplies: readonly Supply[], box: PurchaseBox, most: number): PurchaseBox | null {
  const least = supplies.reduce((sum, s) => sum + costOfUnits(s, box.least[s.cloth]!), 0);
  if (least > most + LOOSE) return null;
  const upper = [...box.most];
  for (const s of supplies) {
    const lower = box.least[s.cloth]!;
    const left = most - least + costOfUnits(s, lower) - s.first;
    const can = s.unit > 0 ? Math.max(0, Math.floor(left / s.unit + LOOSE)) : Infinity;
    upper[s.cloth] = Math.min(upper[s.cloth]!, s.stock, can);
    if (upper[s.cloth]! < lower) return null;
  }
  return { least: box.least, most: upper };
}

/**
 * Purchases within the box that cost no more than `most`, those alone to which no other gives more for as little, cheapest first.
 * @param worth by cloth of the job: what a length of 1, or a piece, is worth
 * @returns null where there are too many to go through
 */
export function bestPurchases(
  supplies: readonly Supply[],
  box: PurchaseBox,
  worth: readonly number[],
  most: number,
): readonly Purchase[] | null {
  let front: Purchase[] = [{ cost: 0, value: 0, units: [] }];
  for (const s of supplies) {
    const each = worth[s.cloth]!;
    const lower = box.least[s.cloth]!;
    const upper = Math.min(box.most[s.cloth]!, s.stock);
    // What costs nothing, or can be had without end, is taken to the full or is worth nothing.
    const top = s.unit > 0 ? Math.min(upper, Math.floor(most / s.unit + LOOSE)) : upper;
    if (s.unit <= 0 || each <= 0) {
      const n = each <= 0 ? lower : upper;
      const value = each <= 0 ? 0 : each * usableOf(s, n);
      front = front.map((f) => ({ cost: f.cost + costOfUnits(s, n), value: f.value + value, units: [...f.units, n] }));
      continue;
    }
    if (front.length * (top - lower + 1) > MOST_WAYS) return null;
    const ways: typeof front = [];
    for (const f of front) {
      for (let n = lower; n <= top; n++) {
        const cost = f.cost + costOfUnits(s, n);
        if (cost > most + LOOSE) break;
        ways.push({ cost, value: f.value + each * usableOf(s, n), units: [...f.units, n] });
      }
    }
    ways.sort((a, b) => a.cost - b.cost || b.value - a.value);
    front = [];
    for (const w of ways) if (front.length === 0 || w.value > front.at(-1)!.value) front.push(w);
  }
  return front.filter((f) => f.cost <= most + LOOSE);
}
