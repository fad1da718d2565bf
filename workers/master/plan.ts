/** A plan while it is being looked for: which strips are cut and from which pieces, before it is written as an answer. */
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import { type Family, lowestStrip, stripHeight } from '../strips/family.ts';
import { gridRow } from '../strips/grid-row.ts';
import { fitRow, type LaidBlank } from '../strips/lay-row.ts';
import { restackRow, unstackRow } from '../strips/stack-variant.ts';
import type { StripColumn } from './column.ts';
import type { Split } from './shares.ts';
import { isBolt, pieceCost } from './strip-master.ts';

/** One strip to be cut. */
export interface PlannedStrip {
  readonly family: number;
  readonly height: number;
  readonly blanks: readonly LaidBlank[];
}

/** One piece (or one length of a bolt cut along) and the strips that come from it. */
export interface PlannedPiece {
  readonly family: number;
  readonly strips: readonly PlannedStrip[];
}

export interface Plan {
  /** Straight off bolts. */
  readonly strips: readonly PlannedStrip[];
  readonly pieces: readonly PlannedPiece[];
  /** By blank: how many are not in it. */
  readonly unplaced: Int32Array;
  readonly cost: number;
  readonly area: number;
  /** How shares are split, where there are any. */
  readonly split?: Split;
}

export interface Chosen {
  readonly strips: readonly { readonly column: StripColumn; readonly times: number }[];
  readonly pieces: readonly {
    readonly family: number;
    readonly slots: ReadonlyMap<number, number>;
    readonly times: number;
  }[];
}

/**
 * Makes a plan of the strips and pieces chosen: what is cut beyond demand is left out again, strips that can do with less
 * height get it, strips go into the slots of their pieces.
 * @returns null when the strips do not go into the pieces
 */
export function makePlan(job: LayoutJob, families: readonly Family[], demand: Int32Array, chosen: Chosen): Plan | null {
  const all: PlannedStrip[] = [];
  for (const { column, times } of chosen.strips) {
    if (!column.row) return null;
    for (let i = 0; i < times; i++)
      all.push({ family: column.family, height: column.height, blanks: column.row.blanks });
  }
  const trimmed = trim(families, demand, all);
  const unplaced = Int32Array.from(demand);
  for (const strip of trimmed) for (const b of strip.blanks) unplaced[b.variant.blank]!--;
  const onBolts = trimmed.filter((s) => families[s.family]!.stack === null);
  const pieces = intoPieces(
    families,
    trimmed.filter((s) => families[s.family]!.stack !== null),
    chosen,
  );
  if (!pieces) return null;
  return { strips: onBolts, pieces, unplaced, ...costOf(job, families, onBolts, pieces) };
}

/** First fewest unplaced, then cost, then area, then different strip heights. */
export function better(a: Plan, b: Plan | null): boolean {
  if (!b) return true;
  const missing = (p: Plan) => p.unplaced.reduce((x, y) => x + y, 0);
  if (missing(a) !== missing(b)) return missing(a) < missing(b);
  if (Math.abs(a.cost - b.cost) > 1e-6) return a.cost < b.cost;
  if (Math.abs(a.area - b.area) > 1e-6 * (1 + b.area)) return a.area < b.area;
  return differentHeights(a) < differentHeights(b);
}

function differentHeights(plan: Plan): number {
  return new Set([...plan.strips, ...plan.pieces.flatMap((p) => p.strips)].map((s) => s.height.toFixed(6))).size;
}

function trim(
  families: readonly Family[],
  demand: Int32Array,
  strips: readonly PlannedStrip[],
): readonly PlannedStrip[] {
  const over = new Int32Array(demand.length);
  for (const s of strips) for (const b of s.blanks) over[b.variant.blank]!++;
  for (let i = 0; i < over.length; i++) over[i]! -= demand[i]!;
  const kept = strips.map((s) => [...s.blanks]);
  // Whole strips first, then blanks that alone keep a strip tall, then whatever is left over.
  kept.forEach((blanks, i) => {
    const counts = new Map<number, number>();
    for (const b of blanks) counts.set(b.variant.blank, (counts.get(b.variant.blank) ?? 0) + 1);
    if ([...counts].every(([blank, n]) => over[blank]! >= n)) {
      for (const [blank, n] of counts) over[blank]! -= n;
      kept[i] = [];
    }
  });
  for (const pass of ['tallest', 'any'] as const) {
    kept.forEach((blanks, i) => {
      for (;;) {
        const tallest = Math.max(...blanks.map((b) => b.variant.height));
        const index = blanks.findLastIndex(
          (b) =>
            over[b.variant.blank]! > 0 &&
            (pass === 'any' ||
              (b.variant.height === tallest &&
                blanks.filter((o) => o.variant.height === tallest).length <= over[b.variant.blank]!)),
        );
        if (index < 0) break;
        over[blanks[index]!.variant.blank]!--;
        blanks.splice(index, 1);
      }
      kept[i] = blanks;
    });
  }
  return strips.flatMap((s, i) => {
    const blanks = kept[i]!;
    if (blanks.length === 0) return [];
    return [tidy(families[s.family]!, s, blanks)];
  });
}

