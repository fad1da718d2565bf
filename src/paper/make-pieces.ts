/** From a planned quilt to the foundations and templates that it needs. */
import { outsideEdges } from '../cutting/block-outside.ts';
import type { Blank } from '../cutting/cut-list.ts';
import { unitAxis } from '../cutting/unit-axis.ts';
import { shortName } from '../draw/short-name.ts';
import { blockLabel } from '../quilt/block-label.ts';
import { copyTurns } from '../quilt/copy-turns.ts';
import { convert, lengthIn } from '../quilt/measure.ts';
import { type Place, placesOf } from '../quilt/places.ts';
import type { Block, Cloth, Quilt, Scheme, Unit } from '../quilt/quilt.ts';
import { unitsOf } from '../quilt/units-of.ts';
import { largest, unionClosed } from '../shape/combine.ts';
import { flatten } from '../shape/flatten.ts';
import { growEvenly } from '../shape/grow.ts';
import { convexHull } from '../shape/hull.ts';
import { isArc, mirrorOutline, type Outline } from '../shape/outline.ts';
import { add, cross, distance, type Point, type Polygon, reflect, scale, subtract } from '../shape/point.ts';
import { anticlockwise, polygonArea } from '../shape/polygon.ts';
import type { FoundationPaper } from './paper-choice.ts';
import type { PaperPatch, PaperPiece } from './pieces.ts';
import { type PrintLie, printLie } from './print-lie.ts';
import { BlockMap, meetingPoints, outerEdges } from './unit-edge.ts';

export interface PiecesInput {
  readonly quilt: Quilt;
  readonly scheme: Scheme;
  /** Of its cut list, so that paper and bags use the same names. */
  readonly blanks: readonly Blank[];
  readonly foundation: FoundationPaper;
}

/** Arcs on the trimming line are drawn in chords that nowhere part from it by more than this, in inches. */
const FINE = 0.0005;

export function makePieces(input: PiecesInput): readonly PaperPiece[] {
  const shared = sharedLetters(input.quilt);
  return input.quilt.blocks.flatMap((block) => blockPieces(input, block, shared));
}

function sharedLetters(quilt: Quilt): ReadonlySet<string> {
  const letters = quilt.blocks.flatMap((block) => [...new Set(unitsOf(block, quilt.unit).map(({ id }) => id))]);
  return new Set(letters.filter((letter, i) => letters.indexOf(letter) !== i));
}

/** A place of a unit in one copy of its block. */
interface Standing {
  readonly place: Place;
  readonly blanks: readonly (string | null)[];
  readonly lies: readonly PrintLie[];
  readonly count: number;
}

function blockPieces(input: PiecesInput, block: Block, shared: ReadonlySet<string>): readonly PaperPiece[] {
  const { quilt } = input;
  const units = unitsOf(block, quilt.unit);
  const map = new BlockMap(units);
  const outside = outsideEdges(units);
  const blankOf = blanksByUse(input.blanks, block.id);
  const copies = new Map<number, number>();
  for (const turn of copyTurns(block)) {
    copies.set(turn, (copies.get(turn) ?? 0) + 1);
  }
  return units.flatMap((unit, u) => {
    const letter = `${shared.has(unit.id) ? `${blockLabel(quilt, block)} ` : ''}${unit.id}`;
    const axis = unitAxis(unit);
    const standings = placesOf(unit).flatMap((place) =>
      [...copies].map(([turn, count]): Standing => {
        const key = (patch: number): string => JSON.stringify([unit.id, patch, place.index, place.mirrored, turn]);
        return {
          place,
          count,
          blanks: unit.patches.map(({ number }) => blankOf.get(key(number)) ?? null),
          lies: unit.patches.map((patch, p) => {
            const role = quilt.roles.find(({ id }) => id === patch.role);
            const cloths = clothsOf(quilt, input.scheme, patch.role);
            return printLie(block, patch, role, cloths, place, place.turn + turn, axis, outside[u]![p]![place.index]!);
          }),
        };
      }),
    );
    const making = { input, block, unit, letter, map };
    return unit.paper ? foundations(making, standings) : templates(making, standings);
  });
}

