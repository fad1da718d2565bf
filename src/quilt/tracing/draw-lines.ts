/** Clicks that draw: corners set one after the other, until the way round a patch is closed. */
import { outlineFault } from '../../shape/outline-fault.ts';
import { distance, type Point } from '../../shape/point.ts';
import { edgeOfLine, middleOf, nearestOn, outlineOfSteps } from './line-shape.ts';
import type { Snap } from './snap.ts';
import { type Line, lastCorner, lineOf, type Step, stepEnd, stepStart, type Tracing, withUnits } from './tracing.ts';

/** A changed tracing, or why it is not changed, in words for a person. */
export type Traced = { readonly tracing: Tracing } | { readonly fault: string };

export interface NewPatch {
  readonly unit: string;
  readonly role: string;
}

/**
 * Sets the next corner of the way round a patch. On a corner that is there it goes to that; on a line it splits it for all
 * patches along it. Back at the first corner the patch is closed.
 * @param through a place that the line to this corner passes on an arc
 */
export function placeCorner(tracing: Tracing, snap: Snap, patch: NewPatch, through?: Point): Traced {
  const { tracing: withCorner, corner } = cornerAt(tracing, snap);
  const last = lastCorner(withCorner);
  if (last === null) {
    return { tracing: { ...withCorner, begun: { start: corner, steps: [] } } };
  }
  const begun = withCorner.begun!;
  if (corner === last) {
    return { fault: 'The last corner is here already.' };
  }
  const passed = begun.steps.some((step) => stepEnd(withCorner, step) === corner);
  if (passed) {
    return { fault: 'This corner is on the way already. Go on to another, or close the patch at its first corner.' };
  }
  const { tracing: joined, step } = join(withCorner, last, corner, through);
  const steps = [...begun.steps, step];
  const going: Tracing = { ...joined, begun: { start: begun.start, steps } };
  return corner === begun.start ? closed(going, steps, patch) : { tracing: going };
}

/** Closes the way that is begun, straight back to its first corner. */
export function closePatch(tracing: Tracing, patch: NewPatch, through?: Point): Traced {
  const { begun } = tracing;
  if (begun === undefined || begun.steps.length === 0) {
    return { fault: 'Set at least two corners before the patch is closed.' };
  }
  const { tracing: joined, step } = join(tracing, lastCorner(tracing)!, begun.start, through);
  return closed(joined, [...begun.steps, step], patch);
}

function closed(tracing: Tracing, steps: readonly Step[], patch: NewPatch): Traced {
  if (new Set(steps.map((step) => step.line)).size < steps.length) {
    return {
      fault: 'There and back along one line encloses nothing. Set another corner first, or bend one of two lines.',
    };
  }
  const fault = outlineFault(outlineOfSteps(tracing, steps));
  if (fault !== null) {
    return { fault: `This cannot be a patch: ${fault}.` };
  }
  const { begun: _, ...rest } = tracing;
  return {
    tracing: withUnits({
      ...rest,
      patches: [...tracing.patches, { id: tracing.next, steps, ...patch }],
      next: tracing.next + 1,
    }),
  };
}

/** The corner that a click means, made if it is not there. */
export function cornerAt(tracing: Tracing, snap: Snap): { readonly tracing: Tracing; readonly corner: number } {
  switch (snap.kind) {
    case 'corner':
      return { tracing, corner: snap.corner };
    case 'line':
    case 'middle':
      return splitLine(tracing, snap.line, snap.at);
    default: {
      const corner = tracing.next;
      return {
        tracing: { ...tracing, corners: [...tracing.corners, { id: corner, at: snap.at }], next: corner + 1 },
        corner,
      };
    }
  }
}

