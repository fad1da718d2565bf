/** Every patch of every repeat of every block, gathered by what must be the same for a blank to serve it. */

import { copyTurns } from '../quilt/copy-turns.ts';
import { facingOf } from '../quilt/facing-of.ts';
import { lengthIn } from '../quilt/measure.ts';
import { placesOf } from '../quilt/places.ts';
import type { BlankShapeKind, Block, Cloth, Facing, LengthUnit, Patch, Quilt, Role, Unit } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { cornersOf, edgesOf, mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineFault } from '../shape/outline-fault.ts';
import { outlineArea, outlineCentroid } from '../shape/outline-measures.ts';
import { modulo, subtract } from '../shape/point.ts';
import { outsideEdges } from './block-outside.ts';
import type { PatchUse, Problem } from './cut-list.ts';
import { type PlacedPatch, printDirection } from './facing.ts';
import type { Making } from './rough-patch.ts';
import { type SewnSide, sewnSides } from './sewn-side.ts';
import { isDirectional } from './turn-sets.ts';
import { unitAxis } from './unit-axis.ts';

/** One kind of blank as asked for, before equal ones are found. */
export interface Wanted {
  /** The patch about its first corner, as drawn. */
  readonly outline: Outline;
  /** Tells outline and making apart from all others. */
  readonly outlineKey: string;
  readonly making: Making;
  readonly finishedArea: number;
  readonly mirrored: boolean;
  /** Where the print must point, degrees anticlockwise from up in the unit's own frame (mirrored where the unit is). */
  readonly direction: number | null;
  /** Indices of edges on the block's straight outside that are to keep to the grain. */
  readonly grainEdges: readonly number[];
  /** Tolerance of turns in degrees. */
  readonly within: number;
  /** Extra blanks of its kind. */
  readonly spares: number;
  readonly role: Role;
  readonly cloths: readonly Cloth[];
  readonly shapes: readonly BlankShapeKind[];
}

export interface WantedUses {
  readonly wanted: Wanted;
  readonly uses: readonly PatchUse[];
}

export interface Gathered {
  readonly wanted: readonly WantedUses[];
  readonly problems: readonly Problem[];
}

const DEFAULT_SHAPES: readonly BlankShapeKind[] = ['slant', 'box'];
/** A patch on paper with a curved seam is cut to its curve. */
const CURVED_SHAPES: readonly BlankShapeKind[] = ['outline'];

/** @param clothsOf the cloths that fill a role; empty where none does, which the caller has told */
export function gatherWanted(quilt: Quilt, clothsOf: (role: string) => readonly Cloth[]): Gathered {
  const problems: Problem[] = [];
  const found = new Map<string, { wanted: Wanted; uses: PatchUse[] }>();
  const roles = new Map(quilt.roles.map((role) => [role.id, role]));
  for (const block of quilt.blocks) {
    const units = soundUnits(block, quilt.unit, problems);
    const outside = block.loose === true ? null : outsideEdges(units);
    const copies = copiesByTurn(block);
    units.forEach((unit, u) => {
      const axis = unitAxis(unit);
      const sewn = unit.paper ? sewnSides(unit) : unit.patches.map(() => NOT_SEWN);
      unit.patches.forEach((patch, p) => {
        const role = roles.get(patch.role);
        if (sewn[p]!.fault !== null) {
          problems.push({ kind: 'warning', text: `${sewn[p]!.fault}.`, role: patch.role });
        }
        if (role === undefined) {
          problems.push({
            kind: 'error',
            text: `${unit.id}${patch.number} has the role “${patch.role}”, which the quilt does not list; add the role or change the patch.`,
            role: patch.role,
          });
          return;
        }
        const cloths = clothsOf(role.id);
        if (cloths.length === 0) {
          return;
        }
        const askers = new Map<string, Asker>();
        for (const place of placesOf(unit)) {
          const facing = facingOf(block, patch, role, place.index);
          const facingKey = JSON.stringify(facing);
          const asker =
            askers.get(facingKey) ?? askerFor(quilt, unit, patch, facing, sewn[p]!, role, cloths, axis, problems);
          askers.set(facingKey, asker);
          for (const [turn, count] of copies) {
            const { key, wanted } = asker(
              place.mirrored,
              place.turn + turn,
              outside === null ? NO_EDGES : outside[u]![p]![place.index]!,
            );
            const use: PatchUse = {
              block: block.id,
              unit: unit.id,
              patch: patch.number,
              place: place.index,
              mirrored: place.mirrored,
              count,
              turn,
            };
            const before = found.get(key);
            if (before === undefined) {
              found.set(key, { wanted: wanted(), uses: [use] });
            } else {
              before.uses.push(use);
            }
          }
        }
      });
    });
  }
  return { wanted: [...found.values()], problems };
}

