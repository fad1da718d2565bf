/**
 * The packing engine's own file, in and out: blanks, cloths and turns, nothing about quilts.
 * Any unit of length, the same throughout. Cloth lies right side up: x runs across it from one selvage to the other
 * (0 to width), y along its length from the cut end. A print's up is +y. Turns are degrees anticlockwise.
 */
import type { Polygon } from '../shape/point.ts';

export interface LayoutJob {
  readonly method: 'strips' | 'shears';
  /** Strips only. 2: rows; 3: rows and stacks. Default 2. */
  readonly stages?: 2 | 3;
  /** Strip heights are whole multiples of it. Absent: each is the height of some turned blank. */
  readonly ruler?: number;
  /** Wall time it may take. Default 10. */
  readonly seconds?: number;
  readonly seed?: number;
  readonly cloths: readonly JobCloth[];
  readonly blanks: readonly JobBlank[];
  /** Two stages only: blocks each of which is to be of one cloth throughout. */
  readonly oneCloth?: readonly OneCloth[];
}

/** So many blocks, each cut from the cloths of one of the lists (a bolt and its like pieces make one list). */
export interface OneCloth {
  readonly id: string;
  readonly blocks: number;
  /** By blank: how many each block takes. What a blank's demand has beyond the blocks' may come from any of its cloths. */
  readonly blanks: Readonly<Record<string, number>>;
  readonly cloths: readonly (readonly string[])[];
}

export interface JobCloth {
  readonly id: string;
  readonly width: number;
  /** A number: a piece of that length. null (the default): a bolt, cut to the length needed. */
  readonly length?: number | null;
  /** Pieces only: how many there are; null: as many as wanted. Default 1. */
  readonly count?: number | null;
  /** Bolts only: sold in whole multiples of this length. */
  readonly step?: number;
  /** Bolt: per unit of length bought, default 1. Piece: per piece used, default its length. */
  readonly cost?: number;
  /** Which way strips run: across the width, along the length, or either (each layout one way). Default across. */
  readonly firstCut?: 'across' | 'along' | 'either';
  /**
   * Bolts only, strips only: length trimmed off to square the cut end, once if any of this bolt is bought. Default 0.
   * It is answered as a first strip that holds no blank, so that lengths add up for any reader of the answer.
   */
  readonly squaring?: number;
}

export type TurnRange = number | { readonly centre: number; readonly within: number };
/** Degrees anticlockwise modulo 360. A range includes its ends. */
export type Turns = 'any' | readonly TurnRange[];

export interface BlankShape {
  readonly outline: Polygon;
  /** Default [0]. */
  readonly turns?: Turns;
  /** Whether it may be turned over. Default false. */
  readonly mirror?: boolean;
}

export type ClothChoice = string | { readonly id: string; readonly turns?: Turns; readonly mirror?: boolean };

/** Either one outline with its turns, or `shapes`: alternatives that share one demand. */
export interface JobBlank {
  readonly id: string;
  readonly demand: number;
  readonly outline?: Polygon;
  readonly turns?: Turns;
  readonly mirror?: boolean;
  readonly shapes?: readonly BlankShape[];
  /** Where it may be cut from. Default: every cloth. */
  readonly cloths?: readonly ClothChoice[];
}

export interface LayoutAnswer {
  readonly status: 'optimal' | 'feasible' | 'partial';
  readonly cost: number;
  /** A proved lower bound on the cost of any plan of the method; null when the plan is partial. */
  readonly bound: number | null;
  readonly boundFrom: string;
  readonly seconds: number;
  readonly layouts: readonly Layout[];
  readonly unplaced: readonly Unplaced[];
  /** With three stages: what the best plan found in two costs, which is never less; absent where it does not place as many blanks. */
  readonly twoStageCost?: number;
  /** For each of the job's `oneCloth`: how many of its blocks are cut from each of its lists of cloths, in their order. */
  readonly oneCloth?: readonly BlocksOfCloths[];
  /** Not the engine's: where one block's strips were planned before all others (test-first.ts). */
  readonly testFirst?: TestFirst;
}

/** How a plan begins with the strips of one block. */
export interface TestFirst {
  /** The block's id. */
  readonly block: string;
  /** Of each layout, how many of its strips, from its start, are cut first. All 0 where it could not be done. */
  readonly strips: readonly number[];
  /** Of each layout and each of those strips, how many of its blanks, from its start, are the block's; the others wait. */
  readonly held: readonly (readonly number[])[];
  /** A proved lower bound on the cost of any plan that begins with these strips; null where it could not be done. */
  readonly bound: number | null;
  /** The plan without that wish. */
  readonly without: LayoutAnswer;
}

export interface BlocksOfCloths {
  readonly id: string;
  readonly blocks: readonly number[];
  /** Where one block is cut before the rest: which list it is of. */
  readonly first?: number;
}

export interface Layout {
  readonly cloth: string;
  /** How many times this layout is cut. */
  readonly count: number;
  /** The cloth's length that one cutting of it uses. A bolt's layouts lie end to end. */
  readonly length: number;
  readonly firstCut?: 'across' | 'along';
  /** Where each strip begins (y, or x where first cuts run along) and its height. */
  readonly strips?: readonly Strip[];
  readonly placements: readonly Placement[];
}

export interface Strip {
  readonly from: number;
  readonly height: number;
}

/** The outline turned anticlockwise about its origin, then x to −x if mirrored, then moved by (x, y). */
export interface Placement {
  readonly blank: string;
  readonly shape: number;
  readonly turn: number;
  readonly mirror: boolean;
  readonly x: number;
  readonly y: number;
}

export interface Unplaced {
  readonly blank: string;
  readonly count: number;
  readonly why: string;
}

/** What the engine says while it works. `answer` is the best clean plan so far, `bound` the best bound so far. */
export interface Progress {
  readonly seconds: number;
  /** What it is doing, in a word or two for a person: 'pricing strips', 'choosing strips', 'proving'. */
  readonly doing: string;
  readonly bound: number | null;
  readonly answer: LayoutAnswer | null;
}