interface Making {
  readonly input: PiecesInput;
  readonly block: Block;
  readonly unit: Unit;
  readonly letter: string;
  readonly map: BlockMap;
}

function foundations(making: Making, standings: readonly Standing[]): readonly PaperPiece[] {
  const { foundation } = making.input;
  const all = making.unit.patches.map((_, p) => p);
  const groups = grouped(standings, ({ place, blanks, lies }) => [place.mirrored, blanks, lies.map(lieKey)]);
  return groups.map((own, i) => {
    const needed = own.reduce((sum, { count }) => sum + count, 0);
    const copies = foundation.kind === 'sewn' ? needed : Math.ceil(needed / foundation.uses);
    const hand = own[0]!.place.mirrored;
    const alike = groups.filter(([first]) => first!.place.mirrored === hand);
    const number = alike.length === 1 ? '' : `.${alike.indexOf(groups[i]!) + 1}`;
    const name = `${making.letter}${number}${hand ? ' mirrored' : ''}`;
    return piece(making, 'foundation', name, all, own, needed, copies);
  });
}

/** One for each blank of each patch; where it serves for both hands, one for each of them. */
function templates(making: Making, standings: readonly Standing[]): readonly PaperPiece[] {
  return making.unit.patches.flatMap((patch, p) => {
    const groups = grouped(standings, ({ place, blanks, lies }) =>
      blanks[p] === null ? [place.mirrored, lieKey(lies[p]!)] : [place.mirrored, blanks[p]],
    );
    return groups.map((own) => {
      const { place, blanks } = own[0]!;
      const plain = `${making.letter}${patch.number}`;
      const name = blanks[p] ?? plain;
      const hand = place.mirrored && !name.includes(' mirrored') ? ' mirrored' : '';
      const needed = own.reduce((sum, { count }) => sum + count, 0);
      return piece(making, 'template', `${name}${hand}`, [p], own, needed, 1);
    });
  });
}

function grouped(standings: readonly Standing[], keyOf: (standing: Standing) => unknown): readonly Standing[][] {
  const groups = new Map<string, Standing[]>();
  for (const standing of standings) {
    const key = JSON.stringify(keyOf(standing));
    groups.set(key, [...(groups.get(key) ?? []), standing]);
  }
  return [...groups.values()];
}

/** A print that looks the same turned half round lies the same at both. */
function lieKey({ arrow, grain }: PrintLie): unknown {
  const tidy = (degrees: number, period: number): number =>
    Math.round((((degrees % period) + period) % period) * 100) % (period * 100);
  return [
    arrow === null ? null : [tidy(arrow.degrees, 360 / arrow.heads), arrow.heads],
    grain === null ? null : tidy(grain, 180),
  ];
}

