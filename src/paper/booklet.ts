/** The cutting booklet as plain data: what she does, in order, in words and marks. make-booklet.ts makes it, booklet-pages.ts sets it. */
import type { ClothLengthDrawn } from '../draw/unroll.ts';
import type { StripSteps } from '../plan/cut-steps.ts';
import type { Cloth } from '../quilt/quilt.ts';

export interface Booklet {
  readonly title: string;
  /** Before all cutting: cautions. */
  readonly care: readonly string[];
  /** How marks, numbers and signs are meant. */
  readonly explained: readonly string[];
  readonly sittings: readonly Sitting[];
  /** How joined lengths are made up. */
  readonly joins: readonly string[];
}

/** All at once, or the test block's strips and then the rest. */
export interface Sitting {
  /** Null where there is only one. */
  readonly title: string | null;
  readonly lengths: readonly BookletLength[];
}

/** One bolt, or shelf pieces cut alike. */
export interface BookletLength {
  readonly cloth: Cloth;
  readonly length: ClothLengthDrawn;
  readonly title: string;
  /** "42 in wide, 12 1/8 in of 18 in used". */
  readonly extent: string;
  /** Before the first strip: folding, chalk. */
  readonly before: readonly string[];
  readonly strips: readonly BookletStrip[];
  /** Look-alikes among its blanks. */
  readonly alike: readonly string[];
  /** Names that carry a star. */
  readonly mistaken: ReadonlySet<string>;
}

export interface BookletStrip {
  /** "Strip 3", "Strips 4 to 6", or what is trimmed. */
  readonly title: string;
  /** "each 2 5/8 in tall, 16 blanks; 1 1/2 in left at the end". */
  readonly words: string;
  /** How many strips are cut so: a box to tick for each. */
  readonly times: number;
  /** The strip's height as written, without its unit. */
  readonly height: string;
  /** Null for the strip that squares the end. */
  readonly steps: StripSteps | null;
  readonly before: string | null;
  readonly cuts: readonly BookletCut[];
  /** How many of the cuts, from the first, go through two layers. */
  readonly pairs: number;
  /** Before the first cut that is not through two layers. */
  readonly between: string | null;
  /** What goes into which bag. */
  readonly bags: string | null;
  /** The most that rounding may take of a blank, in the quilt's unit; 0 where it takes nothing. */
  readonly lacks: number;
}

export interface BookletCut {
  readonly number: number;
  /** What it parts from the rest; of two layers, the lower one's first; of a stack, from the near edge up. */
  readonly blanks: readonly string[];
  readonly kind: 'one' | 'pair' | 'stack';
  /** Whether the blank lies wrong side up. */
  readonly isOver: boolean;
  /** As written, without the unit; the same where the cut is square. */
  readonly near: string;
  readonly far: string;
  /** In the quilt's unit. */
  readonly nearAt: number;
  readonly farAt: number;
  /** "45°" where rulers carry it, "square", else empty: by the marks. */
  readonly angle: string;
  /** Of a stack: how it is cut along. */
  readonly layers: readonly string[];
}
