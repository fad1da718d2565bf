/** The same programme put to HiGHS, for a second opinion. */
import loadHighs from 'highs';
import type { Programme } from '../../../workers/programme/programme.ts';

const highs = await loadHighs();

export interface Opinion {
  readonly status: 'optimal' | 'infeasible' | 'unbounded';
  readonly value: number;
}

/** @param integer false: the linear programme, whatever columns are to be whole */
export function secondOpinion(programme: Programme, integer: boolean): Opinion {
  const solved = highs.solve(written(programme, integer), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  const value = solved.ObjectiveValue;
  if (solved.Status === 'Optimal') return { status: 'optimal', value };
  // HiGHS may call a programme without end infeasible; without costs there is no end to run to, so that tells.
  const free = { ...programme, columns: programme.columns.map((column) => ({ ...column, cost: 0 })) };
  const isPossible = highs.solve(written(free, integer), { output_flag: false }).Status === 'Optimal';
  return { status: isPossible ? 'unbounded' : 'infeasible', value };
}

function written({ columns, rows }: Programme, integer: boolean): string {
  const sum = (terms: readonly (readonly [number, number])[]) =>
    terms.map(([column, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} x${column}`).join(' ');
  const limits = rows.flatMap(({ lower, upper, entries }, i) => {
    if (lower === upper) return [` r${i}: ${sum(entries)} = ${lower}`];
    const above = lower > -Infinity ? [` l${i}: ${sum(entries)} >= ${lower}`] : [];
    const below = upper < Infinity ? [` u${i}: ${sum(entries)} <= ${upper}`] : [];
    return [...above, ...below];
  });
  const bounds = columns.map(({ lower, upper }, i) => ` ${lower} <= x${i} <= ${upper === Infinity ? 'inf' : upper}`);
  const whole = integer ? columns.flatMap((column, i) => (column.integer ? [` x${i}`] : [])) : [];
  const goal = sum(columns.map(({ cost }, i) => [i, cost] as const));
  const general = whole.length > 0 ? ['General', ...whole] : [];
  return ['Minimize', ` goal: ${goal}`, 'Subject To', ...limits, 'Bounds', ...bounds, ...general, 'End'].join('\n');
}
