/**
 * A drawing made over a picture, in the true plane of the page: corners, lines between them, patches that lines enclose. Neighbours
 * share corners and lines, so that what is moved is moved for both. Plain data, never changed in place.
 */
import type { Point } from '../../shape/point.ts';

export interface Tracing {
  readonly corners: readonly Corner[];
  readonly lines: readonly Line[];
  /** In the order in which they were closed. */
  readonly patches: readonly TracedPatch[];
  readonly units: readonly TracedUnit[];
  /** The block's centre, once it is marked. */
  readonly centre?: Point;
  /** The way round a patch as far as it has been clicked: the corner it began at and the lines since. */
  readonly begun?: { readonly start: number; readonly steps: readonly Step[] };
  /** The next free id of a corner, a line or a patch. */
  readonly next: number;
}

export interface Corner {
  readonly id: number;
  readonly at: Point;
}

export interface Line {
  readonly id: number;
  readonly from: number;
  readonly to: number;
  /** A place on its way; it is then the circular arc through that. Absent: straight. */
  readonly through?: Point;
}

/** A line as it is walked. */
export interface Step {
  readonly line: number;
  /** From its end to its beginning. */
  readonly backward: boolean;
}

export interface TracedPatch {
  readonly id: number;
  /** All round, each step beginning where the last one ended. */
  readonly steps: readonly Step[];
  /** The letter of its unit. */
  readonly unit: string;
  /** The name of its role. */
  readonly role: string;
  /** Its place in the sewing order, where she has typed one. */
  readonly number?: number;
}

export interface TracedUnit {
  /** A letter. */
  readonly id: string;
  /** How many times it stands about the centre. */
  readonly count: number;
  readonly mirrored: 'no' | 'also' | 'alternate';
}

export const EMPTY_TRACING: Tracing = {
  corners: [],
  lines: [],
  patches: [],
  units: [{ id: 'A', count: 1, mirrored: 'no' }],
  next: 1,
};

/** @throws RangeError where the tracing has no such corner */
export function cornerOf(tracing: Tracing, id: number): Corner {
  const corner = tracing.corners.find((each) => each.id === id);
  if (corner === undefined) throw new RangeError(`the tracing has no corner ${id}`);
  return corner;
}

/** @throws RangeError where the tracing has no such line */
export function lineOf(tracing: Tracing, id: number): Line {
  const line = tracing.lines.find((each) => each.id === id);
  if (line === undefined) throw new RangeError(`the tracing has no line ${id}`);
  return line;
}

/** The corner at which a step ends. */
export function stepEnd(tracing: Tracing, step: Step): number {
  const line = lineOf(tracing, step.line);
  return step.backward ? line.from : line.to;
}

/** The corner at which a step begins. */
export const stepStart = (tracing: Tracing, { line, backward }: Step): number =>
  stepEnd(tracing, { line, backward: !backward });

/** The corners of a patch, in the order of its steps. */
export const cornersOfPatch = (tracing: Tracing, patch: TracedPatch): readonly Corner[] =>
  patch.steps.map((step) => cornerOf(tracing, stepStart(tracing, step)));

/** The last corner clicked on the way round a patch, or null where none is begun. */
export function lastCorner(tracing: Tracing): number | null {
  const { begun } = tracing;
  if (begun === undefined) return null;
  const last = begun.steps.at(-1);
  return last === undefined ? begun.start : stepEnd(tracing, last);
}

/** With a unit for each letter that patches name, in the order of the letters. */
export function withUnits(tracing: Tracing): Tracing {
  const letters = [
    ...new Set([...tracing.units.map((unit) => unit.id), ...tracing.patches.map((patch) => patch.unit)]),
  ].sort();
  const units = letters.map(
    (id): TracedUnit => tracing.units.find((unit) => unit.id === id) ?? { id, count: 1, mirrored: 'no' },
  );
  return { ...tracing, units };
}
