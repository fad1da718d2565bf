/** A linear or integer programme, to be minimised, in plain sparse arrays: what the engine writes and GLPK reads. */

export interface Programme {
  readonly columns: readonly ProgrammeColumn[];
  readonly rows: readonly ProgrammeRow[];
}

export interface ProgrammeColumn {
  readonly cost: number;
  /** Bounds; the lower must be finite. */
  readonly lower: number;
  readonly upper: number;
  /** Ignored by a linear solve. */
  readonly integer: boolean;
}

export interface ProgrammeRow {
  /** −Infinity or Infinity where open. */
  readonly lower: number;
  readonly upper: number;
  /** Column index and coefficient, each column at most once. */
  readonly entries: readonly (readonly [column: number, coefficient: number])[];
}

export interface ProgrammeResult {
  /** `optimal`: proved; `feasible`: a solution without proof; `none`: out of time without a solution, or undefined. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unbounded' | 'none';
  readonly value: number;
  readonly x: Float64Array;
  /** Of the rows; only for linear solves: change of value for one more unit of right-hand side. */
  readonly duals: Float64Array;
}
