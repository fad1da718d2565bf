/** From measured pieces to a block whose pieces lie side by side, since nothing is known of where they will be sewn. */
import { moveOutline } from '../../shape/outline.ts';
import { outlineBox } from '../../shape/outline-measures.ts';
import { add, type Point } from '../../shape/point.ts';
import type { DrawnBlock, RoleSeed } from '../drawn-block.ts';
import { freshIdFor } from '../fresh-id.ts';
import type { Patch, Unit } from '../quilt.ts';
import type { MeasuredPiece } from './measured-row.ts';

export interface MeasuredChoice {
  readonly name: string;
  /** Whether each piece is sewn onto paper, and so is cut with room all round. */
  readonly paper: boolean;
  /** The roles that the quilt has: a piece whose role goes by the name of one shares it. */
  readonly roles: readonly { readonly id: string; readonly name: string }[];
}

/** The role of pieces that name none. */
const PLAIN_ROLE = 'Pieces';

/** How wide the pieces lie together by how high: few are then seen side by side, and none hides what stands under the picture. */
const WIDTH_BY_HEIGHT = 2;

/** Air between pieces, as a part of their mean size. */
const GAP = 0.12;

/**
 * Pieces named like A1 and A2, wanted equally often, make a unit A; any other is a unit of its own under the next free letter.
 * @param pieces at least one
 */
export function measuredBlock(pieces: readonly MeasuredPiece[], choice: MeasuredChoice): DrawnBlock {
  const roles = rolesOf(pieces, choice.roles);
  const places = sideBySide(pieces);
  const units: { id: string; name?: string; count: number; patches: Patch[] }[] = [];
  pieces.forEach((piece, i) => {
    const role = roles.find((one) => one.name === (piece.role || PLAIN_ROLE))!.id;
    const outline = moveOutline(piece.outline, (corner) => add(corner, places[i]!));
    const named = /^(\p{L}{1,3})\s*(\d{1,4})$/u.exec(piece.name);
    const [letter, number] = named === null ? ['', 1] : [named[1]!.toUpperCase(), Math.max(1, Number(named[2]))];
    const same = units.find((unit) => unit.id === letter);
    const fits = same?.count === piece.count && same.patches.every((patch) => patch.number !== number) && !choice.paper;
    if (same !== undefined && fits) {
      same.patches.push({ number, role, outline, facing: piece.facing });
      return;
    }
    const id = letter !== '' && same === undefined ? letter : freeLetter(units, pieces);
    const isOwn = id === letter || piece.name === '';
    units.push({
      id,
      ...(isOwn ? {} : { name: piece.name }),
      count: piece.count,
      patches: [{ number: id === letter ? number : 1, role, outline, facing: piece.facing }],
    });
  });
  return {
    name: choice.name,
    loose: true,
    roles,
    units: units.map(
      ({ id, name, count, patches }): Unit => ({
        id,
        ...(name !== undefined && { name }),
        paper: choice.paper,
        repeat: { count, over: 0 },
        axis: 0,
        patches: patches.toSorted((a, b) => a.number - b.number),
      }),
    ),
  };
}

/** One seed for each role named; its facing is that of the first piece that has one, and every piece says its own besides. */
function rolesOf(pieces: readonly MeasuredPiece[], known: MeasuredChoice['roles']): readonly RoleSeed[] {
  const seeds: RoleSeed[] = [];
  for (const { role } of pieces) {
    const name = role || PLAIN_ROLE;
    const own = pieces.filter((piece) => piece.role === role).map((piece) => piece.facing);
    const facing = own.find(({ to }) => to !== 'free' && to !== 'along') ?? { to: 'free' };
    if (seeds.every((seed) => seed.name !== name)) {
      const same = known.find((one) => one.name === name);
      seeds.push({ id: same?.id ?? freshIdFor(name, [...known, ...seeds], 'role'), name, facing });
    }
  }
  return seeds;
}

/** A, B, … Z, AA, AB, …: the first that neither a unit nor a piece's name has. */
function freeLetter(units: readonly { readonly id: string }[], pieces: readonly MeasuredPiece[]): string {
  const named = pieces.map(({ name }) => /^(\p{L}{1,3})\s*\d{1,4}$/u.exec(name)?.[1]?.toUpperCase());
  for (let number = 1; ; number++) {
    const id = letters(number);
    if (units.every((unit) => unit.id !== id) && !named.includes(id)) {
      return id;
    }
  }
}

function letters(number: number): string {
  const rest = Math.floor((number - 1) / 26);
  return (rest === 0 ? '' : letters(rest)) + String.fromCharCode(65 + ((number - 1) % 26));
}

/** Where the middle of each piece lies: in rows from the top, about the origin. */
function sideBySide(pieces: readonly MeasuredPiece[]): readonly Point[] {
  const sizes = pieces.map(({ outline }) => {
    const { min, max } = outlineBox(outline);
    return [max[0] - min[0], max[1] - min[1]] as const;
  });
  const mean = sizes.reduce((sum, [width, height]) => sum + (width + height) / 2, 0) / sizes.length;
  const gap = mean * GAP;
  const area = sizes.reduce((sum, [width, height]) => sum + (width + gap) * (height + gap), 0);
  const widest = Math.max(...sizes.map(([width]) => width), Math.sqrt(area * WIDTH_BY_HEIGHT));
  const places: Point[] = [];
  let [left, top, tallest] = [0, 0, 0];
  for (const [width, height] of sizes) {
    if (left > 0 && left + width > widest) {
      [left, top, tallest] = [0, top - tallest - gap, 0];
    }
    places.push([left + width / 2, top - height / 2]);
    left += width + gap;
    tallest = Math.max(tallest, height);
  }
  const right = Math.max(...places.map(([x], i) => x + sizes[i]![0] / 2));
  const bottom = Math.min(...places.map(([, y], i) => y - sizes[i]![1] / 2));
  return places.map((place) => add(place, [-right / 2, -bottom / 2]));
}
