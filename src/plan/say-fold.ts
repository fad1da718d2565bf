/** How cloth is folded for cutting, in words. */
import type { LengthUnit } from '../quilt/quilt.ts';
import type { StripPiece, StripSteps } from './cut-steps.ts';
import type { Fold } from './folded-row.ts';

/** The longest ruler that most have. Practice. */
const LONGEST_RULER: Readonly<Record<LengthUnit, number>> = { in: 24, cm: 60 };

/**
 * For the first cuts: cloth too wide for a ruler is folded, and a straight cut square to the fold parts both layers alike,
 * whatever the print. Null where the ruler spans it.
 */
export function sayFirstFold(width: number, unit: LengthUnit): string | null {
  const ruler = LONGEST_RULER[unit];
  return width <= ruler
    ? null
    : `Fold it selvage to selvage, right sides together, and cut the strips square to the fold: a ruler of ${ruler} ${unit} does not span it.`;
}

/** What is done to a strip before its subcuts. */
export interface StripHandling {
  /** Before the first subcut. */
  readonly before: string | null;
  /** Before those that are left once both layers are cut. */
  readonly between: string | null;
}

/**
 * @param isFolded whether the strip was cut through the fold
 * @param alike how many strips are cut just so
 */
export function handlingOf(strip: StripSteps, fold: Fold | null, isFolded: boolean, alike: number): StripHandling {
  if (strip.part === 'rest') {
    return { before: 'It was begun for the test block: cut on from there, marks still from its start.', between: null };
  }
  if (fold !== null) {
    const how = strip.firstCut === 'along' ? 'end to end' : isFolded ? 'selvage to selvage' : 'side to side';
    const rest = strip.pieces.length > 2 * fold.pairs;
    return {
      before: `${isFolded ? 'Leave' : 'Fold'} it ${isFolded ? 'folded ' : ''}${how}, right sides together: each cut goes through two layers.`,
      between: rest ? 'Open it flat, right side up, for the rest.' : null,
    };
  }
  const slanted = strip.pieces.some(({ near, far }) => Math.abs(near - far) > 1e-6);
  const open = isFolded ? 'Open it flat, right side up' : null;
  const before = open === null ? null : slanted ? `${open}, before the slanted cuts.` : `${open}.`;
  const stack = alike > 1 ? `Two ${alike > 2 ? 'at a time ' : ''}may lie one on the other, both right side up.` : null;
  return { before: [before, stack].filter((part) => part !== null).join(' ') || null, between: null };
}

/** What a cut through both layers gives: "2 × A2", "B1 below and B1 mirrored above". */
export function sayPair(strip: StripSteps, index: number): string {
  const [below, above] = pairAt(strip, index);
  return below.blank === above.blank ? `2 × ${below.blank}` : `${below.blank} below, ${above.blank} above`;
}

/** The blank that a cut through both layers gives from the lower one, and the one that it gives from the upper. */
export function pairAt({ pieces }: StripSteps, index: number): readonly [below: StripPiece, above: StripPiece] {
  return [pieces[index]!, pieces[pieces.length - 1 - index]!];
}
