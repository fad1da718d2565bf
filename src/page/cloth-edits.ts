/** The changes that the page can make to cloths and to the pieces on the shelf, each from the old quilt to the new. */
import type { Cloth, Quilt, ShelfPiece } from '../quilt/quilt.ts';
import type { Edit } from './edit-event.ts';

/** New values for some fields; undefined takes a field out, so that what the file format takes for granted holds. */
type Changes<Whole> = { readonly [Field in keyof Whole]?: Whole[Field] | undefined };

export const setCloth = (cloth: string, fields: Changes<Cloth>): Edit =>
  changeCloth(cloth, (old) => merge(old, fields));

/** A plain cloth to begin with, sold as cloth is sold where she measures so. */
export function newCloth(quilt: Quilt, id: string): Cloth {
  const sold = quilt.unit === 'in' ? { width: '42 in', step: '1/4 yd' } : { width: '107 cm', step: '0.25 m' };
  return { id, name: 'New cloth', colour: '#c8b89a', print: 'solid', ...sold };
}

export const addCloth =
  (cloth: Cloth): Edit =>
  (quilt) => ({ ...quilt, cloths: [...quilt.cloths, cloth] });

/** Takes a cloth out. A quilt whose schemes name it would be no quilt any more, and is refused by the session. */
export const removeCloth =
  (cloth: string): Edit =>
  (quilt) => ({ ...quilt, cloths: quilt.cloths.filter((old) => old.id !== cloth) });

export const addPiece = (cloth: string, piece: ShelfPiece): Edit =>
  changeCloth(cloth, (old) => ({ ...old, pieces: [...(old.pieces ?? []), piece] }));

export const setPiece = (cloth: string, piece: string, fields: Changes<ShelfPiece>): Edit =>
  changeCloth(cloth, (old) => ({
    ...old,
    pieces: (old.pieces ?? []).map((one) => (one.id === piece ? merge(one, fields) : one)),
  }));

export const removePiece = (cloth: string, piece: string): Edit =>
  changeCloth(cloth, (old) => ({ ...old, pieces: (old.pieces ?? []).filter((one) => one.id !== piece) }));

/** "piece 2", or whatever number makes it new. */
export function freeId(kind: string, taken: readonly { readonly id: string }[]): string {
  let number = taken.length + 1;
  while (taken.some(({ id }) => id === `${kind} ${number}`)) {
    number++;
  }
  return `${kind} ${number}`;
}

function changeCloth(id: string, change: (cloth: Cloth) => Cloth): Edit {
  return (quilt) => ({ ...quilt, cloths: quilt.cloths.map((old) => (old.id === id ? change(old) : old)) });
}

function merge<Whole extends object>(old: Whole, fields: Changes<Whole>): Whole {
  const entries = Object.entries({ ...old, ...fields }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as Whole;
}
