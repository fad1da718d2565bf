/** When all is cut: the shelf pieces used are gone, and what is left and worth keeping lies on the shelf instead. */
import { lengthIn } from '../quilt/measure.ts';
import type { Cloth, Quilt, ShelfPiece } from '../quilt/quilt.ts';
import type { Leftover } from './leftovers.ts';
import type { ClothTally, Tally } from './tally.ts';

/** The quilt with its shelf as the plan leaves it. Sizes are rounded down to the ruler. Cloths not in the tally stay as they are. */
export function shelveLeftovers(quilt: Quilt, tally: Tally): Quilt {
  const ruler = lengthIn(quilt.unit, quilt.ruler);
  return {
    ...quilt,
    cloths: quilt.cloths.map((cloth) => {
      const line = tally.cloths.find((each) => each.cloth === cloth.id);
      return line === undefined ? cloth : shelve(cloth, line, ruler);
    }),
  };
}

/** Whether the plan changes the shelf at all. */
export const changesShelf = (tally: Tally): boolean =>
  tally.cloths.some(({ leftovers, pieces }) => leftovers.length > 0 || pieces.some(({ used }) => used > 0));

function shelve(cloth: Cloth, line: ClothTally, ruler: number): Cloth {
  const old = (cloth.pieces ?? []).flatMap((piece) => {
    const used = line.pieces.find((each) => each.piece === piece.id)?.used ?? 0;
    const left = (piece.count ?? 1) - used;
    return left <= 0 ? [] : used === 0 ? [piece] : [counted(piece, left)];
  });
  const pieces = [...old];
  const taken = new Set([...old, ...(cloth.pieces ?? [])].map(({ id }) => id));
  for (const { width, length, count } of alike(line.leftovers, ruler)) {
    const id = freeName(taken);
    taken.add(id);
    pieces.push(counted({ id, width, length }, count));
  }
  if (pieces.length === 0) {
    const { pieces: _, ...rest } = cloth;
    return rest;
  }
  return { ...cloth, pieces };
}

/** Leftovers as the ruler measures them, those of a size together. */
function alike(leftovers: readonly Leftover[], ruler: number) {
  const sizes = new Map<string, { width: number; length: number; count: number }>();
  for (const { width, length, count } of leftovers) {
    const size = { width: onRuler(width, ruler), length: onRuler(length, ruler) };
    const known = sizes.get(`${size.width}|${size.length}`);
    sizes.set(`${size.width}|${size.length}`, { ...size, count: (known?.count ?? 0) + count });
  }
  return [...sizes.values()];
}

const onRuler = (value: number, ruler: number): number =>
  Math.round(Math.floor(value / ruler + 1e-6) * ruler * 1e9) / 1e9;

function counted({ count: _, ...piece }: ShelfPiece, count: number): ShelfPiece {
  return count === 1 ? piece : { ...piece, count };
}

function freeName(taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`left ${number}`)) {
    number++;
  }
  return `left ${number}`;
}
