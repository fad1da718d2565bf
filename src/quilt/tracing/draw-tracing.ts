/** From a tracing to a block. */
import { isArc, moveOutline, type Outline, type OutlineEntry } from '../../shape/outline.ts';
import { outlineFault } from '../../shape/outline-fault.ts';
import { outlineArea, outlineBox } from '../../shape/outline-measures.ts';
import { add, distance, type Point, turn } from '../../shape/point.ts';
import type { DrawnBlock, RoleSeed } from '../drawn-block.ts';
import type { Patch, Unit } from '../quilt.ts';
import type { Evened } from './even-copies.ts';
import { outlineOfSteps } from './line-shape.ts';
import { outlineOf } from './patch-outline.ts';
import { RoleList } from './role-list.ts';
import { sectorOf } from './sector.ts';
import { evenUnit, settle } from './settle.ts';
import type { TracedPatch, TracedUnit, Tracing } from './tracing.ts';

export interface TracingOptions {
  readonly name: string;
  /** Roles that the quilt has; a patch whose role is named like one of them takes that. */
  readonly known: readonly RoleSeed[];
  /** How far a click may be off: places nearer than this to a copy of another are the same. In the tracing's unit. */
  readonly within: number;
  /** How patches are sewn on paper; without it they are numbered as they were closed. */
  readonly sewing?: {
    /** The index of the patch sewn first, second, …; null where there is no order. */
    readonly find: (outlines: readonly Outline[]) => readonly number[] | null;
    /** Why outlines cannot be sewn one after the other as they stand, in words; null where they can. */
    readonly check: (outlines: readonly Outline[], names: readonly string[]) => string | null;
  };
}

export type DrawnTracing =
  | {
      readonly block: DrawnBlock;
      /** From the id of a traced patch to its number in its unit. Patches that are copies of others have none. */
      readonly numbers: ReadonlyMap<number, number>;
      /** The farthest that a corner was moved, onto a straight seam or to meet its copies. */
      readonly moved: number;
      /** Units for which no sewing order was found. */
      readonly unsewn: readonly string[];
    }
  | { readonly faults: readonly string[] };

/** The block that is traced, about its centre, or why there is none yet, in words for a person. */
export function drawTracing(tracing: Tracing, options: TracingOptions): DrawnTracing {
  const units = tracing.units.filter((unit) => tracing.patches.some((patch) => patch.unit === unit.id));
  if (units.length === 0) return { faults: ['No patch is closed yet.'] };
  const faults: string[] = [];
  if (tracing.centre === undefined && units.some((unit) => unit.count > 1)) {
    faults.push('Mark the block’s centre: units that repeat stand about it.');
  }
  const centre = tracing.centre ?? middleOfAll(tracing);
  const roles = new RoleList(options.known);
  const settled = settle(tracing, units, centre, options.within);
  const drawn = units.map((unit) => {
    const evened = evenUnit(settled, unit, units, centre, options.within);
    faults.push(...unitFaults(settled, unit, evened, options.within));
    return { evened, ...drawUnit(settled, unit, evened, roles, options) };
  });
  faults.push(...drawn.flatMap((each) => each.faults));
  if (faults.length > 0) return { faults };
  return {
    block: { name: options.name, units: drawn.map((each) => each.unit), roles: roles.used },
    numbers: new Map(drawn.flatMap((each) => each.numbers)),
    moved: Math.max(...drawn.map(({ evened }) => movedBy(tracing, evened, centre))),
    unsewn: drawn.filter((each) => !each.sewn).map((each) => each.unit.id),
  };
}

function movedBy(tracing: Tracing, { places }: Evened, centre: Point): number {
  const ways = tracing.corners.flatMap(({ id, at }) => {
    const place = places.get(id);
    return place === undefined ? [] : [distance(at, add(place, centre))];
  });
  return Math.max(0, ...ways);
}

/** The middle of the box of all patches: the centre of a block that has none marked. */
export function middleOfAll(tracing: Tracing): Point {
  const boxes = tracing.patches.map((patch) => outlineBox(outlineOfSteps(tracing, patch.steps)));
  const middle = (axis: 0 | 1): number =>
    (Math.min(...boxes.map((box) => box.min[axis])) + Math.max(...boxes.map((box) => box.max[axis]))) / 2;
  return boxes.length === 0 ? [0, 0] : [middle(0), middle(1)];
}

