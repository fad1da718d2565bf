/** The shapes of a walked SVG as outlines in inches, and its bare lines. */
import type { Edge, Outline, OutlineEntry } from '../../shape/outline.ts';
import { outlineArea } from '../../shape/outline-measures.ts';
import { distance, type Point } from '../../shape/point.ts';
import { apply, followedBy, type Matrix } from './matrix.ts';
import { traceRun } from './trace-run.ts';
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

const CENTRE_NAME = /^(block )?(centre|center|middle)$/i;
/** Ends of a run this near each other close it, inches. */
const CLOSED_WITHIN = 0.002;

/** @param toInches from the outermost user units to inches, y up */
export function traceShapes(walked: WalkedSvg, toInches: Matrix): Traced {
  const closed: TracedShape[] = [];
  const lines: Edge[] = [];
  const faults: string[] = [];
  let centre: Point | null = null;
  let flattened = 0;
  for (const shape of walked.shapes) {
    const runs = shape.runs.map((run) => traceRun(run, followedBy(shape.matrix, toInches)));
    if (isCentre(shape)) {
      centre = middleOf(runs.flatMap((run) => (typeof run === 'string' ? [] : run.edges))) ?? centre;
      continue;
    }
    const { fill, stroke } = shape.look;
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
        if (outline !== null) closed.push({ shape, outline, filled: fill !== 'none' });
      } else if (stroke !== 'none' || fill !== 'none') {
        lines.push(...edges);
      }
    }
  }
  const words = walked.words.map(({ text, at, matrix }) => ({ text, at: apply(followedBy(matrix, toInches), at) }));
  const marked = words.find(({ text }) => CENTRE_NAME.test(text));
  return {
    closed,
    lines,
    centre: centre ?? marked?.at ?? null,
    words: words.filter((each) => each !== marked),
    flattened,
    faults,
  };
}

const isCentre = ({ names }: SvgShape): boolean =>
  [names.id, names.title, names.label].some((name) => CENTRE_NAME.test(name));

function middleOf(edges: readonly Edge[]): Point | null {
  if (edges.length === 0) return null;
  const ends = edges.slice(0, 1_000).flatMap(({ from, to }) => [from, to]);
  const middle = (axis: 0 | 1): number => {
    const values = ends.map((end) => end[axis]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  return [middle(0), middle(1)];
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