/** As low as its blanks allow, laid tight again, and on the ruler's marks where there is room for that. */
function tidy(family: Family, strip: PlannedStrip, blanks: readonly LaidBlank[]): PlannedStrip {
  if (blanks.some((b) => b.stack !== undefined)) return tidyStacks(family, strip, blanks);
  const least = stripHeight(Math.max(...blanks.map((b) => b.variant.height)), family.ruler);
  if (least < strip.height - 1e-9) {
    const low = fitRow(
      blanks.map((b) => b.variant),
      least,
      family.span,
    );
    if (low)
      return { family: strip.family, height: least, blanks: gridRow(low.blanks, least, family.span, family.ruler) };
  }
  const same = fitRow(
    blanks.map((b) => b.variant),
    strip.height,
    family.span,
  );
  return { ...strip, blanks: gridRow(same?.blanks ?? blanks, strip.height, family.span, family.ruler) };
}

/** The same for a strip with stacks, each of them moved as one. */
function tidyStacks(family: Family, strip: PlannedStrip, blanks: readonly LaidBlank[]): PlannedStrip {
  const { ruler, span } = family;
  const variants = restackRow(blanks);
  const least = lowestStrip(family, Math.max(...variants.map((v) => v.height)));
  for (const height of least < strip.height - 1e-9 ? [least, strip.height] : [strip.height]) {
    const row = fitRow(variants, height, span);
    if (row) return { ...strip, height, blanks: unstackRow(gridRow(row.blanks, height, span, ruler), height, ruler) };
  }
  return { ...strip, blanks };
}

function intoPieces(
  families: readonly Family[],
  strips: readonly PlannedStrip[],
  chosen: Chosen,
): PlannedPiece[] | null {
  const pieces: { family: number; slots: { height: number; strip: PlannedStrip | null }[] }[] = [];
  for (const { family, slots, times } of chosen.pieces) {
    for (let i = 0; i < times; i++) {
      pieces.push({
        family,
        slots: [...slots].flatMap(([height, n]) => Array.from({ length: n }, () => ({ height, strip: null }))),
      });
    }
  }
  for (const strip of [...strips].sort((a, b) => b.height - a.height)) {
    let best: { height: number; strip: PlannedStrip | null } | undefined;
    for (const piece of pieces) {
      if (piece.family !== strip.family) continue;
      for (const slot of piece.slots) {
        if (!slot.strip && slot.height >= strip.height - 1e-9 && slot.height < (best?.height ?? Infinity)) best = slot;
      }
    }
    if (!best) return null;
    best.strip = strip;
  }
  return pieces.flatMap((p) => {
    const held = p.slots.flatMap((s) => (s.strip ? [s.strip] : []));
    return held.length > 0 && families[p.family] ? [{ family: p.family, strips: held }] : [];
  });
}

function costOf(
  job: LayoutJob,
  families: readonly Family[],
  strips: readonly PlannedStrip[],
  pieces: readonly PlannedPiece[],
) {
  let cost = 0;
  let area = 0;
  const lengths = boltLengths(job, families, strips, pieces);
  job.cloths.forEach((cloth, i) => {
    if (!isBolt(cloth)) return;
    const length = lengths[i]!;
    const rate = cloth.cost ?? 1;
    cost += cloth.step === undefined ? rate * length : rate * cloth.step * Math.ceil(length / cloth.step - 1e-6);
    area += length * cloth.width;
  });
  for (const p of pieces) {
    const family = families[p.family]!;
    if (family.segment !== null) continue;
    cost += pieceCost(family);
    area += family.cloth.width * family.cloth.length!;
  }
  return { cost, area };
}

/** By cloth: how much of each bolt the plan uses, squaring included. */
export function boltLengths(
  job: LayoutJob,
  families: readonly Family[],
  strips: readonly PlannedStrip[],
  pieces: readonly PlannedPiece[],
): Float64Array {
  const lengths = new Float64Array(job.cloths.length);
  for (const s of strips) lengths[families[s.family]!.clothIndex]! += s.height;
  for (const p of pieces) {
    const family = families[p.family]!;
    if (family.segment !== null) lengths[family.clothIndex]! += usedLength(p);
  }
  job.cloths.forEach((cloth, i) => {
    if (lengths[i]! > 0) lengths[i]! += cloth.squaring ?? 0;
  });
  return lengths;
}

/** How much of a bolt a length cut along really takes: as far as its longest row reaches. */
export function usedLength(piece: PlannedPiece): number {
  return Math.max(0, ...piece.strips.flatMap((s) => s.blanks.map((b) => b.x + b.variant.width)));
}
