/**
 * Closing the gap by heights: first how many strips of each height, an integer programme that knows rows only by inequalities;
 * then whether such strips can hold what is wanted. If not even in parts of rows, the prices that say so give the next
 * inequality; if no choice of heights is left below the best plan's cost, that is the proof.
 */
import { usefulHeights } from '../strips/strip-heights.ts';
import { StripWorths } from '../strips/strip-worths.ts';
import type { Gap } from './close-gap.ts';
import { addRow, type Generated, generate } from './generate.ts';
import { type Exclusion, HeightProgramme } from './height-programme.ts';
import { packExactly } from './pack-exactly.ts';
import { packSlots, shareWithNewRows } from './pack-slots.ts';
import { leastSaving } from './round-cost.ts';
import { mayLeaveOpen } from './slack.ts';
import type { Slot } from './slots-programme.ts';
import type { StripMaster } from './strip-master.ts';

/** What stays from one stay to the next. */
export interface Heights {
  readonly programme: HeightProgramme;
  /** Length of bolt that a cost of one buys, squaring apart. */
  readonly lengthOf: (cost: number) => number;
  readonly costOf: (length: number) => number;
  /** What plans' costs differ by. */
  readonly unit: number;
  /** The linear programme's values of the blanks: all that is wanted is worth 1. */
  prices: Float64Array;
  /** Limit of work for a choice of heights. */
  seconds: number;
  /** How often it has been at work without settling a cost. */
  stays: number;
  /** Rows begun that listing them all may take. */
  patience: number;
  /** By height, how many strips the linear programme takes for each unit of their length together. */
  middle: Float64Array;
}

type Verdict = 'none' | 'packed' | 'open';

/** A choice of heights that may hold everything, in parts of rows, and was not packed. */
interface Aside {
  readonly slots: readonly Slot[];
  readonly share: number;
  readonly exclusion: Exclusion;
}

const TOLERANCE_LEAST = 0.004;
const TOLERANCE_MOST = 0.02;
const ROOT_TOLERANCE = 0.004;
const ROOT_ROUNDS = 4;
/** Inequalities met by less than this are looked at more closely. */
const CLOSE = 0.01;
const LOOKS_CLOSER = 3;
/** How closely strips are looked at in turn, in parts of what they lack, until it is seen that they do not do. */
const CLOSER = [
  [4, 'exact'],
  [16, 'exact'],
  [64, 'exact'],
  [64, 'thorough'],
] as const;
/** Attempts to pack one choice of heights: each goes another way, and often only one of several succeeds. */
const PACKINGS = 4;
/** Work on one choice of heights, from the first to the most before something else is tried. */
const SECONDS_LEAST = 0.3;
const SECONDS_MOST = 1.5;
const TRIES = 2;
/** So often other ways are tried before choices not packed are listed in full. */
const STAYS_BEFORE_EXACT = 1;
/** Rows begun that listing them all may take, the first time. */
const PATIENCE = 100_000;
const ROUNDS = 200;

/**
 * Whether heights can close the gap: strips slant (of boxes the list of all rows says more), all come from one bolt, and costs have
 * a measure.
 */
export function mayCloseByHeights({ job, families }: StripMaster): boolean {
  const [family] = families;
  if (job.stages === 3 || !family || families.length !== 1 || family.stack !== null || job.cloths.length !== 1)
    return false;
  return mayLeaveOpen(families) && leastSaving(job, families) > 0 && (family.cloth.cost ?? 1) > 0;
}

/** Null when time ran out. */
export async function plantHeights(gap: Gap, root: Generated): Promise<Heights | null> {
  const { master, solver, clock } = gap;
  const { job, families } = master;
  const family = families[0]!;
  const unit = leastSaving(job, families);
  const rate = family.cloth.cost ?? 1;
  const programme = new HeightProgramme(solver, usefulHeights(family));
  const heights: Heights = {
    programme,
    costOf: (length) => rate * (length + (family.cloth.squaring ?? 0)),
    lengthOf: (cost) => cost / rate - (family.cloth.squaring ?? 0),
    unit,
    prices: new Float64Array(master.demand.length),
    seconds: SECONDS_LEAST,
    stays: 0,
    patience: PATIENCE,
    middle: new Float64Array(programme.heights.length),
  };
  let made: Generated | null = root;
  for (let round = 0; made && round < ROOT_ROUNDS; round++) {
    const value: number = made.solution.value;
    heights.middle = middleOf(master, programme, made);
    heights.prices = normal(made.prices.blank, master.demand);
    const cut = await addCut(gap, heights, made.prices.blank, TOLERANCE_MOST);
    if (!cut) return null;
    // At the right prices no strip is worth more than it costs; where one still might be, it is looked at more closely.
    const worthOf = (i: number) => (cut.worths[i]! * heights.lengthOf(value)) / programme.heights[i]!;
    for (let i = programme.heights.length - 1; i >= 0; i--)
      if (worthOf(i) > 1 + ROOT_TOLERANCE && !(await cut.refine([i], ROOT_TOLERANCE))) return null;
    const { length } = programme.shortest();
    gap.raise(heights.costOf(length));
    // Better prices would raise the bound no further than the programme's own value.
    if (gap.done() || gap.bound() >= value - 1e-6 || length >= heights.lengthOf(value) * (1 - 2 * ROOT_TOLERANCE))
      break;
    made = await generate(master, [], clock.breath, { quick: true });
    if (made && made.solution.value >= value - 1e-6) break;
  }
  return heights;
}

