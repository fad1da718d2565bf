/** What the proof-reader reports: only what breaks a rule, each with its place and its size. */

export interface Fault {
  readonly what: FaultKind;
  /** Path in the answer, as `layouts[0].placements[3]`. */
  readonly where: string;
  /** In words, with the figures. */
  readonly howMuch: string;
}

export type FaultKind =
  | 'malformed'
  | 'outside the cloth'
  | 'overlap'
  | 'strip'
  | 'strip height'
  | 'outside its strip'
  | 'not cuttable'
  | 'turn'
  | 'turned over'
  | 'cloth'
  | 'first cut'
  | 'squaring'
  | 'demand'
  | 'overdrawn'
  | 'one cloth'
  | 'money'
  | 'proof';

/** Lengths of this share of the cloth's width, or less, are touching, and touching is allowed. */
export const TOUCH = 1e-6;

/** One line for a person or a log. */
export const tellFault = (fault: Fault): string => `${fault.where}: ${fault.what}: ${fault.howMuch}`;