/** A step between two corners: along a line that is there, or along a new one. An arc asked for is always a new line. */
function join(
  tracing: Tracing,
  from: number,
  to: number,
  through?: Point,
): { readonly tracing: Tracing; readonly step: Step } {
  const used = new Set(tracing.begun?.steps.map((step) => step.line));
  const there = tracing.lines.find(
    (line) => !used.has(line.id) && ((line.from === from && line.to === to) || (line.from === to && line.to === from)),
  );
  if (there !== undefined && through === undefined) {
    return { tracing, step: { line: there.id, backward: there.from !== from } };
  }
  const line: Line = through === undefined ? { id: tracing.next, from, to } : { id: tracing.next, from, to, through };
  return {
    tracing: { ...tracing, lines: [...tracing.lines, line], next: tracing.next + 1 },
    step: { line: line.id, backward: false },
  };
}

/** Puts a corner on a line; both halves keep to the line's arc, and every patch along it goes by way of the new corner. */
export function splitLine(
  tracing: Tracing,
  id: number,
  near: Point,
): { readonly tracing: Tracing; readonly corner: number } {
  const line = lineOf(tracing, id);
  const edge = edgeOfLine(tracing, line);
  const at = nearestOn(edge, near);
  const end = tracing.corners.find(
    (corner) => (corner.id === line.from || corner.id === line.to) && distance(corner.at, at) <= 1e-9,
  );
  if (end !== undefined) {
    return { tracing, corner: end.id };
  }
  const corner = tracing.next;
  const half = (number: number, from: number, to: number, ends: readonly [Point, Point]): Line => {
    if (edge.arc === undefined) return { id: number, from, to };
    const { large: _, ...arc } = edge.arc;
    const part = { from: ends[0], to: ends[1], arc };
    // Of a large arc one half may be large still: the middle of the whole lies on that half.
    const small = middleOf(part);
    const large = middleOf({ ...part, arc: { ...arc, large: true } });
    const onWhole = distance(nearestOn(edge, small), small) <= distance(nearestOn(edge, large), large);
    return { id: number, from, to, through: onWhole ? small : large };
  };
  const first = half(corner + 1, line.from, corner, [edge.from, at]);
  const second = half(corner + 2, corner, line.to, [at, edge.to]);
  const forward: readonly Step[] = [
    { line: first.id, backward: false },
    { line: second.id, backward: false },
  ];
  const backward: readonly Step[] = [
    { line: second.id, backward: true },
    { line: first.id, backward: true },
  ];
  const split = (steps: readonly Step[]): readonly Step[] =>
    steps.flatMap((step) => (step.line !== id ? [step] : step.backward ? backward : forward));
  const { begun } = tracing;
  return {
    corner,
    tracing: {
      ...tracing,
      corners: [...tracing.corners, { id: corner, at }],
      lines: tracing.lines.flatMap((each) => (each.id === id ? [first, second] : [each])),
      patches: tracing.patches.map((patch) => ({ ...patch, steps: split(patch.steps) })),
      ...(begun === undefined ? {} : { begun: { ...begun, steps: split(begun.steps) } }),
      next: corner + 3,
    },
  };
}

/** Gives up the way that is begun, with the lines and corners that only it had. */
export function dropBegun(tracing: Tracing): Tracing {
  const { begun, ...rest } = tracing;
  return begun === undefined ? tracing : tidied(rest, begun.steps, [begun.start]);
}

/** Without those of the lines of some steps, and of their corners, that no patch needs. */
export function tidied(tracing: Tracing, steps: readonly Step[], also: readonly number[] = []): Tracing {
  const ends = new Set([...also, ...steps.flatMap((step) => [stepStart(tracing, step), stepEnd(tracing, step)])]);
  const needed = new Set(
    [...tracing.patches, ...(tracing.begun === undefined ? [] : [tracing.begun])].flatMap((each) =>
      each.steps.map((step) => step.line),
    ),
  );
  const going = new Set(steps.map((step) => step.line).filter((line) => !needed.has(line)));
  const lines = tracing.lines.filter((line) => !going.has(line.id));
  const held = new Set([
    ...lines.flatMap((line) => [line.from, line.to]),
    ...(tracing.begun === undefined ? [] : [tracing.begun.start]),
  ]);
  return {
    ...tracing,
    lines,
    corners: tracing.corners.filter((corner) => !ends.has(corner.id) || held.has(corner.id)),
  };
}
