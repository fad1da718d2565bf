/** Changes to what is drawn: corners moved, lines bent, things taken away. */
import { bulgeOfRadius, middleOfArc, sagittaOf } from '../../shape/arc-through.ts';
import { outlineFault } from '../../shape/outline-fault.ts';
import { distance, dot, type Point, scale, subtract } from '../../shape/point.ts';
import { type Traced, tidied } from './draw-lines.ts';
import { bulgeOf, outlineOfSteps } from './line-shape.ts';
import type { Snap } from './snap.ts';
import {
  cornerOf,
  type Line,
  lineOf,
  type Step,
  stepEnd,
  stepStart,
  type TracedPatch,
  type TracedUnit,
  type Tracing,
  withUnits,
} from './tracing.ts';

/** Moves a corner, and with it every line that ends there. */
export function moveCorner(tracing: Tracing, id: number, to: Point): Traced {
  cornerOf(tracing, id);
  return sound({
    ...tracing,
    corners: tracing.corners.map((corner) => (corner.id === id ? { id, at: to } : corner)),
  });
}

/** Moves a corner to what was snapped to: onto another corner the two become one. */
export function dropCorner(tracing: Tracing, id: number, snap: Snap): Traced {
  return snap.kind === 'corner' && snap.corner !== id
    ? mergeCorners(tracing, id, snap.corner)
    : moveCorner(tracing, id, snap.at);
}

function mergeCorners(tracing: Tracing, gone: number, kept: number): Traced {
  const joined = tracing.lines.some(
    (line) => (line.from === gone && line.to === kept) || (line.from === kept && line.to === gone),
  );
  if (joined || tracing.begun !== undefined) {
    return { fault: 'Two corners at the ends of one line cannot become one; delete one of them instead.' };
  }
  const rename = (id: number): number => (id === gone ? kept : id);
  const renamed = tracing.lines.map((line) => ({ ...line, from: rename(line.from), to: rename(line.to) }));
  // Straight lines that now run between the same two corners are one line.
  const twin = new Map<number, { readonly line: number; readonly turned: boolean }>();
  const lines: Line[] = [];
  for (const line of renamed) {
    const same = lines.find(
      (each) =>
        each.through === undefined &&
        line.through === undefined &&
        ((each.from === line.from && each.to === line.to) || (each.from === line.to && each.to === line.from)),
    );
    if (same === undefined) lines.push(line);
    else twin.set(line.id, { line: same.id, turned: same.from !== line.from });
  }
  const steps = (list: readonly Step[]): readonly Step[] =>
    list.map((step) => {
      const other = twin.get(step.line);
      return other === undefined ? step : { line: other.line, backward: step.backward !== other.turned };
    });
  return sound({
    ...tracing,
    corners: tracing.corners.filter((corner) => corner.id !== gone),
    lines,
    patches: tracing.patches.map((patch) => ({ ...patch, steps: steps(patch.steps) })),
  });
}

/** Makes a line the arc through a place; on the line's own chord it becomes straight. */
export function bendLine(tracing: Tracing, id: number, through: Point | null): Traced {
  const { through: _, ...straight } = lineOf(tracing, id);
  const bent: Line = through === null ? straight : { ...straight, through };
  const changed: Tracing = { ...tracing, lines: tracing.lines.map((line) => (line.id === id ? bent : line)) };
  const flat = through !== null && bulgeOf(changed, bent) === 0;
  return flat ? bendLine(tracing, id, null) : sound(changed);
}

/** Which way an arc goes that is told by a number alone: as the line bends now, else away from the centre. */
function sideOf(tracing: Tracing, line: Line): 1 | -1 {
  const bulge = bulgeOf(tracing, line);
  if (bulge !== 0) return bulge > 0 ? 1 : -1;
  const from = cornerOf(tracing, line.from).at;
  const to = cornerOf(tracing, line.to).at;
  const along = subtract(to, from);
  const away = subtract(scale([from[0] + to[0], from[1] + to[1]], 0.5), tracing.centre ?? [0, 0]);
  return dot([along[1], -along[0]], away) >= 0 ? 1 : -1;
}

/** Bends a line by how far its middle stands off the chord; negative to the other side, 0 straight. */
export function bendBySagitta(tracing: Tracing, id: number, sagitta: number): Traced {
  const line = lineOf(tracing, id);
  const from = cornerOf(tracing, line.from).at;
  const to = cornerOf(tracing, line.to).at;
  const bulge = (2 * sagitta) / distance(from, to);
  return bendLine(tracing, id, sagitta === 0 ? null : middleOfArc(from, to, bulge * sideOf(tracing, line)));
}

/** Bends a line to the shorter arc of a radius; negative to the other side. */
export function bendByRadius(tracing: Tracing, id: number, radius: number): Traced {
  const line = lineOf(tracing, id);
  const from = cornerOf(tracing, line.from).at;
  const to = cornerOf(tracing, line.to).at;
  try {
    const bulge = bulgeOfRadius(from, to, Math.abs(radius));
    return bendBySagitta(tracing, id, Math.sign(radius) * sagittaOf(from, to, bulge));
  } catch (error) {
    return { fault: `${(error as Error).message}.` };
  }
}