const NO_EDGES: readonly number[] = [];

const NOT_SEWN: SewnSide = { edge: null, fault: null, curved: false };

/** How many copies of a block stand at each turn. */
function copiesByTurn(block: Block): ReadonlyMap<number, number> {
  const copies = new Map<number, number>();
  for (const turn of copyTurns(block)) {
    copies.set(turn, (copies.get(turn) ?? 0) + 1);
  }
  return copies;
}

/** A block's units without the patches that cannot be, each of which is told. */
function soundUnits(block: Block, unit: LengthUnit, problems: Problem[]): readonly Unit[] {
  const known = new Map<string, string | null>();
  return unitsOf(block, unit).map((each) => ({
    ...each,
    patches: each.patches.filter((patch) => {
      const key = JSON.stringify(patch.outline);
      if (!known.has(key)) {
        known.set(key, outlineFault(patch.outline));
      }
      const fault = known.get(key)!;
      if (fault !== null) {
        problems.push({
          kind: 'error',
          text: `${each.id}${patch.number} of “${block.name}” is left out: ${fault}.`,
          role: patch.role,
        });
      }
      return fault === null;
    }),
  }));
}

type Asker = (
  mirrored: boolean,
  turn: number,
  outside: readonly number[],
) => { readonly key: string; readonly wanted: () => Wanted };

/** Answers, for one patch, what is wanted at a place; all that does not depend on the place is worked out once. */
function askerFor(
  quilt: Quilt,
  unit: Unit,
  patch: Patch,
  facing: Facing,
  sewn: SewnSide,
  role: Role,
  cloths: readonly Cloth[],
  axis: number | null,
  problems: Problem[],
): Asker {
  const outline = aboutFirstCorner(patch.outline);
  const making = makingOf(quilt, unit, patch, sewn, role);
  const outlineKey = JSON.stringify([rounded(outline), making]);
  const shapes = role.shapes ?? (sewn.curved ? CURVED_SHAPES : DEFAULT_SHAPES);
  const within = facing.within ?? 0;
  const spares = role.spares ?? quilt.spares;
  const common = JSON.stringify([outlineKey, cloths.map((cloth) => cloth.id), shapes, within, spares]);
  const someDirectional = facing.to !== 'free' && cloths.some(isDirectional);
  const keepsGrain = role.biasAllowed !== true && (facing.to === 'free' || !cloths.every(isDirectional));
  const hands = [patch.outline, mirrorOutline(patch.outline)].map((each) => ({
    middle: outlineCentroid(each),
    edges: edgesOf(each),
  }));
  let told = false;

  const directionAt = (mirrored: boolean, turn: number): number | null => {
    if (!someDirectional) {
      return null;
    }
    const hand = hands[mirrored ? 1 : 0]!;
    const placed: PlacedPatch = {
      ...hand,
      axis: axis === null ? null : mirrored ? modulo(-axis, 360) : axis,
      turn,
      mirrored,
    };
    const direction = printDirection(facing, placed);
    if (typeof direction === 'object' && !told) {
      told = true;
      problems.push({
        kind: 'error',
        text: `${unit.id}${patch.number} cannot face ${facing.to}: ${direction.fault}. Until then it is planned at any turn.`,
        role: role.id,
      });
    }
    return typeof direction === 'number' ? direction : null;
  };

  return (mirrored, turn, outside) => {
    const direction = directionAt(mirrored, turn);
    const grainEdges = keepsGrain ? outside : [];
    const key = `${common}|${mirrored}|${direction?.toFixed(8)}|${grainEdges.join(',')}`;
    const wanted = (): Wanted => ({
      outline,
      outlineKey,
      making,
      finishedArea: Math.abs(outlineArea(outline)),
      mirrored,
      direction,
      grainEdges,
      within,
      spares,
      role,
      cloths,
      shapes,
    });
    return { key, wanted };
  };
}

export function makingOf(quilt: Quilt, unit: Unit, patch: Patch, sewn: SewnSide, role: Role): Making {
  const room = patch.room ?? role.room ?? quilt.room;
  return {
    allowance: lengthIn(quilt.unit, quilt.allowance),
    room: unit.paper ? lengthIn(quilt.unit, room) : 0,
    sewnEdge: sewn.edge,
    paper: unit.paper,
    ruler: lengthIn(quilt.unit, quilt.ruler),
  };
}

function aboutFirstCorner(outline: Outline): Outline {
  const first = cornersOf(outline)[0]!;
  return moveOutline(outline, (corner) => subtract(corner, first));
}

const rounded = (outline: Outline): Outline => moveOutline(outline, ([x, y]) => [tidy(x), tidy(y)]);
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