function unitFaults(tracing: Tracing, unit: TracedUnit, evened: Evened, within: number): readonly string[] {
  if (unit.count < 2) return [];
  const faults: string[] = [];
  const all = tracing.patches.filter((patch) => patch.unit === unit.id);
  const dropped = all.filter((patch) => !evened.patches.includes(patch));
  if (dropped.some((patch) => evened.patches.every((kept) => kept.role !== patch.role))) {
    faults.push(
      `Unit ${unit.id} is traced in several copies whose roles differ. Give it fewer repeats, so that each has its own patch, or one role.`,
    );
  }
  const corners = evened.patches.flatMap((patch) => outlineOf(tracing, patch, evened)).filter((each) => !isArc(each));
  const sector = sectorOf(corners as readonly Point[], within);
  const room = (unit.mirrored === 'also' ? 180 : 360) / unit.count;
  const far = Math.max(...(corners as readonly Point[]).map((corner) => Math.hypot(...corner)));
  // A unit may lean out of its sector, as long as its neighbour leans the same way: only its area must find room.
  const area = evened.patches.reduce((sum, patch) => sum + Math.abs(outlineArea(outlineOf(tracing, patch, evened))), 0);
  const copies = unit.count * (unit.mirrored === 'also' ? 2 : 1);
  if (area * copies > Math.PI * far ** 2 * 1.001) {
    const wide =
      sector === null ? '' : ` It spans ${Math.round(sector.size * 10) / 10}°, and has ${Math.round(room * 10) / 10}°.`;
    faults.push(`${unit.count} copies of unit ${unit.id} would lie over one another.${wide}`);
  }
  return faults;
}

interface DrawnUnit {
  readonly unit: Unit;
  /** The traced patches by id, and their numbers in the unit. */
  readonly numbers: readonly (readonly [number, number])[];
  readonly sewn: boolean;
  readonly faults: readonly string[];
}

function drawUnit(
  tracing: Tracing,
  unit: TracedUnit,
  evened: Evened,
  roles: RoleList,
  options: TracingOptions,
): DrawnUnit {
  const outlines = evened.patches.map((patch) => outlineOf(tracing, patch, evened));
  const faults = outlines.flatMap((outline, i) => {
    const fault = outlineFault(outline);
    return fault === null ? [] : [`Patch ${unit.id}${i + 1}, once evened out, is none: ${fault}.`];
  });
  const order = faults.length > 0 ? null : (options.sewing?.find(outlines) ?? null);
  const numbered = numberPatches(evened.patches, order);
  faults.push(...numberFaults(unit, evened.patches, order));
  const typed = evened.patches.some((patch) => patch.number !== undefined);
  if (typed && order !== null && faults.length === 0) {
    const inOrder = numbered.map(({ index }) => outlines[index]!);
    const fault =
      options.sewing?.check(
        inOrder,
        numbered.map(({ number }) => `${unit.id}${number}`),
      ) ?? null;
    if (fault !== null) faults.push(`In the order you typed ${fault}. Clear the numbers, and one is found for you.`);
  }
  // What is mirrored is mirrored in the upright, so its own middle is turned upright first.
  const from = unit.mirrored === 'no' || unit.count < 2 ? 0 : mirrorOf(outlines, unit, options.within);
  const patches = numbered.map(({ index, number }): Patch => {
    const outline = tidy(moveOutline(outlines[index]!, (corner) => turn(corner, -from)));
    return { number, role: roles.idOf(evened.patches[index]!.role, unit.count > 1), outline };
  });
  return {
    unit: {
      id: unit.id,
      paper: order !== null && patches.length > 1,
      repeat:
        unit.mirrored === 'no' || unit.count < 2
          ? { count: unit.count }
          : { count: unit.count, from, mirrored: unit.mirrored },
      patches,
    },
    numbers: numbered.map(({ index, number }) => [evened.patches[index]!.id, number]),
    sewn: order !== null,
    faults,
  };
}

/** Where a unit's mirror stands: in its middle where copies take turns, along its one side where each has its pair beside it. */
function mirrorOf(outlines: readonly Outline[], unit: TracedUnit, within: number): number {
  const sector = sectorOf(
    outlines.flat().filter((entry): entry is Point => !isArc(entry)),
    within,
  );
  if (sector === null) return 0;
  return unit.mirrored === 'also' ? sector.from : sector.from + sector.size / 2;
}

function numberFaults(
  unit: TracedUnit,
  patches: readonly TracedPatch[],
  order: readonly number[] | null,
): readonly string[] {
  const typed = patches.flatMap((patch) => (patch.number === undefined ? [] : [patch.number]));
  const twice = typed.find((number, i) => typed.indexOf(number) !== i);
  if (twice !== undefined) return [`Two patches are numbered ${unit.id}${twice}.`];
  const some = typed.length > 0 && typed.length < patches.length && order !== null;
  return some ? [`Number all patches of unit ${unit.id} by hand, or none of them.`] : [];
}

/** Numbers typed by hand first where all have one that no other has; else the sewing order; else as closed. */
function numberPatches(
  patches: readonly TracedPatch[],
  order: readonly number[] | null,
): readonly { readonly index: number; readonly number: number }[] {
  const typed = patches.map((patch) => patch.number);
  if (typed.every((number) => number !== undefined) && new Set(typed).size === typed.length) {
    return typed.map((number, index) => ({ index, number: number! })).sort((a, b) => a.number - b.number);
  }
  return (order ?? patches.map((_, i) => i)).map((index, i) => ({ index, number: i + 1 }));
}

/** Files need no more than a millionth. */
function tidy(outline: Outline): Outline {
  const short = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
  return outline.map(
    (entry): OutlineEntry =>
      isArc(entry) ? { arc: { ...entry.arc, radius: short(entry.arc.radius) } } : [short(entry[0]), short(entry[1])],
  );
}
