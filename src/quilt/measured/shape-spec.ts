/**
 * What a measured shape is: a finished piece told by a few sizes taken with a ruler. Each has a file of its own; shapes.ts
 * lists them, and the table, what is pasted into it and the page's fields all read that one list.
 */
import type { Outline } from '../../shape/outline.ts';

export interface SizeSpec {
  /** Its name in a row. */
  readonly size: string;
  readonly label: string;
  readonly hint?: string;
  /** A length above zero; a lean, which may be of either sign or zero; degrees; or a whole number. */
  readonly type: 'length' | 'lean' | 'angle' | 'count';
  /** True: the field may stay empty. */
  readonly optional?: boolean;
  /** What a spreadsheet may call it besides its name and label, in lower case. */
  readonly alias: readonly string[];
}

/** Sizes in one unit of length, degrees, or whole numbers, by name; those left empty are absent. */
export type Sizes = Readonly<Record<string, number>>;

export interface ShapeSpec {
  readonly shape: string;
  readonly title: string;
  /** One line that says how it is measured. */
  readonly about: string;
  /** What a spreadsheet may call it besides, in lower case. */
  readonly alias: readonly string[];
  readonly sizes: readonly SizeSpec[];
  /**
   * The finished outline, anticlockwise, wherever it falls, its top at the top.
   * @param write a length in words, for reasons
   * @throws ShapeError where the sizes make no such shape
   */
  outline(sizes: Sizes, write: (length: number) => string): Outline;
}

/** Why sizes make no shape: told at the size that most likely is wrong. */
export class ShapeError extends Error {
  readonly size: string;

  constructor(size: string, message: string) {
    super(message);
    this.name = 'ShapeError';
    this.size = size;
  }
}
