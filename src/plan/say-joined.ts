/** How a joined length is made up, in words: how many pieces are cut, how they are joined, how far they reach. */
import type { Blank, CutList } from '../cutting/cut-list.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { JoinedLength, LengthUnit, Quilt } from '../quilt/quilt.ts';
import { followed } from '../quilt/quilt-size.ts';
import { boxHeight, boxWidth, polygonBox } from '../shape/polygon.ts';

/** A length in the quilt's unit, written for reading. */
export type WriteLength = (length: number) => string;

interface Piece {
  readonly count: number;
  /** Across the cloth and along it. */
  readonly x: number;
  readonly y: number;
}

/** Each joined length that is in the cut list, by name, with its words. */
export function sayAllJoined(
  quilt: Quilt,
  cutList: CutList,
  write: WriteLength,
): readonly (readonly [string, string])[] {
  return quilt.joined.flatMap((joined) => {
    const words = sayJoined(quilt, joined, cutList, write);
    return words === null ? [] : [[joined.name, words] as const];
  });
}

/** @returns null where nothing of it is in the cut list */
export function sayJoined(quilt: Quilt, joined: JoinedLength, cutList: CutList, write: WriteLength): string | null {
  const blanks = cutList.groups.flatMap((group) => group.blanks).filter((blank) => blank.joined === joined.id);
  if (blanks.length === 0) {
    return null;
  }
  const sized = followed(quilt, joined);
  return joined.kind === 'panels'
    ? sayPanels(quilt.unit, sized, blanks.map(pieceOf), write)
    : sayStrips(quilt.unit, sized, blanks.map(pieceOf), write);
}

function pieceOf({ demand, shapes }: Blank): Piece {
  const box = polygonBox(shapes[0]!.outline);
  return { count: demand, x: boxWidth(box), y: boxHeight(box) };
}

function sayStrips(unit: LengthUnit, joined: JoinedLength, pieces: readonly Piece[], write: WriteLength): string {
  const [width, join, total] = [joined.width, joined.join, joined.length].map((each) => lengthIn(unit, each)) as [
    number,
    number,
    number,
  ];
  // Strips right across are as tall as they are to be wide; those along the cloth lie on their side.
  const isAlong = pieces.every(({ x, y }) => Math.abs(y - width) > 1e-6 && Math.abs(x - width) < 1e-6);
  const lengthOf = ({ x, y }: Piece) => (isAlong ? y : x);
  const reach = pieces.reduce((sum, piece) => sum + piece.count * lengthOf(piece), 0);
  const joins = pieces.reduce((sum, { count }) => sum + count, 0) - 1;
  const cut = pieces.map((piece, i) => {
    const last = i > 0 ? 'a last one of ' : '';
    return `${last}${i > 0 ? '' : `${counted(piece.count, 'strip')} of `}${write(lengthOf(piece))}`;
  });
  const way = isAlong ? 'along the cloth' : 'across the cloth';
  return `${cut.join(' and ')}, ${write(width)} wide, ${way}; ${sayJoins(joins, 'end to end', 'join', join, write)} reach${joins === 0 ? 'es' : ''} ${write(reach - joins * join)} of the ${write(total)} wanted.`;
}

function sayPanels(unit: LengthUnit, joined: JoinedLength, pieces: readonly Piece[], write: WriteLength): string {
  const inUnit = (length: JoinedLength['length']) => lengthIn(unit, length);
  const join = inUnit(joined.join);
  const over = 2 * inUnit(joined.overhang ?? 0);
  const [length, width] = [inUnit(joined.length) + over, inUnit(joined.width) + over];
  const seams = pieces.reduce((sum, { count }) => sum + count, 0) - 1;
  const tall = pieces[0]!.y;
  // Sizes round up to the ruler, so that which way they run is told by which they cover with less to spare.
  const isUp = tall >= length - 1e-6 && (tall < width - 1e-6 || tall - length <= tall - width + 1e-6);
  const cut = pieces.map(({ count, x, y }, i) =>
    i === 0 ? `${counted(count, 'panel')} ${write(x)} wide and ${write(y)} long` : `a narrower one of ${write(x)}`,
  );
  const covers = pieces.reduce((sum, { count, x }) => sum + count * x, 0) - seams * join;
  const [across, along] = isUp ? [width, length] : [length, width];
  return `${cut.join(' and ')}, running ${isUp ? 'up' : 'across'} the quilt; ${sayJoins(seams, 'side by side', 'seam', join, write)} cover${seams === 0 ? 's' : ''} ${write(covers)} by ${write(tall)} of the ${write(across)} by ${write(along)} wanted.`;
}

function sayJoins(joins: number, how: string, name: string, loss: number, write: WriteLength): string {
  if (joins === 0) {
    return `without a ${name} it`;
  }
  const lost = loss === 0 ? '' : `, ${write(loss)} lost at each`;
  return `joined ${how}, ${counted(joins, name)}${lost}, they`;
}

const counted = (count: number, name: string): string => `${count} ${name}${count === 1 ? '' : 's'}`;
