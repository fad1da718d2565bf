/** A layout told as ruler work: strips in order, each with its subcuts. make-cut-steps.ts computes it. */
import type { Polygon } from '../shape/point.ts';

export interface StripSteps {
  readonly cloth: string;
  /** Which layout of the answer, and which strip of it. */
  readonly layout: number;
  readonly strip: number;
  readonly count: number;
  readonly firstCut: 'across' | 'along';
  readonly from: number;
  readonly height: number;
  /** Length of the strip: the cloth's width, or its length where strips run along. */
  readonly across: number;
  readonly pieces: readonly StripPiece[];
  /** Uncut at the end of the strip, measured on its shorter edge. */
  readonly left: number;
  /** Where only a part of it is told: 'begun', the rest of it waits; 'rest', it was begun before. */
  readonly part?: 'begun' | 'rest';
}

export interface StripPiece {
  readonly blank: string;
  readonly shape: number;
  readonly turn: number;
  readonly mirror: boolean;
  /** As it lies, in the strip's own frame: x along the strip from its start, y up from its near edge. */
  readonly outline: Polygon;
  /** The cut that parts it from what comes after: where it meets the strip's near (y = 0) and far edge. */
  readonly near: number;
  readonly far: number;
  /** Of that cut to the strip, 0 to 90 degrees; 90 is square. */
  readonly angle: number;
  /** Whether rulers carry that angle (30, 45, 60, 90), so that it may be named. */
  readonly rulerAngle: boolean;
  /** Whether near and far are whole multiples of the ruler. */
  readonly onRuler: boolean;
  /** Three stages only: where it lies in a stack. Blanks of one stack follow each other, with one cut after all of them. */
  readonly stack?: InStack;
}

/** A segment between two square cuts is cut once more along the strip, and each blank is trimmed from its part. */
export interface InStack {
  /** From the near edge up, 1 first, of so many. */
  readonly layer: number;
  readonly of: number;
  /** Where the segment begins along the strip; it ends at the cut after the blank. */
  readonly from: number;
  /** The cuts below and above it, from the strip's near edge. */
  readonly low: number;
  readonly high: number;
  /** Of the box that it is trimmed to: along the strip and up from it. */
  readonly width: number;
  readonly height: number;
}
