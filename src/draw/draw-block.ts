/** A finished block, seen from the front: every patch in its cloth, an arrow where its print points somewhere. */
import type { Blank } from '../cutting/cut-list.ts';
import { printDirection } from '../cutting/facing.ts';
import { unitAxis } from '../cutting/unit-axis.ts';
import { facingOf } from '../quilt/facing-of.ts';
import { type Place, placesOf } from '../quilt/places.ts';
import type { Block, Cloth, Facing, Patch, Quilt, Scheme, Unit } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { flatten } from '../shape/flatten.ts';
import { edgesOf, mirrorOutline, moveOutline, type Outline } from '../shape/outline.ts';
import { outlineCentroid } from '../shape/outline-measures.ts';
import { turn } from '../shape/point.ts';
import { polygonBox } from '../shape/polygon.ts';
import { type Box, type Drawing, type GroupItem, outlineRun, type PathItem } from './display-list.ts';
import { edgeOn } from './ink.ts';
import { label } from './label.ts';

export interface BlockDrawingInput {
  readonly quilt: Quilt;
  readonly scheme: Scheme;
  readonly block: Block;
  /** The blanks of its cut list, so that patch and blank find each other; empty while there is none. */
  readonly blanks: readonly Blank[];
  /** Height of the smallest text that can still be read, in the quilt's unit. */
  readonly textSize: number;
}

/** A role without a cloth is drawn in the grey of unprinted paper. */
const NO_CLOTH = '#d8d4cc';

export function drawBlock(input: BlockDrawingInput): Drawing {
  const { quilt, block, textSize } = input;
  const units = unitsOf(block, quilt.unit);
  const blankOf = blanksByPatch(input.blanks, block.id);
  const patches = units.flatMap((unit) =>
    shownPlaces(unit).flatMap((place) => unit.patches.map((patch) => patchItem(input, blankOf, unit, place, patch))),
  );
  return {
    title: block.name,
    description: describe(input, units),
    box: boxRound(
      patches.map(({ outline }) => outline),
      textSize * 0.4,
    ),
    printSpacing: textSize * 1.4,
    items: [{ kind: 'group', class: 'block', items: patches.map(({ item }) => item) }],
  };
}

/** Where all stand at one place, one of them is seen. */
const shownPlaces = (unit: Unit): readonly Place[] =>
  unit.repeat.over === 0 ? placesOf(unit).slice(0, unit.repeat.mirrored === 'also' ? 2 : 1) : placesOf(unit);

interface DrawnPatch {
  readonly outline: Outline;
  readonly item: GroupItem;
}

function patchItem(
  input: BlockDrawingInput,
  blankOf: ReadonlyMap<string, string>,
  unit: Unit,
  place: Place,
  patch: Patch,
): DrawnPatch {
  const { quilt, scheme, textSize } = input;
  const first = place.mirrored ? mirrorOutline(patch.outline) : patch.outline;
  const outline = moveOutline(first, (corner) => turn(corner, place.turn));
  const cloth = clothOf(quilt, scheme, patch.role);
  const role = quilt.roles.find(({ id }) => id === patch.role) ?? { facing: { to: 'free' } };
  const facing = facingOf(input.block, patch, role, place.index);
  const points = isDirectional(cloth) ? printUp(facing, first, unit, place) : null;
  const name = `${unit.id}${patch.number}`;
  const colour = cloth?.colour ?? NO_CLOTH;
  const named = label(flatten(outline, { side: 'inside', within: textSize * 0.1 }), {
    name: unit.repeat.over === 0 && unit.repeat.count > 1 ? `${name} ×${unit.repeat.count}` : name,
    size: textSize,
    on: colour,
    arrow: points === null ? null : { degrees: points, heads: cloth?.print === 'one-way' ? 1 : 2 },
  });
  const blank = blankOf.get(useKey(unit.id, patch.number, place));
  const fill = { colour, ...(cloth === undefined ? {} : { print: cloth.print, turn: points ?? 0 }) };
  const path: PathItem = { kind: 'path', class: 'cloth', runs: [outlineRun(outline)], fill, ink: edgeOn(colour) };
  return {
    outline,
    item: {
      kind: 'group',
      class: 'patch',
      data: { patch: name, ...(blank === undefined ? {} : { blank }) },
      items: [path, ...named],
    },
  };
}

/**
 * Where the print's up is to point in the block as it is drawn, degrees anticlockwise from up; null where it may point
 * anywhere or has no answer.
 * @param outline the patch as its unit holds it at the place: reflected where the place is mirrored, not yet turned
 */
function printUp(facing: Facing, outline: Outline, unit: Unit, place: Place): number | null {
  const axis = unitAxis(unit);
  const direction = printDirection(facing, {
    middle: outlineCentroid(outline),
    axis: axis === null || !place.mirrored ? axis : -axis,
    edges: edgesOf(outline),
    turn: place.turn,
    mirrored: place.mirrored,
  });
  return typeof direction === 'number' ? direction + place.turn : null;
}

/** The first cloth that fills the role: where several will do, the plan chooses among them blank by blank. */
function clothOf(quilt: Quilt, scheme: Scheme, role: string): Cloth | undefined {
  const [id] = [scheme.cloths[role] ?? []].flat();
  return quilt.cloths.find((cloth) => cloth.id === id);
}

const isDirectional = (cloth: Cloth | undefined): boolean =>
  cloth !== undefined && cloth.print !== 'solid' && cloth.print !== 'tossed';

function blanksByPatch(blanks: readonly Blank[], block: string): ReadonlyMap<string, string> {
  return new Map(
    blanks.flatMap((blank) =>
      blank.uses
        .filter((use) => use.block === block)
        .map((use) => [useKey(use.unit, use.patch, { index: use.place, mirrored: use.mirrored }), blank.id] as const),
    ),
  );
}

const useKey = (unit: string, patch: number, place: Pick<Place, 'index' | 'mirrored'>): string =>
  `${unit}/${patch}/${place.index}/${place.mirrored}`;

function boxRound(outlines: readonly Outline[], margin: number): Box {
  const boxes = outlines.map((outline) => polygonBox(flatten(outline, { side: 'outside', within: margin })));
  const left = Math.min(...boxes.map((box) => box.min[0])) - margin;
  const bottom = Math.min(...boxes.map((box) => box.min[1])) - margin;
  const right = Math.max(...boxes.map((box) => box.max[0])) + margin;
  const top = Math.max(...boxes.map((box) => box.max[1])) + margin;
  return { left, bottom, width: right - left, height: top - bottom };
}

function describe(input: BlockDrawingInput, units: readonly Unit[]): string {
  const count = units.reduce((sum, unit) => sum + placesOf(unit).length * unit.patches.length, 0);
  return `The finished block in the scheme "${input.scheme.name}": ${count} patches. The tables beside it name each patch with its cloth.`;
}
