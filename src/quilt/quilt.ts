/**
 * What she has and wants: the quilt file as it lies in memory, which is also how it is written. Plain data, never
 * changed in place. Coordinates and bare numbers of length are in the quilt's `unit`; a length may also be written with
 * its own unit ("1/4 yd", "42 in", "15 cm") and then stays as written, so that switching units never drifts.
 * Angles are degrees anticlockwise as seen in the finished quilt, x to the right, y up.
 */
import type { Outline } from '../shape/outline.ts';
import type { Form } from './forms/forms.ts';
import type { TracedFrom } from './tracing/traced-from.ts';

export const QUILT_FORMAT = 'yardwright';
export const QUILT_VERSION = 1;

export type LengthUnit = 'in' | 'cm';
/** A number in the quilt's unit, or text with a unit: in, cm, mm, yd, m; fractions as "1 1/4". See measure.ts. */
export type Length = number | string;

export interface Quilt {
  readonly format: typeof QUILT_FORMAT;
  readonly version: typeof QUILT_VERSION;
  readonly name: string;
  readonly unit: LengthUnit;
  /** Seam allowance. */
  readonly allowance: Length;
  /** Extra round a paper-pieced blank on every side but the one sewn first. */
  readonly room: Length;
  /** What she cuts by: sizes round up to whole multiples of it. */
  readonly ruler: Length;
  /** Length lost to squaring the cut end of each bolt and each shelf piece. */
  readonly squaring: Length;
  /** Extra blanks of each kind, in case of a spoilt one. */
  readonly spares: number;
  /** Whether strips are cut once more along where that helps: blanks stacked between two square cuts. Default false. */
  readonly stacks?: boolean;
  /** How large the finished quilt is, borders and all, where she has said so; else it is reckoned (quilt-size.ts). */
  readonly finished?: { readonly width: Length; readonly length: Length };
  /** Leftovers with both sides at least so long go back on the shelf. Default 6 in or 15 cm. */
  readonly keep?: Length;
  /** The id of a block of which one copy is cut first, to be sewn before the rest is cut. Absent: none. */
  readonly testBlock?: string;
  readonly blocks: readonly Block[];
  readonly joined: readonly JoinedLength[];
  readonly roles: readonly Role[];
  readonly cloths: readonly Cloth[];
  readonly schemes: readonly Scheme[];
  /** The id of the scheme being planned. */
  readonly scheme: string;
}

/** A drawing about a centre (the origin). Its units are either drawn from the numbers of a form, or listed. */
export interface Block {
  readonly id: string;
  readonly name: string;
  /** How many of it the quilt has. */
  readonly count: number;
  /** How each copy is turned in the quilt, repeated if shorter than count. Default [0]. */
  readonly turns?: readonly number[];
  /** Exactly one of form and units is present. */
  readonly form?: Form;
  readonly units?: readonly Unit[];
  /** Of a block with a form: which of the quilt's roles stands for a role of the form, by id, where it is not that of the same id. */
  readonly roles?: Readonly<Record<string, string>>;
  /** Of a block with a form: what single patches have of their own, by their names on paper: A1. */
  readonly own?: Readonly<Record<string, PatchOwn>>;
  /**
   * True: pieces measured one by one, that only lie side by side in the drawing. None of their edges is the block's outside,
   * and outward, inward and round are taken along the axis of their units, wherever they lie. Default false.
   */
  readonly loose?: boolean;
  /** What it was traced from, if she keeps that in the file. Default: not kept. */
  readonly traced?: TracedFrom;
}

/** What is pieced on one paper foundation, or (paper false) patches simply sewn together. Drawn in its first place. */
export interface Unit {
  /** A letter: A, B, … */
  readonly id: string;
  readonly name?: string;
  readonly paper: boolean;
  readonly repeat: Repeat;
  /** The unit's axis, degrees anticlockwise from up. Default: the bisector of the sector that it spans. */
  readonly axis?: number;
  /** In sewing order. */
  readonly patches: readonly Patch[];
}

/**
 * Place k of `count` (from 0) is turned by from + k × over / count about the block's centre. `mirrored`: 'no'; 'also' (at
 * each place one as drawn and one mirrored); 'alternate' (every second place, from the second, mirrored). A mirrored unit
 * is reflected in the vertical (x to −x) before it is turned.
 */
export interface Repeat {
  readonly count: number;
  /** Default 0. */
  readonly from?: number;
  /** Default 360. 0: all at one place, as alike pieces of a loose block are. */
  readonly over?: number;
  /** Default 'no'. */
  readonly mirrored?: 'no' | 'also' | 'alternate';
}

/** One finished shape. Its name on paper is the unit's letter and its number: A1. */
export interface Patch extends PatchOwn {
  readonly number: number;
  readonly role: string;
  readonly outline: Outline;
}