function piece(
  { input, block, unit, map }: Making,
  kind: PaperPiece['kind'],
  name: string,
  indices: readonly number[],
  standings: readonly Standing[],
  needed: number,
  copies: number,
): PaperPiece {
  const { quilt, scheme } = input;
  const { place, blanks, lies } = standings[0]!;
  const inches = convert(1, quilt.unit, 'in');
  const isMirrored = kind === 'foundation';
  const printed = (point: Point): Point => scale(isMirrored ? reflect(point) : point, inches);
  const held = indices.map((p) => {
    const { outline } = unit.patches[p]!;
    return place.mirrored ? mirrorOutline(outline) : outline;
  });
  const patches = indices.map((p, i): PaperPatch => {
    const patch = unit.patches[p]!;
    const cloths = clothsOf(quilt, scheme, patch.role);
    const { arrow, grain } = lies[p]!;
    const side = (degrees: number): number => (isMirrored ? -degrees : degrees);
    return {
      name: patchName(`${unit.id}${patch.number}`, block, blanks[p] ?? null, place.mirrored, kind),
      outline: printedOutline(held[i]!, isMirrored, inches),
      role: quilt.roles.find(({ id }) => id === patch.role)?.name ?? patch.role,
      cloths: cloths.map((cloth) => cloth.name),
      colour: cloths[0]?.colour ?? '#d8d4cc',
      arrow: arrow === null ? null : { ...arrow, degrees: side(arrow.degrees) },
      grain: grain === null ? null : side(grain),
    };
  });
  const allowance = lengthIn(quilt.unit, quilt.allowance) * inches;
  const flat = patches.map(({ outline }) => anticlockwise(flatten(outline, { side: 'chord', within: FINE })));
  const places = standings.map((standing) => standing.place);
  // Pieces told by their measures alone lie one on the other, and nothing is known of their neighbours.
  const isLoose = block.loose === true || unit.repeat.over === 0;
  return {
    kind,
    name,
    block: block.name,
    patches,
    trim: trimLine(flat, allowance),
    marks: (isLoose ? [] : meetingPoints(map, unit.id, held, places)).map(({ at, outward }) => ({
      from: printed(at),
      to: printed(add(at, scale(outward, allowance / inches))),
    })),
    neighbours: (isLoose ? [] : outerEdges(map, held, places)).map(({ at, outward, from, to, units }) => ({
      from: printed(from),
      to: printed(to),
      middle: printed(at),
      outward: isMirrored ? reflect(outward) : outward,
      units,
    })),
    needed,
    copies,
  };
}

/**
 * A patch goes by its own number, by which the sewing goes; where it is cut as another's blank, that stands in brackets after it. A
 * template goes by its blank.
 */
function patchName(
  own: string,
  block: Block,
  blank: string | null,
  mirrored: boolean,
  kind: PaperPiece['kind'],
): string {
  const cut = blank === null ? null : shortName(blank).replace(`${block.id} `, '');
  if (kind === 'template') return cut ?? own;
  const name = `${own}${mirrored ? 'm' : ''}`;
  return cut === null || cut === name ? name : `${name} (${cut})`;
}

/** Rounding leaves hairs between neighbours. In inches. */
const HAIR = 5e-4;

/** All patches together and the allowance round them; round their hull where they do not hang together. */
function trimLine(patches: readonly Polygon[], allowance: number): Polygon {
  const parts = unionClosed(patches, HAIR).filter((part) => polygonArea(part) > HAIR);
  const whole = parts.length === 1 ? largest(parts) : convexHull(parts.flat());
  return growEvenly(withoutNotches(whole, HAIR), allowance);
}

/** Corners that stand out from the line between their neighbours by next to nothing, or cut into it, are left out. */
function withoutNotches(polygon: Polygon, within: number): Polygon {
  const kept = [...polygon];
  for (let i = 0; i < kept.length && kept.length > 3; ) {
    const [before, at, after] = [kept.at(i - 1)!, kept[i]!, kept[(i + 1) % kept.length]!];
    const along = subtract(after, before);
    const off = Math.abs(cross(along, subtract(at, before))) / Math.hypot(...along);
    const isNear = Math.min(distance(before, at), distance(at, after)) < 4 * within;
    if (isNear && off < within) kept.splice(i, 1);
    else i++;
  }
  return kept;
}

function printedOutline(outline: Outline, isMirrored: boolean, inches: number): Outline {
  return (isMirrored ? mirrorOutline(outline) : outline).map((entry) =>
    isArc(entry) ? { arc: { ...entry.arc, radius: entry.arc.radius * inches } } : scale(entry, inches),
  );
}

export function clothsOf(quilt: Quilt, scheme: Scheme, role: string): readonly Cloth[] {
  return [scheme.cloths[role] ?? []].flat().flatMap((id) => quilt.cloths.filter((cloth) => cloth.id === id));
}

function blanksByUse(blanks: readonly Blank[], block: string): ReadonlyMap<string, string> {
  return new Map(
    blanks.flatMap(({ id, uses }) =>
      uses
        .filter((use) => use.block === block)
        .map((use) => [JSON.stringify([use.unit, use.patch, use.place, use.mirrored, use.turn]), id] as const),
    ),
  );
}
