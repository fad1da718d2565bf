/**
 * One step at the machine: may a patch be added to those sewn before it? It must meet them along one straight line, lie wholly
 * on one side of it, and the paper must fold back along it. Whatever asks about sewing order asks here.
 */
import { cross, dot, type Point, subtract } from '../shape/point.ts';
import { foldOf, joined, reachesAcross, type Stretch, sideOf } from './paper-fold.ts';
import { alongLine, isOn, lineThrough, type SeamLine, turnedRound } from './seam-line.ts';
import type { SewingPatch, SewingUnit, SharedRun } from './sewing-unit.ts';

export interface Seam {
  /** Directed so that the patch sewn lies to its left; from the first place that is sewn to the last. */
  readonly line: SeamLine;
  /** Index of the patch's edge that has the most of it. */
  readonly edge: number;
  /** The patches that the new one is sewn to, by index. */
  readonly against: readonly number[];
}

export type StepFault =
  /** It meets none of those before. */
  | { readonly kind: 'apart' }
  /** It meets some of them along a curve. */
  | { readonly kind: 'curved'; readonly against: readonly number[]; readonly edge: number }
  /** It meets them along more than one line. */
  | { readonly kind: 'lines'; readonly against: readonly number[]; readonly edge: number; readonly lines: number }
  /** It lies on both sides of its own seam's line. */
  | { readonly kind: 'both-sides'; readonly against: readonly number[]; readonly edge: number }
  /** Those before that lie across the line, where the paper would have to be folded. */
  | { readonly kind: 'across'; readonly across: readonly number[]; readonly edge: number }
  /** Said of a unit that cannot be sewn: without it the others fall apart into pieces, each named by its first patch. */
  | { readonly kind: 'parts'; readonly pieces: readonly number[]; readonly edge: number };

export type SewingStep = { readonly seam: Seam } | { readonly fault: StepFault };

/** A curve drawn as many short lines turns by less than this from one to the next. */
const SMOOTH_DEGREES = 20;

/** @param before for each patch of the unit whether it is sewn already */
export function stepOnto(unit: SewingUnit, index: number, before: readonly boolean[]): SewingStep {
  const patch = unit.patches[index]!;
  const runs = patch.shared.filter((run) => before[run.with]);
  if (runs.length === 0) {
    return { fault: { kind: 'apart' } };
  }
  const against = [...new Set(runs.map((run) => run.with))];
  const edge = edgeWithMost(runs);
  if (runs.some((run) => run.curved)) {
    return { fault: { kind: 'curved', against, edge } };
  }
  const line = directed(lineThrough(runs.flatMap((run) => [run.from, run.to])), runs);
  if (!runs.every((run) => isOn(line, run.from, unit.tolerance) && isOn(line, run.to, unit.tolerance))) {
    const lines = linesOf(runs, unit.tolerance);
    const curved = lines >= 3 && isSmooth(patch, runs);
    return { fault: curved ? { kind: 'curved', against, edge } : { kind: 'lines', against, edge, lines } };
  }
  if (patch.polygon.some((corner) => sideOf(line, corner, unit.tolerance) < 0)) {
    return { fault: { kind: 'both-sides', against, edge } };
  }
  const across = patchesAcross(unit, line, runs, before);
  return across.length > 0 ? { fault: { kind: 'across', across, edge } } : { seam: { line, edge, against } };
}

/** Those sewn before that would be caught in the fold. */
function patchesAcross(
  unit: SewingUnit,
  line: SeamLine,
  runs: readonly SharedRun[],
  before: readonly boolean[],
): readonly number[] {
  const crossing = unit.patches.flatMap((patch, i) =>
    before[i] && patch.polygon.some((corner) => sideOf(line, corner, unit.tolerance) > 0) ? [i] : [],
  );
  if (crossing.length === 0) {
    return [];
  }
  const seam = joined(
    runs.map((run) => stretchOf(line, run)),
    unit.tolerance,
  );
  const paper = unit.patches.map((patch) => patch.polygon);
  const fold = foldOf(line, paper, seam, unit.tolerance);
  return crossing.filter((i) => reachesAcross(paper[i]!, line, fold, unit.tolerance));
}

function stretchOf(line: SeamLine, run: SharedRun): Stretch {
  const [a, b] = [alongLine(line, run.from), alongLine(line, run.to)];
  return { from: Math.min(a, b), to: Math.max(a, b) };
}

/** With the patch to its left, as its runs have it. */
function directed(line: SeamLine, runs: readonly SharedRun[]): SeamLine {
  const run = longest(runs);
  return dot(subtract(run.to, run.from), line.along) < 0 ? turnedRound(line) : line;
}

const sizeOf = (run: SharedRun): number => Math.hypot(...subtract(run.to, run.from));
const longest = (runs: readonly SharedRun[]): SharedRun =>
  runs.reduce((best, run) => (sizeOf(run) > sizeOf(best) ? run : best));

function edgeWithMost(runs: readonly SharedRun[]): number {
  const sizes = new Map<number, number>();
  for (const run of runs) {
    sizes.set(run.edge, (sizes.get(run.edge) ?? 0) + sizeOf(run));
  }
  return [...sizes].reduce((best, each) => (each[1] > best[1] + 1e-9 ? each : best))[0];
}

/** How many straight lines some runs lie along that do not lie along one. */
function linesOf(runs: readonly SharedRun[], tolerance: number): number {
  const lines: SeamLine[] = [];
  for (const run of [...runs].sort((a, b) => sizeOf(b) - sizeOf(a))) {
    if (!lines.some((line) => isOn(line, run.from, tolerance) && isOn(line, run.to, tolerance))) {
      lines.push(lineThrough([run.from, run.to]));
    }
  }
  return Math.max(2, lines.length);
}

/** Whether the edges shared follow one another in a gentle bend: a curve, drawn as many short lines. */
function isSmooth(patch: SewingPatch, runs: readonly SharedRun[]): boolean {
  const edges = [...new Set(runs.map((run) => run.edge))].sort((a, b) => a - b);
  const count = patch.edges.length;
  const breaks = edges.filter((edge) => !edges.includes((edge + 1) % count));
  const bends = edges
    .filter((edge) => edges.includes((edge + 1) % count))
    .map((edge) => bend(patch.edges[edge]!, patch.edges[(edge + 1) % count]!));
  return breaks.length <= 1 && bends.every((degrees) => Math.abs(degrees) < SMOOTH_DEGREES);
}

function bend(one: { from: Point; to: Point }, next: { from: Point; to: Point }): number {
  const [a, b] = [subtract(one.to, one.from), subtract(next.to, next.from)];
  return (Math.atan2(cross(a, b), dot(a, b)) * 180) / Math.PI;
}
