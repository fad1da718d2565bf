/** Which costs a plan can have at all, so that a bound that falls between two may be rounded up to the next. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Family } from '../strips/family.ts';
import { bestPurchases, commonMeasure, costBelow, stripHeights, suppliesOf, wholeBox } from './purchases.ts';
import { isBolt } from './strip-master.ts';

const LOOSE = 1e-6;

/**
 * @param bound proved for the linear programme, cost of lengths rather than of whole steps
 * @param known the cost of some plan, where there is one: no least cost is above it
 * @returns the least cost at or above it that any plan can have
 */
export function roundCost(job: LayoutJob, families: readonly Family[], bound: number, known = Infinity): number {
  const bolts = job.cloths.filter(isBolt);
  if (bolts.length === 1 && !hasPaidPieces(job)) {
    const bolt = bolts[0]!;
    const rate = bolt.cost ?? 1;
    if (rate <= 0) return 0;
    let length = bound / rate;
    // With pieces about, the programme does not know that squaring is lost as soon as any of the bolt is bought.
    if (length > LOOSE && job.cloths.length > 1) length += bolt.squaring ?? 0;
    if (bolt.step !== undefined) return rate * bolt.step * Math.ceil(length / bolt.step - LOOSE);
    return rate * reachable(length, bolt.squaring ?? 0, families);
  }
  return bound <= LOOSE ? Math.max(0, bound) : roundedUp(job, families, bound, known);
}

/** The cheapest purchase that gives lengths and pieces of so much cost, squaring not counted in what it gives. */
function roundedUp(job: LayoutJob, families: readonly Family[], bound: number, known: number): number {
  const supplies = suppliesOf(job, families);
  if (!supplies) return bound;
  const worth = job.cloths.map((c) => c.cost ?? (isBolt(c) ? 1 : c.length!));
  const dearest = supplies.reduce((sum, s) => sum + s.first + s.unit + worth[s.cloth]! * s.lost, 0);
  const purchases = bestPurchases(supplies, wholeBox(job), worth, Math.min(known, 2 * bound + dearest));
  if (!purchases) return bound;
  const enough = purchases.find((p) => p.value >= bound - LOOSE * (1 + bound));
  return Math.max(bound, enough?.cost ?? Math.min(known, bound));
}

/** The most that a plan cheaper than `cost` can cost: the next cheaper purchase, or a hair less where none can be told. */
export function nextCheaper(job: LayoutJob, families: readonly Family[], cost: number): number {
  const saving = leastSaving(job, families);
  if (saving > 0) return cost - saving;
  const supplies = suppliesOf(job, families);
  const below = supplies && costBelow(supplies, cost);
  return below ?? cost - HAIR;
}

/** More than GLPK's own looseness, less than would count as cheaper. */
const HAIR = 2e-6;

/**
 * What a plan must at least save to be cheaper at all: a selling step, or the measure that all strip heights share.
 * 0 where there is no such measure; see nextCheaper.
 */
export function leastSaving(job: LayoutJob, families: readonly Family[]): number {
  const bolts = job.cloths.filter(isBolt);
  if (bolts.length !== 1 || hasPaidPieces(job)) return 0;
  const { cost = 1, step } = bolts[0]!;
  if (step !== undefined) return cost * step;
  if (families.some((f) => f.segment !== null)) return 0;
  // Off a bolt that is squared the first strip costs more than its height.
  return job.cloths.length > 1 && (bolts[0]!.squaring ?? 0) > 0
    ? 0
    : cost * stripHeights(families).reduce(commonMeasure, 0);
}

function hasPaidPieces(job: LayoutJob): boolean {
  return job.cloths.some((c) => !isBolt(c) && (c.cost ?? c.length!) > 0);
}

/** The least sum of strip heights at or above `length`; the length itself where heights are too fine to tell. */
function reachable(length: number, squaring: number, families: readonly Family[]): number {
  if (families.some((f) => f.segment !== null)) return length;
  const heights = stripHeights(families);
  const unit = heights.reduce(commonMeasure, 0);
  const target = Math.max(0, Math.ceil((length - squaring) / unit - LOOSE));
  if (unit < LOOSE || target > 200_000) return length;
  const steps = heights.map((h) => Math.round(h / unit));
  const most = target + Math.max(...steps);
  const can = new Uint8Array(most + 1);
  can[0] = 1;
  for (let sum = 0; sum <= most; sum++) {
    if (!can[sum]) continue;
    if (sum >= target) return sum * unit + squaring;
    for (const s of steps) if (sum + s <= most) can[sum + s] = 1;
  }
  return length;
}
