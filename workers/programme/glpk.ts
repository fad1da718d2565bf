/**
 * The one door to GLPK. A solve blocks its thread, so callers keep programmes small and give integer ones a limit, which is of
 * work and not of time (work-clock.ts), so that the same job takes the same way again.
 * Linear programmes are solved without presolve, which would lose the duals; integer ones with it, or they never end.
 */
import type { GLPK, LP } from 'glpk.js/node';
import createGlpk from 'glpk.js/node';
import type { Programme, ProgrammeResult, ProgrammeRow } from './programme.ts';
import { byWork, stepSeconds } from './work-clock.ts';

let instance: Promise<GLPK> | undefined;

export interface Solver {
  linear(programme: Programme): ProgrammeResult;
  /**
   * @param seconds limit of work, about as many seconds as it takes on one core; fractions work
   * @param gap relative gap at which it may stop
   */
  integer(programme: Programme, seconds: number, gap?: number): ProgrammeResult;
}

/**
 * Starts GLPK once for this thread.
 * @param isTimeUp ends integer solves, also in the middle, as if their own limit had come
 */
export async function openSolver(isTimeUp: () => boolean = () => false): Promise<Solver> {
  instance ??= createGlpk();
  const glpk = await instance;
  return {
    linear: (programme) =>
      read(glpk, programme, glpk.solve(write(glpk, programme, false), { msglev: glpk.GLP_MSG_OFF, presol: false })),
    integer: (programme, seconds, gap = 0) => {
      if (seconds <= 0 || isTimeUp()) return nothing(programme);
      const options = { msglev: glpk.GLP_MSG_OFF, presol: true, tmlim: seconds, mipgap: gap };
      const written = write(glpk, programme, true);
      return read(
        glpk,
        programme,
        byWork(stepSeconds(programme), isTimeUp, () => glpk.solve(written, options)),
      );
    },
  };
}

function write(glpk: GLPK, programme: Programme, integer: boolean): LP {
  const { columns, rows } = programme;
  return {
    name: 'plan',
    objective: {
      direction: glpk.GLP_MIN,
      name: 'cost',
      vars: columns.map((c, i) => ({ name: `x${i}`, coef: c.cost })),
    },
    subjectTo: rows.map((row, i) => ({
      name: `r${i}`,
      vars: row.entries.map(([column, coef]) => ({ name: `x${column}`, coef })),
      bnds: bounds(glpk, row.lower, row.upper),
    })),
    bounds: columns.map((c, i) => ({ name: `x${i}`, ...bounds(glpk, c.lower, c.upper) })),
    generals: integer ? columns.flatMap((c, i) => (c.integer ? [`x${i}`] : [])) : [],
  };
}

function bounds(glpk: GLPK, lower: number, upper: number) {
  if (lower === upper) return { type: glpk.GLP_FX, lb: lower, ub: upper };
  if (lower === -Infinity)
    return { type: upper === Infinity ? glpk.GLP_FR : glpk.GLP_UP, lb: 0, ub: upper === Infinity ? 0 : upper };
  if (upper === Infinity) return { type: glpk.GLP_LO, lb: lower, ub: 0 };
  return { type: glpk.GLP_DB, lb: lower, ub: upper };
}

function read(glpk: GLPK, programme: Programme, answer: ReturnType<GLPK['solve']>): ProgrammeResult {
  const { status, z, vars, dual } = answer.result;
  const x = Float64Array.from(programme.columns, (_, i) => vars[`x${i}`] ?? 0);
  const duals = Float64Array.from(programme.rows, (_, i) => dual?.[`r${i}`] ?? 0);
  const named =
    status === glpk.GLP_OPT
      ? 'optimal'
      : status === glpk.GLP_NOFEAS || status === glpk.GLP_INFEAS
        ? 'infeasible'
        : status === glpk.GLP_UNBND
          ? 'unbounded'
          : status === glpk.GLP_FEAS && holds(programme.rows, x)
            ? 'feasible'
            : 'none';
  return { status: named, value: z, x, duals };
}

/** A timed-out integer solve without an incumbent answers zeros, so a merely feasible answer is checked. */
function holds(rows: readonly ProgrammeRow[], x: Float64Array): boolean {
  return rows.every((row) => {
    let sum = 0;
    for (const [column, coefficient] of row.entries) sum += coefficient * x[column]!;
    const slack = 1e-6 * (1 + Math.abs(sum));
    return sum >= row.lower - slack && sum <= row.upper + slack;
  });
}

function nothing(programme: Programme): ProgrammeResult {
  return {
    status: 'none',
    value: Number.NaN,
    x: new Float64Array(programme.columns.length),
    duals: new Float64Array(programme.rows.length),
  };
}
