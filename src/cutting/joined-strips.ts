/** Binding, sashing and borders: which strips, joined end to end, make up a length. */
import type { Polygon } from '../shape/point.ts';
import { roundUp } from './slant.ts';

/** Pieces of one size. x runs across the cloth, y along it. */
export interface JoinedPiece {
  /** The last and shorter one of its length, which may come from the end of a strip or from a shelf piece. */
  readonly last: boolean;
  readonly count: number;
  readonly outline: Polygon;
}

/** In one unit throughout. */
export interface StripsWanted {
  readonly total: number;
  /** Of the strips. */
  readonly width: number;
  /** Lost at each join. */
  readonly join: number;
  /** No piece may be shorter; null where every piece is a strip right across. */
  readonly shortest: number | null;
  /** Usable width of the cloth as washed. */
  readonly clothWidth: number;
  readonly ruler: number;
}

/**
 * Three ways, told by the shortest piece that she will join:
 * - not given: strips right across the cloth;
 * - no more than the cloth's width: strips right across and, where less than a whole one is left to make up, one last
 *   piece of what is left but no shorter than that;
 * - more: pieces all alike that run along the cloth, since no strip across is long enough.
 *
 * n pieces have n − 1 joins between them, and each join takes its loss from the cloth once: the lengths of all pieces
 * less (n − 1)·join are at least the total.
 * @returns null where a join takes the whole width, so that no number of strips is enough
 */
export function joinedStrips(wanted: StripsWanted): readonly JoinedPiece[] | null {
  const { total, width, join, shortest, clothWidth } = wanted;
  if (join >= clothWidth) {
    return null;
  }
  if (shortest !== null && Math.min(shortest, total) > clothWidth) {
    return [piecesAlong(wanted, shortest)];
  }
  const count = Math.max(1, Math.ceil((total - join) / (clothWidth - join) - 1e-9));
  const left = total - (count - 1) * (clothWidth - join);
  // A single piece is joined to nothing, so it need be no longer than the total.
  const last = shortest === null ? clothWidth : onRuler(count === 1 ? left : Math.max(left, shortest), wanted.ruler);
  if (last >= clothWidth - 1e-9) {
    return [{ last: false, count, outline: rectangle(clothWidth, width) }];
  }
  const piece = { last: count > 1, count: 1, outline: rectangle(last, width) };
  return count === 1 ? [piece] : [{ last: false, count: count - 1, outline: rectangle(clothWidth, width) }, piece];
}

/** As many pieces as take least of the cloth when they lie side by side along it; of equal numbers, the fewest joins. */
function piecesAlong({ total, width, join, clothWidth, ruler }: StripsWanted, shortest: number): JoinedPiece {
  const most = Math.max(1, Math.floor((total - join) / (shortest - join) + 1e-9));
  const abreast = Math.max(1, Math.floor(clothWidth / width + 1e-9));
  let best = { count: 1, length: Number.POSITIVE_INFINITY, taken: Number.POSITIVE_INFINITY };
  for (let count = 1; count <= most; count++) {
    const length = onRuler((total + (count - 1) * join) / count, ruler);
    const taken = Math.ceil(count / abreast) * length;
    if (taken < best.taken - 1e-9) {
      best = { count, length, taken };
    }
  }
  return { last: false, count: best.count, outline: rectangle(width, best.length) };
}

export const onRuler = (length: number, ruler: number): number => roundUp(length / ruler) * ruler;

export const rectangle = (width: number, height: number): Polygon => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