/** What one patch may have otherwise than its role. */
export interface PatchOwn {
  /** Where absent, the role's. */
  readonly facing?: Facing;
  /** At single places of its unit, by their numbers from 0 (places.ts), another facing still. */
  readonly facingAt?: Readonly<Record<string, Facing>>;
  readonly room?: Length;
  /** Where absent, the role's. */
  readonly hidden?: boolean;
}

/** Where a directional print points in the finished quilt. */
export interface Facing {
  readonly to: 'outward' | 'inward' | 'clockwise' | 'anticlockwise' | 'upright' | 'along' | 'free';
  /** For outward, inward and round: taken at the patch's centroid ('middle', the default) or along the unit's axis. */
  readonly from?: 'middle' | 'axis';
  /** For 'along': the edge of the outline by index, and which sense of it. */
  readonly edge?: number;
  readonly sense?: 'forward' | 'backward';
  /** Degrees anticlockwise that the print is turned on from there; on a mirrored place clockwise. Default 0. */
  readonly turned?: number;
  /** Tolerance either way in degrees. Default 0. */
  readonly within?: number;
}

export type BlankShapeKind = 'outline' | 'box' | 'slant';

/** A place in the colour scheme. */
export interface Role {
  readonly id: string;
  readonly name: string;
  readonly facing: Facing;
  /** How its patches may be cut roughly; the plan chooses the best. Default ['slant', 'box']. */
  readonly shapes?: readonly BlankShapeKind[];
  readonly room?: Length;
  /** True: edges on the block's outside need not keep to the grain. Default false. */
  readonly biasAllowed?: boolean;
  /** Where several cloths may serve: true keeps all of a block's patches of this role to one of them. Default false. */
  readonly oneCloth?: boolean;
  /** Extra blanks of each kind for this role alone. Default: the quilt's. */
  readonly spares?: number;
  /**
   * True: hardly seen in the finished quilt (under a bold neighbour, small, at the back), so that its print may lie any way
   * if cloth is short. It faces as told until she takes such a plan. Default false.
   */
  readonly hidden?: boolean;
}

export type PrintKind = 'one-way' | 'two-way' | 'check' | 'tossed' | 'solid';

/** One design of fabric. */
export interface Cloth {
  readonly id: string;
  readonly name: string;
  /** #rrggbb, shown until there is a picture. */
  readonly colour: string;
  readonly print: PrintKind;
  /** Where the print's up points on the cloth: along the selvage or across it. Default along. */
  readonly up?: 'along' | 'across';
  /** False for solids and batiks whose two sides are alike: a blank may then be turned over. Default true. */
  readonly wrongSide?: boolean;
  /** How far the print repeats along its up: to draw it at its true size. Default: not known. */
  readonly repeat?: Length;
  /** Usable width between the selvages, as bought. */
  readonly width: Length;
  /** Sold in whole multiples of this; absent: cannot be bought, only the shelf serves. */
  readonly step?: Length;
  readonly price?: { readonly amount: number; readonly per: 'yd' | 'm'; readonly currency?: string };
  /** Shrinkage in the first wash, in percent of the length before. Default none. */
  readonly shrinkage?: { readonly along: number; readonly across: number };
  /** False: it is cut as bought, and shrinks in the finished quilt. Default true: washed before it is cut. */
  readonly washFirst?: boolean;
  readonly pieces?: readonly ShelfPiece[];
}

/** A piece she owns. Its sizes are as it lies now; width across the grain, length along the selvage. */
export interface ShelfPiece {
  readonly id: string;
  readonly width: Length;
  readonly length: Length;
  /** Default 1. */
  readonly count?: number;
  /** Whether it was washed already, so that it shrinks no more. Default true. */
  readonly washed?: boolean;
}

/**
 * What is joined up from the cloth's whole width. 'strips': binding, sashing or a border, a total length of strips of one
 * width, end to end. 'panels': a backing, panels side by side that cover an area.
 */
export interface JoinedLength {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  /** Default strips. */
  readonly kind?: 'strips' | 'panels';
  /** What it is, where it follows the quilt's size: its length, and a backing's width, are then reckoned (quilt-size.ts). */
  readonly follows?: 'binding' | 'border' | 'sashing' | 'backing';
  /** Strips: the total needed, joins not counted. Panels: the length of the area to be covered, up the quilt. */
  readonly length: Length;
  /** Strips: their cut width. Panels: the width of the area to be covered. */
  readonly width: Length;
  /** Length lost at each join; of panels, width lost at each seam. */
  readonly join: Length;
  /** Strips: no piece may be shorter. Default: every piece is a strip right across the cloth. */
  readonly shortest?: Length;
  /** Panels: how far the backing outruns the quilt on every side. Default 0. */
  readonly overhang?: Length;
}

export interface Scheme {
  readonly id: string;
  readonly name: string;
  /** Role id to cloth id, or to several cloths any of which will do. */
  readonly cloths: Readonly<Record<string, string | readonly string[]>>;
}
