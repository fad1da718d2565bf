/** Which costs a plan can have at all, so that a bound that falls between two may be rounded up to the next. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Family } from '../strips/family.ts';
import { gainsByRaising } from '../strips/family.ts';
import { isBolt } from './strip-master.ts';

const LOOSE = 1e-6;

/**
 * @param bound proved for the linear programme, cost of lengths rather than of whole steps
 * @returns the least cost at or above it that any plan can have
 */
export function roundCost(job: LayoutJob, families: readonly Family[], bound: number): number {
  const bolts = job.cloths.filter(isBolt);
  const paid = job.cloths.filter((c) => !isBolt(c) && (c.cost ?? c.length!) > 0);
  if (bolts.length === 1 && paid.length === 0) {
    const bolt = bolts[0]!;
    const rate = bolt.cost ?? 1;
    if (rate <= 0) return 0;
    let length = bound / rate;
    // With pieces about, the programme does not know that squaring is lost as soon as any of the bolt is bought.
    if (length > LOOSE && job.cloths.length > 1) length += bolt.squaring ?? 0;
    if (bolt.step !== undefined) return rate * bolt.step * Math.ceil(length / bolt.step - LOOSE);
    return rate * reachable(length, bolt.squaring ?? 0, families);
  }
  const units = [
    ...bolts.map((b) => (b.step === undefined ? 0 : (b.cost ?? 1) * b.step)),
    ...paid.map((c) => c.cost ?? c.length!),
  ].filter((u, i) => u > 0 || i < bolts.length);
  const unit = units.reduce(commonMeasure, 0);
  return units.includes(0) || unit < LOOSE ? bound : unit * Math.ceil(bound / unit - LOOSE);
}

/**
 * What a plan must at least save to be cheaper at all: a selling step, or the measure that all strip heights share.
 * 0 where nothing is known.
 */
export function leastSaving(job: LayoutJob, families: readonly Family[]): number {
  const bolts = job.cloths.filter(isBolt);
  if (bolts.length !== 1 || job.cloths.some((c) => !isBolt(c) && (c.cost ?? c.length!) > 0)) return 0;
  const { cost = 1, step } = bolts[0]!;
  if (step !== undefined) return cost * step;
  if (families.some((f) => f.segment !== null)) return 0;
  return cost * stripHeights(families).reduce(commonMeasure, 0);
}

/** Heights that strips off a bolt can have: every multiple of the ruler where raising may help, else what blanks ask for. */
function stripHeights(families: readonly Family[]): readonly number[] {
  const ruler = families.find(gainsByRaising)?.ruler ?? null;
  return ruler !== null ? [ruler] : [...new Set(families.flatMap((f) => f.heights))];
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

function commonMeasure(a: number, b: number): number {
  while (b > LOOSE) {
    const rest = a % b;
    [a, b] = [b, rest < LOOSE || b - rest < LOOSE ? 0 : rest];
  }
  return a;
}
