/** The door to GLPK: seeded random programmes, with HiGHS for a second opinion. */
import { describe, expect, test } from 'vitest';
import { openSolver } from '../../../workers/programme/glpk.ts';
import type {
  Programme,
  ProgrammeColumn,
  ProgrammeResult,
  ProgrammeRow,
} from '../../../workers/programme/programme.ts';
import { type Draw, numbers, pickFrom } from '../numbers.ts';
import { secondOpinion } from './second-opinion.ts';

const solver = await openSolver();

const column = (cost: number, lower = 0, upper = Infinity, integer = true): ProgrammeColumn => ({
  cost,
  lower,
  upper,
  integer,
});

/** Any mixture of rows and bounds: some of these have no solution, some no end. */
function randomProgramme(seed: number): Programme {
  const draw = numbers(seed);
  const columns = Array.from({ length: draw(2, 7) }, () => {
    const lower = pickFrom(draw, [0, 0, 0, -3, 2]);
    return column(draw(-3, 9), lower, pickFrom(draw, [Infinity, Infinity, lower, lower + draw(1, 8)]), draw(0, 2) > 0);
  });
  return { columns, rows: Array.from({ length: draw(1, 6) }, () => randomRow(draw, columns.length)) };
}

function randomRow(draw: Draw, columns: number): ProgrammeRow {
  const held = Array.from({ length: columns }, (_, i) => i).filter(() => draw(0, 2) > 0);
  const entries = (held.length > 0 ? held : [0]).map((i) => [i, draw(0, 4) === 0 ? -draw(1, 5) : draw(1, 9)] as const);
  const right = draw(1, 30);
  const sides = pickFrom(draw, [
    [right, Infinity],
    [right, Infinity],
    [-Infinity, right],
    [right, right],
    [right, right + draw(1, 9)],
  ] as const);
  return { lower: sides[0], upper: sides[1], entries };
}

/** So many of each wanted, from columns that hold several: the engine's own kind. */
function covering(seed: number, kinds: number, columns: number): Programme {
  const draw = numbers(seed);
  const held = Array.from({ length: columns }, () => Array.from({ length: kinds }, () => Math.max(0, draw(-3, 4))));
  return {
    columns: held.map((counts) => column(1 + counts.reduce((a, b) => a + b, 0) + draw(0, 3))),
    rows: Array.from({ length: kinds }, (_, kind) => ({
      lower: draw(5, 40),
      upper: Infinity,
      entries: held.flatMap((counts, i) => (counts[kind]! > 0 ? [[i, counts[kind]!] as const] : [])),
    })),
  };
}

const sumOf = (row: ProgrammeRow, x: Float64Array) => row.entries.reduce((sum, [i, factor]) => sum + factor * x[i]!, 0);

function expectHolds({ columns, rows }: Programme, { x, value }: ProgrammeResult, whole: boolean): void {
  for (const row of rows) {
    expect(sumOf(row, x)).toBeGreaterThanOrEqual(row.lower - 1e-6);
    expect(sumOf(row, x)).toBeLessThanOrEqual(row.upper + 1e-6);
  }
  columns.forEach(({ lower, upper, integer }, i) => {
    expect(x[i]).toBeGreaterThanOrEqual(lower - 1e-6);
    expect(x[i]).toBeLessThanOrEqual(upper + 1e-6);
    if (whole && integer) expect(Math.abs(x[i]! - Math.round(x[i]!))).toBeLessThan(1e-6);
  });
  expect(columns.reduce((sum, { cost }, i) => sum + cost * x[i]!, 0)).toBeCloseTo(value, 5);
}

describe('random programmes', () => {
  const programmes = Array.from({ length: 250 }, (_, i) => randomProgramme(i + 1));

  test('linear: the same status and value as HiGHS, and the solution holds', () => {
    const seen = new Set<string>();
    for (const [seed, programme] of programmes.entries()) {
      const own = solver.linear(programme);
      const second = secondOpinion(programme, false);
      seen.add(own.status);
      expect([seed, own.status]).toEqual([seed, second.status]);
      if (own.status !== 'optimal') continue;
      expect([seed, own.value]).toEqual([seed, expect.closeTo(second.value, 5)]);
      expectHolds(programme, own, false);
    }
    expect([...seen].sort()).toEqual(['infeasible', 'optimal', 'unbounded']);
  });

  test('integer: the same value as HiGHS, and never optimal where there is no solution or no end', () => {
    let solved = 0;
    for (const [seed, programme] of programmes.entries()) {
      const own = solver.integer(programme, 5);
      const second = secondOpinion(programme, true);
      // With presolve GLPK does not always tell "infeasible" from "unbounded", so only "optimal" must mean what it says.
      expect([seed, own.status === 'optimal']).toEqual([seed, second.status === 'optimal']);
      if (own.status === 'infeasible') expect([seed, second.status]).toEqual([seed, 'infeasible']);
      if (own.status !== 'optimal') continue;
      solved++;
      expect([seed, own.value]).toEqual([seed, expect.closeTo(second.value, 5)]);
      expectHolds(programme, own, true);
    }
    expect(solved).toBeGreaterThan(50);
  });
});

