/** Where the print of a measured piece points, by the piece as it is drawn: nothing is known yet of where it will be sewn. */
import { edgesOf, type Outline } from '../../shape/outline.ts';
import type { Facing } from '../quilt.ts';

interface PieceFacing {
  readonly word: string;
  readonly to: Facing['to'];
  /** What a spreadsheet may say besides, in lower case. */
  readonly alias: readonly string[];
}

/** Taken along the axis of the piece's unit, which is up: so outward is its top, whichever way the block is turned. */
export const PIECE_FACINGS: readonly PieceFacing[] = [
  { word: 'up', to: 'outward', alias: ['outward', 'top', 'upright', 'n'] },
  { word: 'down', to: 'inward', alias: ['inward', 'bottom', 's'] },
  { word: 'to the right', to: 'clockwise', alias: ['right', 'clockwise', 'e'] },
  { word: 'to the left', to: 'anticlockwise', alias: ['left', 'anticlockwise', 'w'] },
  { word: 'any way', to: 'free', alias: ['', 'any', 'free', 'none', '-'] },
];

const ALONG = /^along (?:edge |side )?(\d+)( backward| back)?$/;

/**
 * "up", "to the left", "any way", nothing for any way, or "along 2": along the second side, counted anticlockwise from the
 * first. @param outline the piece, where it could be drawn
 * @throws RangeError that says what would be understood
 */
export function readPieceFacing(text: string, outline: Outline | undefined): Facing {
  const plain = text.trim().toLowerCase();
  const along = ALONG.exec(plain);
  if (along !== null) {
    return alongSide(Number(along[1]), along[2] !== undefined, outline);
  }
  const found = PIECE_FACINGS.find(({ word, alias }) => word === plain || alias.includes(plain));
  if (found === undefined) {
    const words = PIECE_FACINGS.map(({ word }) => word).join(', ');
    throw new RangeError(
      `“${text}” is no way for a print to point; expected ${words}, or along and the number of a side`,
    );
  }
  return found.to === 'free' ? { to: 'free' } : { to: found.to, from: 'axis' };
}

function alongSide(side: number, isBackward: boolean, outline: Outline | undefined): Facing {
  const edges = outline === undefined ? null : edgesOf(outline);
  if (edges !== null && edges[side - 1] === undefined) {
    throw new RangeError(`the piece has sides 1 to ${edges.length}; found ${side}`);
  }
  if (edges?.[side - 1]?.arc !== undefined) {
    throw new RangeError(`side ${side} is an arc, which has no one direction; choose a straight side`);
  }
  return { to: 'along', edge: side - 1, ...(isBackward && { sense: 'backward' as const }) };
}
