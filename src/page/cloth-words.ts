/** A cloth in a line of words. */
import { sayMoney } from '../plan/say-money.ts';
import type { Cloth, Length, ShelfPiece } from '../quilt/quilt.ts';
import { fieldText, type Units } from './written.ts';

export const NAMES_OF_PER: Readonly<Record<'yd' | 'm', string>> = { yd: 'yard', m: 'metre' };

/** "42 in wide, sold by 1/4 yd, $9.60 a yard; on the shelf 21 in × 18 in". */
export function clothWords(cloth: Cloth, units: Units): string {
  const say = (length: Length): string => fieldText(length, units);
  const { price, step } = cloth;
  const sold = [
    `${say(cloth.width)} wide`,
    step === undefined ? 'not to be bought' : `sold by ${say(step)}`,
    ...(price === undefined || step === undefined
      ? []
      : [`${sayMoney(price.amount, price.currency ?? null)} a ${NAMES_OF_PER[price.per]}`]),
    ...shrinkageWords(cloth),
  ].join(', ');
  const pieces = (cloth.pieces ?? []).map((piece) => pieceWords(piece, say));
  return pieces.length === 0 ? sold : `${sold}; on the shelf ${pieces.join(' and ')}`;
}

function pieceWords({ width, length, count = 1 }: ShelfPiece, say: (length: Length) => string): string {
  return `${count === 1 ? '' : `${count} of `}${say(width)} × ${say(length)}`;
}

function shrinkageWords({ shrinkage, washFirst }: Cloth): readonly string[] {
  if (shrinkage === undefined || (shrinkage.along === 0 && shrinkage.across === 0)) {
    return [];
  }
  const unwashed = washFirst === false ? ', but cut unwashed' : '';
  return [`shrinks ${shrinkage.along} % along and ${shrinkage.across} % across${unwashed}`];
}
