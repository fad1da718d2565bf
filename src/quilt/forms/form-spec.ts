/**
 * What a form is: a traditional block that is drawn from a few numbers. Each has a file of its own that tells its numbers and
 * draws it; forms.ts lists them, and the quilt file, the page and the cutting all read that one list.
 */
import type { RoleSeed } from '../drawn-block.ts';
import type { LengthUnit, Unit } from '../quilt.ts';

/** A form as it stands in a quilt file: its kind, and a value for each of its fields. */
export interface AnyForm {
  readonly kind: string;
}

export type FormValue = number | string | boolean;

interface FieldOf<F extends AnyForm> {
  /** Its name in the form and in the file. */
  readonly field: string;
  /** A short name, as the page's label. */
  readonly label: string;
  /** Default none. */
  readonly hint?: string;
  /** Whether the field matters, given the others. Default: always. */
  shown?(form: Required<F>): boolean;
}

/** A whole number of things. */
export interface CountField<F extends AnyForm = AnyForm> extends FieldOf<F> {
  readonly type: 'count';
  readonly min: number;
  readonly max: number;
  /** What a file that leaves it out means; where absent, a file must give it. So for the other types too. */
  readonly usual?: number;
}

/** A length above zero, or from zero on where `zero` is true. */
export interface LengthField<F extends AnyForm = AnyForm> extends FieldOf<F> {
  readonly type: 'length';
  readonly zero?: boolean;
  readonly usual?: number | string;
}

/** Degrees. */
export interface AngleField<F extends AnyForm = AnyForm> extends FieldOf<F> {
  readonly type: 'angle';
  readonly min: number;
  readonly max: number;
  readonly usual?: number;
}

export interface ChoiceField<F extends AnyForm = AnyForm> extends FieldOf<F> {
  readonly type: 'choice';
  readonly choices: readonly { readonly value: string; readonly words: string }[];
  readonly usual?: string;
}

export interface SwitchField<F extends AnyForm = AnyForm> extends FieldOf<F> {
  readonly type: 'switch';
  readonly usual?: boolean;
}

export type FormField<F extends AnyForm = AnyForm> =
  | CountField<F>
  | LengthField<F>
  | AngleField<F>
  | ChoiceField<F>
  | SwitchField<F>;

/** Why some numbers draw no block. */
export interface FormFault {
  readonly field: string;
  /** What was expected and what was found. Another field is named in braces, "{outer}", for words.ts to put in. */
  readonly message: string;
}

export type Tone = 'ground' | 'light' | 'middling' | 'dark' | 'bright';

/** Methods, so that a spec of one form may stand in the list of them all. Each gets the form with nothing left out. */
export interface FormSpec<F extends AnyForm = AnyForm> {
  readonly kind: F['kind'];
  /** As a block's name: "Compass star". */
  readonly title: string;
  /** One line that says what it is to one who knows quilts. */
  readonly about: string;
  readonly fields: readonly FormField<F>[];
  /** How light each role is in a small picture of the block, by the role's id; cloths come later. Default middling. */
  readonly tones: Readonly<Record<string, Tone>>;
  /** Numbers to begin with: a block of a usual size. */
  start(unit: LengthUnit): F;
  /** Every role that the drawing's patches name, once. */
  roles(form: Required<F>): readonly RoleSeed[];
  /**
   * Of what goes round blocks or between them, and is drawn where it lies in the quilt: how large the quilt is with it, in `unit`.
   * Absent: it is a block like others.
   */
  frame?(form: Required<F>, unit: LengthUnit): { readonly width: number; readonly length: number };
  /** What other fields become when one has been changed, so that the form can still be drawn. Default: nothing. */
  follow?(form: Required<F>, changed: string): Partial<F>;
  /** Only asked of fields that are each within their limits. Empty: it can be drawn. */
  faults(form: Required<F>, unit: LengthUnit): readonly FormFault[];
  /** What follows from the numbers and is worth knowing, in short sentences; only of forms without faults. Default none. */
  notes?(form: Required<F>, unit: LengthUnit): readonly string[];
  /** The units, in `unit`, about the block's centre; only of forms without faults. */
  draw(form: Required<F>, unit: LengthUnit): readonly Unit[];
}