describe('covering programmes', () => {
  const programmes = Array.from({ length: 12 }, (_, i) => covering(i + 1, 6 + i, 30 + 5 * i));

  test('linear: duals pay for the plan and no column is worth more than it costs', () => {
    for (const programme of programmes) {
      const { value, duals } = solver.linear(programme);
      expect(value).toBeCloseTo(secondOpinion(programme, false).value, 5);
      // Strong duality: with no upper bounds, the plan costs what its rows are worth.
      expect(programme.rows.reduce((sum, row, i) => sum + row.lower * duals[i]!, 0)).toBeCloseTo(value, 5);
      programme.columns.forEach(({ cost }, c) => {
        const worth = programme.rows.reduce(
          (sum, row, i) => sum + duals[i]! * (row.entries.find(([k]) => k === c)?.[1] ?? 0),
          0,
        );
        expect(worth).toBeLessThanOrEqual(cost + 1e-6);
      });
    }
  });

  test('integer: the value of HiGHS', () => {
    for (const programme of programmes.slice(0, 4)) {
      const own = solver.integer(programme, 20);
      expect([own.status, own.value]).toEqual(['optimal', expect.closeTo(secondOpinion(programme, true).value, 5)]);
      expectHolds(programme, own, true);
    }
  });
});

describe('what has no answer says so', () => {
  const atLeast = (lower: number, ...columns: number[]): ProgrammeRow => ({
    lower,
    upper: Infinity,
    entries: columns.map((c) => [c, 1]),
  });
  const atMost = (upper: number, ...columns: number[]): ProgrammeRow => ({
    lower: -Infinity,
    upper,
    entries: columns.map((c) => [c, 1]),
  });

  test('no solution', () => {
    const programme = { columns: [column(1), column(1)], rows: [atLeast(3, 0, 1), atMost(2, 0, 1)] };
    expect(solver.linear(programme).status).toBe('infeasible');
    expect(solver.integer(programme, 1).status).toBe('infeasible');
  });

  test('a solution in fractions but none in whole numbers', () => {
    const programme = { columns: [column(1)], rows: [{ lower: 1, upper: 1, entries: [[0, 2]] as const }] };
    expect([solver.linear(programme).status, solver.linear(programme).value]).toEqual(['optimal', 0.5]);
    expect(solver.integer(programme, 1).status).toBe('infeasible');
  });

  test('no end', () => {
    const programme = { columns: [column(-1), column(1)], rows: [atLeast(0, 0, 1)] };
    expect(solver.linear(programme).status).toBe('unbounded');
    expect(['unbounded', 'none', 'infeasible']).toContain(solver.integer(programme, 1).status);
    expect(solver.integer(programme, 1).status).not.toBe('infeasible');
  });

  test('out of time: either a solution that holds, or none, and never a proof', () => {
    const hard = covering(7, 40, 300);
    for (const seconds of [0, 0.02, 0.3]) {
      const own = solver.integer(hard, seconds);
      expect(['feasible', 'none']).toContain(own.status);
      if (own.status === 'feasible') expectHolds(hard, own, true);
    }
  });
});

describe('limits are of work', () => {
  const hard = covering(7, 40, 300);

  test('a solve that is cut short is cut at the same step again', () => {
    for (const seconds of [0.05, 0.2, 0.5])
      expect(solver.integer(hard, seconds)).toEqual(solver.integer(hard, seconds));
  });

  test('when the real time is up it ends in the middle, and before it begins', async () => {
    let asked = 0;
    const hurried = await openSolver(() => ++asked > 100);
    expect(hurried.integer(hard, 1000).status).toBe('none');
    expect(hurried.integer(hard, 1000).status).toBe('none');
    // The first asked once before it began and then at each step; the second only before it began.
    expect(asked).toBeLessThan(120);
  });

  test('the clock of others is as it was, also when a solve throws', () => {
    const { now } = Date;
    solver.integer(hard, 0.01);
    expect(Date.now).toBe(now);
    const broken = { columns: [column(1)], rows: [{ lower: 1, upper: 1, entries: null as never }] };
    expect(() => solver.integer(broken, 1)).toThrow();
    expect(Date.now).toBe(now);
  });
});
