/** The shapes of a walked SVG as outlines in inches, and its bare lines. */
import type { Edge, Outline, OutlineEntry } from '../../shape/outline.ts';
import { outlineArea } from '../../shape/outline-measures.ts';
import { distance, type Point } from '../../shape/point.ts';
import { isInside } from '../../shape/polygon.ts';
import { apply, followedBy, type Matrix } from './matrix.ts';
import { type TracedRun, traceRun } from './trace-run.ts';
import type { SvgShape, WalkedSvg } from './walk-svg.ts';

/** A closed shape, or one closed run of a shape that has several. */
export interface TracedShape {
  readonly shape: SvgShape;
  /** In inches, y up, either way round. */
  readonly outline: Outline;
  /** Whether it is painted, not only drawn round. */
  readonly filled: boolean;
}

export interface Traced {
  readonly closed: readonly TracedShape[];
  /** Edges of lines that enclose nothing, in inches. */
  readonly lines: readonly Edge[];
  /** The middle of what is named as the centre; null where nothing is. */
  readonly centre: Point | null;
  readonly words: readonly { readonly text: string; readonly at: Point }[];
  /** How many curves are now straight edges. */
  readonly flattened: number;
  readonly faults: readonly string[];
}

const CENTRE_NAME = /^(block )?(centre|center)( mark)?$/i;
/** A part of the drawing's size: what is named so and larger is a patch. */
const LARGEST_MARK = 0.03;
/** Ends of a run this near each other close it, inches. */
const CLOSED_WITHIN = 0.002;

/** @param toInches from the outermost user units to inches, y up */
export function traceShapes(walked: WalkedSvg, toInches: Matrix): Traced {
  const closed: TracedShape[] = [];
  const lines: Edge[] = [];
  const faults: string[] = [];
  let flattened = 0;
  const all = walked.shapes.map((shape) => ({
    shape,
    runs: shape.runs.map((run) => traceRun(run, followedBy(shape.matrix, toInches))),
  }));
  const mark = centreMark(all);
  for (const { shape, runs } of all) {
    if (shape === mark?.shape) continue;
    const { fill, stroke } = shape.look;
    if (fill !== 'none' && hasHole(runs)) {
      faults.push(
        `The shape in line ${shape.line} has a hole, and is left out. Cut it open, so that each part is a patch by itself.`,
      );
      continue;
    }
    for (const run of runs) {
      if (typeof run === 'string') {
        faults.push(`The shape in line ${shape.line} ${run}, and is left out.`);
        continue;
      }
      flattened += run.flattened;
      const { edges } = run;
      const first = edges[0];
      if (first === undefined) continue;
      const gap = distance(first.from, edges.at(-1)!.to);
      const meets = run.closed || gap <= CLOSED_WITHIN;
      if (meets || (fill !== 'none' && edges.length > 1)) {
        const ring = meets ? edges : [...edges, { from: edges.at(-1)!.to, to: first.from }];
        const outline = outlineOf(ring);
        if (outline !== null) {
          closed.push({ shape, outline, filled: fill !== 'none' });
        } else if (ring.length > 3) {
          faults.push(`The shape in line ${shape.line} encloses no area, or crosses itself, and is left out.`);
        }
      } else if (stroke !== 'none' || fill !== 'none') {
        lines.push(...edges);
      }
    }
  }
  const words = walked.words.map(({ text, at, matrix }) => ({ text, at: apply(followedBy(matrix, toInches), at) }));
  return {
    closed,
    lines,
    centre: mark?.middle ?? null,
    words,
    flattened,
    faults,
  };
}

const MOST_RUNS = 30;

/** Whether one closed run of a shape lies within another. */
function hasHole(runs: readonly (TracedRun | string)[]): boolean {
  const rings = runs.flatMap((run) =>
    typeof run === 'string' || run.edges.length < 2 ? [] : [run.edges.map(({ from }) => from)],
  );
  if (rings.length < 2 || rings.length > MOST_RUNS) return false;
  return rings.some((inner) =>
    rings.some((outer) => outer !== inner && outer.length > 2 && inner.every(([x, y]) => isInside(outer, x, y))),
  );
}

interface RunsOfShape {
  readonly shape: SvgShape;
  readonly runs: readonly (TracedRun | string)[];
}

/** The last small shape that is named as the centre. */
function centreMark(all: readonly RunsOfShape[]): { readonly shape: SvgShape; readonly middle: Point } | null {
  const named = all.filter(({ shape: { names } }) =>
    [names.id, names.title, names.label].some((name) => CENTRE_NAME.test(name)),
  );
  if (named.length === 0) return null;
  const whole = boxOf(all);
  const marks = named.flatMap((each) => {
    const box = boxOf([each]);
    const small = Math.max(box.width, box.height) <= LARGEST_MARK * Math.max(whole.width, whole.height);
    return small ? [{ shape: each.shape, middle: box.middle }] : [];
  });
  return marks.at(-1) ?? null;
}

/** By the ends of edges. */
function boxOf(all: readonly RunsOfShape[]): { width: number; height: number; middle: Point } {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const run of all.flatMap(({ runs }) => runs)) {
    for (const { from, to } of typeof run === 'string' ? [] : run.edges) {
      left = Math.min(left, from[0], to[0]);
      right = Math.max(right, from[0], to[0]);
      bottom = Math.min(bottom, from[1], to[1]);
      top = Math.max(top, from[1], to[1]);
    }
  }
  return { width: right - left, height: top - bottom, middle: [(left + right) / 2, (bottom + top) / 2] };
}

/** null where the edges enclose nothing. */
export function outlineOf(ring: readonly Edge[]): Outline | null {
  const outline = ring.flatMap(({ from, arc }): readonly OutlineEntry[] =>
    arc === undefined ? [from] : [from, { arc }],
  );
  if (ring.length < 2 || (ring.length === 2 && ring.every((edge) => edge.arc === undefined))) return null;
  try {
    return Math.abs(outlineArea(outline)) > 1e-9 ? outline : null;
  } catch {
    return null;
  }
}
