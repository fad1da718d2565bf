/** Cloths as the packing engine sees them: bolts and shelf pieces, washed if they are to be, in the quilt's unit. */
import type { JobCloth } from '../plan/layout-job.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Cloth, LengthUnit, Quilt, ShelfPiece } from '../quilt/quilt.ts';
import type { ClothLength, Problem } from './cut-list.ts';

export interface ClothSupply {
  readonly length: ClothLength;
  readonly job: JobCloth;
}

/** How the bolts of a group are compared: by money, or by the length bought where some have no price to compare. */
export type CostBy = 'price' | 'length';

/** Money where every bolt of the group has a price in one currency. */
export function costBy(cloths: readonly Cloth[]): CostBy {
  const bolts = cloths.filter((cloth) => cloth.step !== undefined);
  const currencies = new Set(bolts.map((cloth) => (cloth.price === undefined ? null : (cloth.price.currency ?? ''))));
  return bolts.length > 0 && currencies.size === 1 && !currencies.has(null) ? 'price' : 'length';
}

/**
 * The bolt of a cloth, if it can be bought, and its shelf pieces. A piece loses the squaring before it is planned; a bolt
 * loses it once, in the plan.
 */
export function suppliesOf(quilt: Quilt, cloth: Cloth, by: CostBy): readonly ClothSupply[] {
  return [...boltOf(quilt, cloth, by), ...(cloth.pieces ?? []).flatMap((piece) => pieceOf(quilt, cloth, piece))];
}

function boltOf(quilt: Quilt, cloth: Cloth, by: CostBy): readonly ClothSupply[] {
  if (cloth.step === undefined) {
    return [];
  }
  const { along, across } = kept(cloth);
  return [
    {
      length: { id: cloth.id, cloth: cloth.id, piece: null, ...oneWay(cloth) },
      job: {
        id: cloth.id,
        width: lengthIn(quilt.unit, cloth.width) * across,
        length: null,
        step: lengthIn(quilt.unit, cloth.step) * along,
        // A washed length took 1/(1 − p) of cloth as sold, which is what is paid for.
        cost: (by === 'price' ? pricePerUnit(cloth, quilt.unit) : 1) / along,
        squaring: lengthIn(quilt.unit, quilt.squaring),
      },
    },
  ];
}

function pieceOf(quilt: Quilt, cloth: Cloth, piece: ShelfPiece): readonly ClothSupply[] {
  const { along, across } = piece.washed === false ? kept(cloth) : { along: 1, across: 1 };
  const length = lengthIn(quilt.unit, piece.length) * along - lengthIn(quilt.unit, quilt.squaring);
  if (length <= 0) {
    return [];
  }
  const id = `${cloth.id}/${piece.id}`;
  return [
    {
      length: { id, cloth: cloth.id, piece: piece.id, ...oneWay(cloth) },
      job: {
        id,
        width: lengthIn(quilt.unit, piece.width) * across,
        length,
        count: piece.count ?? 1,
        cost: 0,
        firstCut: 'either',
      },
    },
  ];
}

const oneWay = ({ print, up }: Cloth): Pick<ClothLength, 'oneWay'> =>
  print === 'one-way' ? { oneWay: up ?? 'along' } : {};

/** What is left of a length of 1 after washing: 1 where the cloth is cut as bought. */
export function kept({ shrinkage, washFirst }: Cloth): { readonly along: number; readonly across: number } {
  const { along, across } = washFirst === false ? { along: 0, across: 0 } : (shrinkage ?? { along: 0, across: 0 });
  return { along: 1 - along / 100, across: 1 - across / 100 };
}

/**
 * What a cloth that is cut unwashed does later. Blanks are not made larger for it: the seams shrink with the patches, and
 * by how much is the whole quilt's matter.
 */
export function unwashedProblems(cloth: Cloth): readonly Problem[] {
  const { along = 0, across = 0 } = cloth.shrinkage ?? {};
  if (cloth.washFirst !== false || (along === 0 && across === 0)) {
    return [];
  }
  return [
    {
      kind: 'warning',
      text: `“${cloth.name}” is cut unwashed: in the first wash its patches shrink by ${along} % along the selvage and ${across} % across it, and pucker beside those that shrink less. The blanks are not changed; wash it before cutting, or wash no cloth.`,
      cloth: cloth.id,
    },
  ];
}

function pricePerUnit({ price }: Cloth, unit: LengthUnit): number {
  return price === undefined ? 1 : price.amount / lengthIn(unit, `1 ${price.per}`);
}