/** By height, how many strips the linear programme takes for each unit of their length together. */
function middleOf(master: StripMaster, programme: HeightProgramme, { solution }: Generated): Float64Array {
  const middle = new Float64Array(programme.heights.length);
  let length = 0;
  solution.strips.forEach((x, i) => {
    const { height } = master.strips[i]!;
    const h = programme.heights.findIndex((each) => Math.abs(each - height) < 1e-9);
    if (h < 0 || x <= 1e-9) return;
    middle[h]! += x;
    length += x * height;
  });
  return middle.map((n) => n / length);
}

/**
 * The bound, which rises when no choice of heights is left at its cost; then, where more than one step is open, plans a step below the
 * best, as long as they come.
 * @param attempts choices of heights to be filled, at each cost
 */
export async function workOnHeights(gap: Gap, heights: Heights, attempts: number): Promise<void> {
  const open = () => !gap.done() && gap.clock.left() > 0 && gap.best() !== null;
  while (open()) {
    // The bound may rise on the way, so what was refused is remembered.
    const cost = gap.bound();
    const verdict = await tryCost(gap, heights, cost, attempts, true);
    if (verdict === 'none') gap.raiseCost(cost + heights.unit);
    else if (gap.bound() <= cost + 1e-6) break;
  }
  while (open() && gap.best()!.cost - heights.unit > gap.bound() + 1e-6) {
    const cost = gap.best()!.cost - heights.unit;
    if ((await tryCost(gap, heights, cost, attempts, false)) !== 'packed') break;
  }
}

async function tryCost(
  gap: Gap,
  heights: Heights,
  cost: number,
  attempts: number,
  thorough: boolean,
): Promise<Verdict> {
  const { programme } = heights;
  const { master, solver, clock, random } = gap;
  const length = heights.lengthOf(cost);
  /** Choices that may hold everything but were not packed: whether they can be is found out last, since it takes longest. */
  const put: Aside[] = [];
  for (let i = 0; i < attempts && clock.left() > 0; ) {
    if (thorough && gap.bound() > cost + 1e-6) return 'open';
    const answer = programme.next(
      length,
      heights.seconds,
      heights.middle.map((n) => n * length),
    );
    if (!(await clock.breath())) return 'open';
    if (answer.status === 'unknown') {
      heights.seconds *= 2;
      if (heights.seconds > SECONDS_MOST) break;
      continue;
    }
    if (answer.status === 'none') {
      if (programme.exclusions.every((e) => e.certain)) return 'none';
      break;
    }
    const { choice } = answer;
    const known = await fallsCloser(heights, choice.counts);
    if (known === null) return 'open';
    if (known) continue;
    // Halfway to the fractional best, an inequality cuts deeper; it is tried first, and only with it out of the way the choice itself.
    const between = Float64Array.from(choice.counts, (n, h) => (n + heights.middle[h]! * length) / 2);
    const deep = await mayHold(gap, heights, between, 0);
    if (deep === null) return 'open';
    if (deep.verdict === 'no' && falls(programme.cuts.at(-1)!, choice.counts)) continue;
    const slots = slotsOf(programme, choice.counts);
    const holds = await mayHold(gap, heights, choice.counts, TRIES);
    if (holds === null) return 'open';
    if (holds.verdict === 'no') continue;
    i++;
    for (let k = 0; holds.verdict === 'perhaps' && k < PACKINGS; k++) {
      const plan = await packSlots(master, solver, slots, random, clock.breath, k % 2 === 0);
      if (plan?.unplaced.every((n) => n === 0)) {
        gap.offer(plan);
        if (plan.cost <= cost + 1e-6) return 'packed';
      }
      if (clock.left() <= 0) return 'open';
    }
    const exclusion: Exclusion = { counts: choice.counts, certain: false };
    programme.exclusions.push(exclusion);
    if (holds.verdict === 'perhaps') put.push({ slots, share: holds.share, exclusion });
  }
  if (thorough && ++heights.stays > STAYS_BEFORE_EXACT) {
    // What has least to spare is soonest told.
    put.sort((a, b) => a.share - b.share);
    for (const { slots, exclusion } of put) {
      const filling = await packExactly(master, solver, slots, heights.prices, heights.patience, 1, clock.breath);
      if (!filling) return 'open';
      if (filling.plan) {
        gap.offer(filling.plan);
        if (filling.plan.cost <= cost + 1e-6) return 'packed';
      } else if (filling.certain)
        programme.exclusions[programme.exclusions.indexOf(exclusion)] = { ...exclusion, certain: true };
      else break;
    }
  }
  programme.exclusions.splice(0, programme.exclusions.length, ...programme.exclusions.filter((e) => e.certain));
  heights.patience *= 2;
  return 'open';
}

