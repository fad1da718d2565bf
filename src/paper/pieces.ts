/** What is printed at true scale: foundations of units sewn on paper, templates of patches sewn without. */
import type { Outline } from '../shape/outline.ts';
import type { Point, Polygon } from '../shape/point.ts';

export interface PaperPiece {
  readonly kind: 'foundation' | 'template';
  /** "A", "B mirrored", "C1"; with the block's id before it where blocks share letters. */
  readonly name: string;
  /** The block's name. */
  readonly block: string;
  /** As printed, in inches, about the block's centre: a foundation mirrored, a template as the finished front shows it. */
  readonly patches: readonly PaperPatch[];
  /** The line along which paper and cloth are trimmed: the allowance beyond the outermost seams. Anticlockwise. */
  readonly trim: Polygon;
  /** Where it is to meet its neighbours. */
  readonly marks: readonly JoinMark[];
  /** What lies beyond its outer edges. */
  readonly neighbours: readonly Neighbour[];
  /** How many of it the quilt has. */
  readonly needed: number;
  /** How many are printed. */
  readonly copies: number;
}

export interface PaperPatch {
  /** "B2". */
  readonly name: string;
  /** In inches, arcs kept. */
  readonly outline: Outline;
  readonly role: string;
  /** Names of the cloths that may fill it. */
  readonly cloths: readonly string[];
  readonly colour: string;
  /** The print's up as it points on this side, degrees anticlockwise from up; null where it points nowhere. */
  readonly arrow: { readonly degrees: number; readonly heads: 1 | 2 } | null;
  /** Where no print says how it lies: the straight grain, degrees anticlockwise from up; null where that is free too. */
  readonly grain: number | null;
}

/** A short line across the allowance. */
export interface JoinMark {
  readonly from: Point;
  readonly to: Point;
}

/** An outer edge and the letters of the units that it is joined to; none on the block's outside. */
export interface Neighbour {
  readonly from: Point;
  readonly to: Point;
  /** Of length 1, away from the piece, halfway along the edge. */
  readonly middle: Point;
  readonly outward: Point;
  readonly units: readonly string[];
}
