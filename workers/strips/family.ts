/**
 * A family of strips: all that are cut from one cloth one way. It knows which blanks may lie in them and how, and at which
 * heights strips are worth pricing.
 */
import type { ClothChoice, JobBlank, JobCloth, LayoutJob, Turns } from '../../src/plan/layout-job.ts';
import { cutSlopes, type Reach, reachOf } from './cut-slopes.ts';
import { makeRowGraph, type RowGraph } from './row-graph.ts';
import { turnSet } from './turn-set.ts';
import { makeVariant, sameVariant, type Variant } from './variant.ts';

export interface Family {
  readonly cloth: JobCloth;
  readonly clothIndex: number;
  /** Strips run along the length rather than across the width. */
  readonly along: boolean;
  /** How long each strip is. */
  readonly span: number;
  /** How much height of strips one piece, or one length of a bolt cut along, holds; null: a bolt, as much as is bought. */
  readonly stack: number | null;
  /** For lengths of a bolt cut along: the length of each. */
  readonly segment: number | null;
  /** By height, lowest first. */
  readonly variants: readonly Variant[];
  /** Heights that some variant asks for, rounded up to the ruler, ascending. */
  readonly heights: readonly number[];
  readonly ruler: number | null;
  /** Slopes that cuts may have, and how far each variant reaches against them. */
  readonly slopes: Float64Array;
  readonly reach: Reach;
  readonly graphs: Map<number, RowGraph>;
  /** Null: two stages, rows only. */
  readonly stacks: StackRule | null;
}

/** Three stages: up to which height strips that hold stacks are priced one by one. */
export interface StackRule {
  readonly top: number;
  /** Without a ruler, the heights that strips may have: those of blanks, even of such as are too wide for this cloth. */
  readonly heights: readonly number[];
  /** Whether a plan of use might have taller ones, so that a bound must speak of them too. */
  readonly beyond: boolean;
}

export interface FamilySize {
  readonly along: boolean;
  readonly span: number;
  readonly stack: number | null;
  readonly segment: number | null;
}

export function makeFamily(job: LayoutJob, clothIndex: number, size: FamilySize): Family {
  const cloth = job.cloths[clothIndex]!;
  const ruler = job.ruler ?? null;
  const most = size.stack ?? Infinity;
  const variants = allVariants(job, cloth, size.along)
    .filter(
      (v) =>
        job.blanks[v.blank]!.demand > 0 &&
        v.width <= size.span * (1 + 1e-7) &&
        stripHeight(v.height, ruler) <= most * (1 + 1e-7),
    )
    .sort((a, b) => a.height - b.height || a.blank - b.blank || a.width - b.width);
  const heights = distinctAscending(variants.map((v) => stripHeight(v.height, ruler)));
  const slopes = cutSlopes(variants, size.span);
  return {
    cloth,
    clothIndex,
    ...size,
    variants,
    heights,
    ruler,
    slopes,
    reach: reachOf(variants, slopes),
    graphs: new Map(),
    stacks: null,
  };
}

/** Every way that blanks may lie on the cloth, whether they fit it or not and whether any are wanted. */
export function allVariants(job: LayoutJob, cloth: JobCloth, along: boolean): readonly Variant[] {
  return job.blanks.flatMap((blank, i) => blankVariants(blank, i, cloth.id, along));
}

/** The height a strip must have for a blank of this height: rounded up to the ruler where there is one. */
export function stripHeight(height: number, ruler: number | null): number {
  return ruler === null ? height : Math.max(1, Math.ceil(height / ruler - 1e-6)) * ruler;
}

/** Graph of a height, kept: pricing asks for it again and again. */
export function graphAt(family: Family, height: number): RowGraph {
  let graph = family.graphs.get(height);
  if (!graph) {
    graph = passingGraphAt(family, height);
    family.graphs.set(height, graph);
  }
  return graph;
}

/** Graph of a height in between: there are many, and each is wanted seldom. */
export function passingGraphAt(family: Family, height: number): RowGraph {
  return makeRowGraph(family.variants, family.slopes, family.reach, height, family.span, family.ruler);
}

const ranges = new WeakMap<Map<number, RowGraph>, Map<string, RowGraph>>();

/**
 * A graph for bounds on strips from one height to another, between which no more blanks fit in. A taller strip may hold less than a
 * lower one, because its cuts run on and meet or leave the cloth. Kept.
 */
export function rangeGraph(family: Family, low: number, high: number): RowGraph {
  if (low >= high) return graphAt(family, high);
  let known = ranges.get(family.graphs);
  if (!known) {
    known = new Map();
    ranges.set(family.graphs, known);
  }
  const key = `${low}|${high}`;
  let graph = known.get(key);
  if (!graph) {
    const { variants, slopes, reach, span, ruler } = family;
    graph = makeRowGraph(variants, slopes, reach, high, span, ruler, low);
    known.set(key, graph);
  }
  return graph;
}

/** Whether a strip taller than its blanks can ever be of use: only where some blank slants, or blanks may be stacked. */
export function gainsByRaising(family: Family): boolean {
  return family.ruler !== null && (family.slopes.length > 1 || family.stacks !== null);
}

/** The lowest strip that may be cut to hold this height; without a ruler it is as tall as some blank. */
export function lowestStrip(family: Family, height: number): number {
  if (family.ruler !== null) return stripHeight(height, family.ruler);
  const heights = family.stacks?.heights ?? family.heights;
  return heights.find((h) => h >= height - 1e-9 * (1 + height)) ?? height;
}

/** Shape, turns and sides that a blank has on a cloth; empty when it may not be cut from it. */
export function choicesOn(blank: JobBlank, clothId: string) {
  const choice = blank.cloths ? blank.cloths.find((c) => (typeof c === 'string' ? c : c.id) === clothId) : clothId;
  if (choice === undefined) return [];
  const shapes = blank.shapes ?? [{ outline: blank.outline!, turns: blank.turns, mirror: blank.mirror }];
  return shapes.map((shape, index) => {
    const own: Exclude<ClothChoice, string> | undefined = typeof choice === 'string' ? undefined : choice;
    const turns: Turns = own?.turns ?? shape.turns ?? [0];
    return { index, outline: shape.outline, turns, mirror: own?.mirror ?? shape.mirror ?? false };
  });
}

function blankVariants(blank: JobBlank, index: number, clothId: string, along: boolean): Variant[] {
  const kept: Variant[] = [];
  for (const { index: shape, outline, turns, mirror } of choicesOn(blank, clothId)) {
    for (const degrees of turnSet(outline, turns)) {
      for (const over of mirror ? [false, true] : [false]) {
        // Strips that run along the length are planned as if the cloth lay a quarter turn round.
        const v = makeVariant(
          index,
          shape,
          outline,
          along ? quarterBack(degrees, over) : degrees,
          over,
          turns !== 'any',
        );
        if (!kept.some((k) => sameVariant(k, v))) kept.push(v);
      }
    }
  }
  return kept;
}

/** Turning the cloth by −90° after a reflection is turning by +90° before it. */
function quarterBack(degrees: number, over: boolean): number {
  return (degrees + (over ? 90 : 270)) % 360;
}

export function distinctAscending(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((v, i) => i === 0 || v - sorted[i - 1]! > 1e-9 * (1 + v));
}