/** Takes a patch away, with the lines that only it had. */
export function deletePatch(tracing: Tracing, id: number): Tracing {
  const gone = tracing.patches.find((patch) => patch.id === id);
  if (gone === undefined) return tracing;
  return tidied({ ...tracing, patches: tracing.patches.filter((patch) => patch.id !== id) }, gone.steps);
}

/** Takes a line away, and the patches along it. */
export function deleteLine(tracing: Tracing, id: number): Tracing {
  const along = tracing.patches.filter((patch) => patch.steps.some((step) => step.line === id));
  const without = along.reduce(
    (rest, patch) => deletePatch(rest, patch.id),
    dropped(tracing, (step) => step.line === id),
  );
  const line = without.lines.find((each) => each.id === id);
  return line === undefined ? without : tidied(without, [{ line: id, backward: false }]);
}

/** Takes a corner away. Between two lines alone they become one straight line; else all its lines go. */
export function deleteCorner(tracing: Tracing, id: number): Tracing {
  const at = tracing.lines.filter((line) => line.from === id || line.to === id);
  const [one, other] = at;
  if (at.length === 2 && tracing.begun === undefined) {
    const joined = joinLines(tracing, id, one!, other!);
    if ('tracing' in joined) return joined.tracing;
  }
  const without = at.reduce(
    (rest, line) => deleteLine(rest, line.id),
    dropped(tracing, () => tracing.begun?.start === id),
  );
  return { ...without, corners: without.corners.filter((corner) => corner.id !== id) };
}

function joinLines(tracing: Tracing, corner: number, one: Line, other: Line): Traced {
  const from = one.from === corner ? one.to : one.from;
  const to = other.from === corner ? other.to : other.from;
  const line: Line = { id: tracing.next, from, to };
  const steps = (list: readonly Step[]): readonly Step[] =>
    list.flatMap((step) => {
      if (step.line === one.id) return [{ line: line.id, backward: stepEnd(tracing, step) === from }];
      return step.line === other.id ? [] : [step];
    });
  return sound({
    ...tracing,
    corners: tracing.corners.filter((each) => each.id !== corner),
    lines: [...tracing.lines.filter((each) => each !== one && each !== other), line],
    patches: tracing.patches.map((patch) => ({ ...patch, steps: steps(patch.steps) })),
    next: tracing.next + 1,
  });
}

function dropped(tracing: Tracing, when: (step: Step) => boolean): Tracing {
  const { begun, ...rest } = tracing;
  const hit =
    begun !== undefined &&
    (begun.steps.some(when) || (begun.steps.length === 0 && when({ line: -1, backward: false })));
  return hit ? tidied(rest, begun.steps, [begun.start]) : tracing;
}

export interface PatchWords {
  readonly unit?: string;
  readonly role?: string;
  /** null: found for her. */
  readonly number?: number | null;
}

/** Changes what is said of a patch. A unit that no other patch had is added. */
export function describePatch(tracing: Tracing, id: number, words: PatchWords): Tracing {
  const patches = tracing.patches.map((patch): TracedPatch => {
    if (patch.id !== id) return patch;
    const { number: former, ...rest } = patch;
    const { number = former ?? null, ...others } = words;
    return { ...rest, ...others, ...(number === null ? {} : { number }) };
  });
  return withUnits({ ...tracing, patches });
}

/** Changes what is said of a unit. */
export function describeUnit(tracing: Tracing, id: string, words: Partial<Omit<TracedUnit, 'id'>>): Tracing {
  return { ...tracing, units: tracing.units.map((unit) => (unit.id === id ? { ...unit, ...words } : unit)) };
}

/** Everything moved by one map of the plane that keeps lines straight: a new straightening of the picture. */
export function moveTracing(tracing: Tracing, move: (place: Point) => Point): Tracing {
  return {
    ...tracing,
    corners: tracing.corners.map((corner) => ({ ...corner, at: move(corner.at) })),
    lines: tracing.lines.map((line) => (line.through === undefined ? line : { ...line, through: move(line.through) })),
    ...(tracing.centre === undefined ? {} : { centre: move(tracing.centre) }),
  };
}

function sound(tracing: Tracing): Traced {
  for (const patch of tracing.patches) {
    const twice = new Set(patch.steps.map((step) => step.line)).size < patch.steps.length;
    const fault = twice
      ? 'it would run along one line there and back'
      : outlineFault(outlineOfSteps(tracing, patch.steps));
    if (fault !== null) return { fault: `A patch would be spoilt: ${fault}.` };
  }
  return { tracing };
}

/** The corner at the beginning of each step, for those who only want ids. */
export const cornerIds = (tracing: Tracing, steps: readonly Step[]): readonly number[] =>
  steps.map((step) => stepStart(tracing, step));
