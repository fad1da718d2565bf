/** A finished block, seen from the front: every patch in its cloth, an arrow where its print points somewhere. */
import { type BlockPatch, blockPatches, printInBlock } from '../cutting/block-patches.ts';
import type { Blank } from '../cutting/cut-list.ts';
import { facingOf } from '../quilt/facing-of.ts';
import type { Place } from '../quilt/places.ts';
import type { Block, Cloth, Quilt, Scheme } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import type { Outline } from '../shape/outline.ts';
import { polygonBox } from '../shape/polygon.ts';
import { type Box, type Drawing, type GroupItem, outlineRun, type PathItem, placed } from './display-list.ts';
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
  /** Gives each cloth's repeat in the quilt's unit: prints are then drawn at their true size, without names over them. */
  readonly trueRepeat?: (cloth: Cloth) => number;
}

/** A role without a cloth is drawn in the grey of unprinted paper. */
const NO_CLOTH = '#d8d4cc';

export function drawBlock(input: BlockDrawingInput): Drawing {
  const { quilt, block, textSize } = input;
  const blankOf = blanksByPatch(input.blanks, block.id);
  const patches = blockPatches(block, quilt.unit);
  return {
    title: block.name,
    description: describe(input, patches.length),
    box: boxRound(
      patches.map(({ outline }) => outline),
      textSize * 0.4,
    ),
    printSpacing: textSize * 1.4,
    items: [{ kind: 'group', class: 'block', items: patches.map((patch) => patchItem(input, blankOf, patch)) }],
  };
}

/** The same block from the back: its own mirror image, with its words still to be read. */
export function seenFromBack(front: Drawing): Drawing {
  const { left, width } = front.box;
  return {
    ...front,
    title: `${front.title}, from the back`,
    box: { ...front.box, left: -left - width },
    items: front.items.map((item) => placed(item, { mirrored: true })),
  };
}

function patchItem(input: BlockDrawingInput, blankOf: ReadonlyMap<string, string>, each: BlockPatch): GroupItem {
  const { quilt, scheme, textSize } = input;
  const { unit, patch, place, outline } = each;
  const cloth = clothOf(quilt, scheme, patch.role);
  const role = quilt.roles.find(({ id }) => id === patch.role) ?? { facing: { to: 'free' } };
  const facing = facingOf(input.block, patch, role, place.index);
  const points = isDirectional(cloth) ? printInBlock(facing, each) : null;
  const name = `${unit.id}${patch.number}`;
  const colour = cloth?.colour ?? NO_CLOTH;
  const blank = blankOf.get(useKey(unit.id, patch.number, place));
  const repeat = input.trueRepeat === undefined || cloth === undefined ? {} : { repeat: input.trueRepeat(cloth) };
  const fill = { colour, ...(cloth === undefined ? {} : { print: cloth.print, turn: points ?? 0, ...repeat }) };
  const path: PathItem = { kind: 'path', class: 'cloth', runs: [outlineRun(outline)], fill, ink: edgeOn(colour) };
  const named =
    input.trueRepeat === undefined
      ? label(flatten(outline, { side: 'inside', within: textSize * 0.1 }), {
          name: unit.repeat.over === 0 && unit.repeat.count > 1 ? `${name} ×${unit.repeat.count}` : name,
          size: textSize,
          on: colour,
          arrow: points === null ? null : { degrees: points, heads: cloth?.print === 'one-way' ? 1 : 2 },
        })
      : [];
  return {
    kind: 'group',
    class: 'patch',
    data: { patch: name, place: `${place.index}`, ...(blank === undefined ? {} : { blank }) },
    items: [path, ...named],
  };
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

function describe(input: BlockDrawingInput, count: number): string {
  return `The finished block in the scheme "${input.scheme.name}": ${count} patches. The tables beside it name each patch with its cloth.`;
}
