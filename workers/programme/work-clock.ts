/**
 * Makes a solver's time limit a limit of work. GLPK can only be told to stop after so many seconds, which are not the same number
 * of steps in two runs; but it asks for the time once for each step of the simplex method and for each node, through `Date.now`.
 * While it solves, the answer is how often it has asked, in seconds as the steps of such a programme take them. So a limit cuts
 * off at the same step in every run and on every machine, and a plan that ends by its proof is the same again.
 */
import type { Programme } from './programme.ts';

/**
 * Solves with `Date.now` counting the questions put to it; it is itself again afterwards, also when the solve throws.
 * @param stepSeconds what one question moves the clock on by
 * @param isTimeUp once it says so the clock leaps past any limit: a true deadline
 * @param solve must be synchronous, so that nobody else sees this clock
 */
export function byWork<T>(stepSeconds: number, isTimeUp: () => boolean, solve: () => T): T {
  const real = Date.now;
  // Whole days divide well, and the limits of this solver are far shorter.
  const start = 1e12;
  let asked = 0;
  Date.now = () => {
    asked += 1;
    return start + 1000 * (isTimeUp() ? LEAP : asked * stepSeconds);
  };
  try {
    return solve();
  } finally {
    Date.now = real;
  }
}

/** Seconds, longer than any limit in milliseconds that the solver's 32 bits hold. */
const LEAP = 4e6;

/**
 * Seconds that one step takes, as fitted to integer programmes of 50 to 3,000 columns on one core of a server of 2026; within a
 * factor of two there, which is enough, since what matters is that it does not change.
 */
export function stepSeconds({ columns, rows }: Programme): number {
  const entries = rows.reduce((sum, row) => sum + row.entries.length, 0);
  return 1e-6 * (5 + 0.1 * columns.length + 0.01 * entries);
}
