/** What a board lets happen under the pointer, the finger or the keyboard's cursor. Places are in the true plane. */
import type { SVGTemplateResult } from 'lit';
import type { Point } from '../../shape/point.ts';
import type { Sight } from './sight.ts';

export interface BoardHand {
  /** Takes hold of what lies within reach of a place, if it can be moved. */
  grab(at: Point, reach: number): boolean;
  /** Moves what is held. */
  drag(at: Point, reach: number): void;
  /** Lets go: the move is made, or given up. */
  drop(made: boolean): void;
  click(at: Point, reach: number): void;
  /** The pointer or the cursor is here; null: nowhere on the board. */
  hover(at: Point | null, reach: number): void;
  /** A key that is the hand's own; false where it is none. @param at the cursor */
  key(event: KeyboardEvent, at: Point, reach: number): boolean;
  /** What lies there, in a few words. */
  wordsAt(at: Point, reach: number): string;
  /** A place to which the cursor can leap, after or before the one where it is; null where there is none. */
  leap(from: Point, forward: boolean): Point | null;
  /** What is drawn over the picture. */
  draw(sight: Sight): SVGTemplateResult;
}