function slotsOf({ heights }: HeightProgramme, counts: ArrayLike<number>): readonly Slot[] {
  return heights.flatMap((height, i) => (counts[i]! > 1e-9 ? [{ height, count: counts[i]! }] : []));
}

/** Whether the inequality rules these strips out. */
function falls({ worths }: StripWorths, counts: ArrayLike<number>): boolean {
  return worths.reduce((sum, w, i) => sum + w * counts[i]!, 0) < 1 - 1e-6;
}

/** Whether the strips may hold everything, in parts of rows; if not, there is a new inequality. Null when time ran out. */
async function mayHold(
  gap: Gap,
  heights: Heights,
  counts: ArrayLike<number>,
  tries: number,
): Promise<{ readonly verdict: 'perhaps' | 'no' | 'unclear'; readonly share: number } | null> {
  const { master, solver, clock } = gap;
  const { programme } = heights;
  const slots = slotsOf(programme, counts);
  const used = programme.heights.flatMap((_, i) => (counts[i]! > 1e-9 ? [i] : []));
  let before = -1;
  for (let left = tries; ; left--) {
    const shared = await shareWithNewRows(master, solver, slots, master.demand, clock.breath, ROUNDS);
    if (!shared) return null;
    if (shared.share >= 1 - 1e-6) return { verdict: 'perhaps', share: shared.share };
    // With no row found since, the same would be looked at again.
    if (left < 0 || shared.share <= before + 1e-9) return { verdict: 'unclear', share: shared.share };
    before = shared.share;
    const short = 1 - shared.share;
    const cut = await addCut(
      gap,
      heights,
      shared.values,
      Math.min(TOLERANCE_MOST, Math.max(TOLERANCE_LEAST, short / 2)),
    );
    if (!cut) return null;
    for (const [part, effort] of CLOSER) {
      if (falls(cut, counts)) break;
      if (!(await cut.refine(used, Math.max(1e-6, short / part), effort))) return null;
    }
    gap.raise(heights.costOf(programme.shortest().length));
    if (falls(cut, counts)) return { verdict: 'no', share: shared.share };
  }
}

/** Whether an inequality known already rules these strips out once it is looked at more closely. Null when time ran out. */
async function fallsCloser(heights: Heights, counts: ArrayLike<number>): Promise<boolean | null> {
  const { programme } = heights;
  const used = programme.heights.flatMap((_, i) => (counts[i]! > 1e-9 ? [i] : []));
  for (const cut of programme.cuts) {
    const sum = (of: (i: number) => number) => used.reduce((total, i) => total + of(i) * counts[i]!, 0);
    if (sum((i) => cut.worths[i]!) > 1 + CLOSE) continue;
    // As long as rows that are known are not together worth enough, bounds that come nearer to them may tell.
    for (let look = 0; look < LOOKS_CLOSER; look++) {
      const short = 1 - sum((i) => cut.foundUpTo(i));
      if (short <= 1e-6) break;
      if (!(await cut.refine(used, Math.min(CLOSE / 5, short / 2)))) return null;
      if (falls(cut, counts)) return true;
    }
  }
  return false;
}

/** Values in parts of what all that is wanted is worth. */
function normal(values: Float64Array, demand: Int32Array): Float64Array {
  const total = values.reduce((sum, v, b) => sum + Math.max(0, v) * demand[b]!, 0);
  return values.map((v) => Math.max(0, v) / total);
}

/** By height: what the best row known is worth. */
function knownWorths(master: StripMaster, { heights }: HeightProgramme, values: Float64Array): Float64Array {
  const index = new Map(heights.map((h, i) => [Math.round(h * 1e6), i]));
  const known = new Float64Array(heights.length);
  for (const { height, counts, row } of master.strips) {
    const i = index.get(Math.round(height * 1e6));
    if (!row || i === undefined) continue;
    let worth = 0;
    for (const [b, n] of counts) worth += n * values[b]!;
    known[i] = Math.max(known[i]!, worth);
  }
  return known;
}

/** Adds the inequality of these values. Null when time ran out. */
async function addCut(
  gap: Gap,
  { programme }: Heights,
  values: Float64Array,
  tolerance: number,
): Promise<StripWorths | null> {
  const { master, clock } = gap;
  const each = normal(values, master.demand);
  const cut = new StripWorths({
    family: master.families[0]!,
    heights: programme.heights,
    values: each,
    demand: master.demand,
    known: knownWorths(master, programme, each),
    onRow: (height, row) => addRow(master, 0, height, row),
    breath: clock.breath,
  });
  if (!(await cut.sketch(tolerance))) return null;
  programme.cuts.push(cut);
  return cut;
}
