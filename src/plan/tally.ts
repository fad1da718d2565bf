/** What to buy, what it costs, where the cloth goes: the shapes of the tally. make-tally.ts computes it. */

import type { BlockCloths } from './block-cloths.ts';
import type { Leftover } from './leftovers.ts';

export interface Tally {
  readonly cloths: readonly ClothTally[];
  /** Sum of the cloths' prices, each rounded already; null when nothing has one, or they are in several currencies. */
  readonly price: number | null;
  readonly currency: string | null;
  readonly areas: Areas;
  /** True when every cloth's purchase is proved least. */
  readonly provedLeast: boolean;
  /** Which block is of which cloth, role by role, where each keeps to one. */
  readonly blockCloths: readonly BlockCloths[];
}

/** Square units of washed cloth. They add up to `used`. */
export interface Areas {
  /** Everything bought and every shelf piece used. */
  readonly used: number;
  readonly finished: number;
  readonly seams: number;
  /** Room, rounding to the ruler, and the difference between blank and sewn patch. */
  readonly room: number;
  readonly spares: number;
  readonly squaring: number;
  /** Left whole and worth keeping (leftovers.ts). */
  readonly kept: number;
  /** What falls off between blanks, and leftovers too small to keep. */
  readonly waste: number;
}

export interface ClothTally {
  readonly cloth: string;
  readonly name: string;
  /** Length needed, as washed, squaring included. */
  readonly need: number;
  /** Steps to buy, and the length they make as sold (before washing); null when the cloth cannot be bought. */
  readonly steps: number | null;
  readonly buy: number;
  /** Rounded to the cent, as a shop rounds a line of its bill. */
  readonly price: number | null;
  /** Bought but not needed, as washed. */
  readonly over: number;
  readonly pieces: readonly { readonly piece: string; readonly used: number }[];
  readonly areas: Areas;
  /** What goes back on the shelf, largest first. */
  readonly leftovers: readonly Leftover[];
  readonly blanks: number;
  readonly proof: Proof;
  /** Where strips are cut once more along: what that saves, in plain words. */
  readonly thirdCuts?: string;
  readonly unplaced: readonly { readonly blank: string; readonly count: number; readonly why: string }[];
}

export interface Proof {
  /** least: no plan buys less; gap: some plan might; none: part of the demand is not placed. */
  readonly state: 'least' | 'gap' | 'none';
  /** Steps (or length, when there is no step) that are proved to be needed. */
  readonly atLeast: number | null;
  /** In plain words: "No plan with strips cut like these buys less than 3 quarter yards." */
  readonly words: string;
  /** Steps that the area of the blanks alone would need: what naive reckoning allows. */
  readonly byArea: number | null;
  /** True where it speaks only of plans that begin with the test block's strips as this one does. */
  readonly testFirst?: boolean;
}
