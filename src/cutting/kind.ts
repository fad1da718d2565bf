/** One kind of blank: its shapes, the turns that each cloth allows it, and the patches that it serves. */
import type { Turns } from '../plan/layout-job.ts';
import type { BlankShapeKind, Cloth, Role } from '../quilt/quilt.ts';
import { type Point, type Polygon, subtract } from '../shape/point.ts';
import { polygonArea, polygonBox } from '../shape/polygon.ts';
import { samePlace } from '../shape/same-outline.ts';
import { shapesOfKind } from './blank-shapes.ts';
import type { CutShape, PatchUse } from './cut-list.ts';
import { bestLays, canonicalFrame, mainDirection, straightSides } from './frame.ts';
import { mirrorRough, type RoughPatch } from './rough-patch.ts';
import { stripAngles } from './strip-angles.ts';
import { grainTurns, isDirectional, mayTurnOver, periodOf, printTurns, sameTurns } from './turn-sets.ts';
import type { Wanted } from './wanted.ts';

export interface Kind {
  readonly role: Role;
  readonly cloths: readonly Cloth[];
  /** For each cloth. */
  readonly turns: readonly Turns[];
  /** For each cloth, whether a blank may be turned over on it. */
  readonly turnOver: readonly boolean[];
  readonly shapes: readonly PlacedShape[];
  readonly patch: Polygon;
  readonly finishedArea: number;
  readonly sewnArea: number;
  readonly directional: boolean;
  /** The most that any of its roles asks for. */
  readonly spares: number;
  readonly uses: readonly PatchUse[];
}

/** A shape that always says where its patch lies. */
export type PlacedShape = Required<CutShape>;

/** @param rough the wanted patch as drawn (roughPatch), before it is mirrored or turned */
export function kindOf(wanted: Wanted, rough: RoughPatch, uses: readonly PatchUse[]): Kind {
  const { cloths, direction, within } = wanted;
  const hand = wanted.mirrored ? mirrorRough(rough) : rough;
  const grain = grainOf(hand, wanted.grainEdges);
  // The turn that brings the hand into the blank's frame, where the print, or else the grain, settles it.
  const lay = direction !== null ? -direction : grain !== null ? -grain : null;
  const turns = cloths.map((cloth) => {
    if (direction !== null && isDirectional(cloth)) {
      return printTurns(cloth, within);
    }
    return grain === null ? 'any' : grainTurns(grain + lay!, within);
  });
  const turnOver = cloths.map((cloth, i) => cloth.wrongSide === false && mayTurnOver(turns[i]!));
  const shapes = shapesIn(wanted, hand, lay, turns, turnOver);
  return {
    role: wanted.role,
    cloths,
    turns,
    turnOver,
    shapes,
    patch: shapes[0]!.patch,
    finishedArea: wanted.finishedArea,
    sewnArea: polygonArea(rough.sewn),
    directional: direction !== null && turns.some((each) => each !== 'any'),
    spares: wanted.spares,
    uses,
  };
}

function grainOf(hand: RoughPatch, grainEdges: readonly number[]): number | null {
  return grainEdges.length === 0 ? null : mainDirection(grainEdges.map((edge) => hand.sides[edge]!));
}

/** The alternatives, each in a frame that its turns allow, its box at the origin and its patch with it; repeats left out. */
function shapesIn(
  wanted: Wanted,
  hand: RoughPatch,
  lay: number | null,
  turns: readonly Turns[],
  turnOver: readonly boolean[],
): readonly PlacedShape[] {
  const { ruler } = wanted.making;
  // Where no cloth minds, half a turn is enough: the lays hold every other turn worth having.
  const period = Math.max(...turns.map(periodOf)) || 180;
  const eitherHand = turnOver.every((may) => may);
  const shapes = wanted.shapes.flatMap((kind) => {
    const lays = lay === null ? bestLays(hand, kind, ruler) : [lay];
    const framed = canonicalFrame(hand, lays, period, eitherHand);
    return shapesOfKind(kind, framed, anglesOf(turns, framed), ruler).map((outline) =>
      atOrigin(kind, outline, framed.patch),
    );
  });
  return shapes.filter((shape, i) => !shapes.some((other, j) => isRepeat(shape, i, other, j)));
}

/** Of equal outlines the first stays, but a rectangle is called a box where it is both box and slant. */
function isRepeat(shape: PlacedShape, i: number, other: PlacedShape, j: number): boolean {
  const boxFirst = (kind: CutShape['kind']) => (kind === 'box' ? 0 : 1);
  const parting = boxFirst(other.kind) - boxFirst(shape.kind);
  const otherStays = parting < 0 || (parting === 0 && j < i);
  return i !== j && otherStays && samePlace(other.outline, shape.outline);
}

function atOrigin(kind: BlankShapeKind, outline: Polygon, patch: Polygon): PlacedShape {
  const { min } = polygonBox(outline);
  const place = (polygon: Polygon) => polygon.map((point) => tidyPoint(subtract(point, min)));
  return { kind, outline: place(outline), patch: place(patch) };
}

/** The turns at which a slant may lie, cloth by cloth; a cloth that allows any takes what serves the others. */
function anglesOf(turns: readonly Turns[], framed: RoughPatch): readonly (readonly number[])[] {
  const choosy = turns.filter((each) => each !== 'any');
  return choosy.length === 0 ? [[0]] : choosy.map((each) => stripAngles(each, straightSides(framed)));
}

const tidyPoint = ([x, y]: Point): Point => [tidy(x), tidy(y)];
/** Rounded where the sums before leave noise; adding 0 rids it of −0. */
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

/** Kinds that are the same blank made one: equal shapes and turns on the same cloths. In the order of their first uses. */
export function mergeKinds(kinds: readonly Kind[]): readonly Kind[] {
  const merged: { kind: Kind; uses: PatchUse[]; spares: number }[] = [];
  const shelves = new Map<string, (typeof merged)[number][]>();
  for (const kind of kinds) {
    // Equal kinds lie on one shelf or, where rounding parts them, on neighbouring ones.
    const size = Math.round(polygonArea(kind.shapes[0]!.outline) * 1e4);
    const label = (step: number) => JSON.stringify([size + step, kind.cloths.map((cloth) => cloth.id)]);
    const near = [-1, 0, 1].flatMap((step) => shelves.get(label(step)) ?? []);
    const same = near.find((each) => sameKind(each.kind, kind));
    if (same !== undefined) {
      same.uses.push(...kind.uses);
      same.spares = Math.max(same.spares, kind.spares);
      continue;
    }
    const entry = { kind, uses: [...kind.uses], spares: kind.spares };
    merged.push(entry);
    shelves.set(label(0), [...(shelves.get(label(0)) ?? []), entry]);
  }
  return merged.map(({ kind, uses, spares }) => ({ ...kind, uses, spares }));
}

function sameKind(a: Kind, b: Kind): boolean {
  return (
    // Roles that keep a block to one cloth choose it each for itself.
    (a.role.id === b.role.id || !(a.role.oneCloth === true || b.role.oneCloth === true)) &&
    a.turns.every((turns, i) => sameTurns(turns, b.turns[i]!)) &&
    a.turnOver.every((may, i) => may === b.turnOver[i]) &&
    a.directional === b.directional &&
    a.shapes.length === b.shapes.length &&
    a.shapes.every((shape, i) => shape.kind === b.shapes[i]!.kind && samePlace(shape.outline, b.shapes[i]!.outline)) &&
    samePlace(a.patch, b.patch)
  );
}
