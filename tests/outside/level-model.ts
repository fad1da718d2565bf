/**
 * Strips of upright rectangles as one compact integer programme, written apart from the engine and solved with HiGHS: every
 * strip is named after the tallest rectangle in it, and each rectangle either opens the strip of its own name or lies in
 * the strip of one that is no lower. No columns, no pricing, no cuts.
 */
import loadHighs from 'highs';

export interface Rectangle {
  readonly width: number;
  readonly height: number;
}

export interface Levels {
  readonly rectangles: readonly Rectangle[];
  readonly width: number;
  /** Sold in whole multiples of it, where given. */
  readonly step?: number;
  /** Length of one free piece of the same width. */
  readonly piece?: number;
}

/** The least length to buy, in whole steps where there are any. */
export async function leastLength({ rectangles, width, step, piece }: Levels): Promise<number> {
  const sorted = [...rectangles].sort((a, b) => b.height - a.height);
  const opens = (i: number) => [`b${i}`, ...(piece === undefined ? [] : [`p${i}`])];
  const names = new Set<string>();
  const sum = (terms: readonly (readonly [number, string])[]) => {
    for (const [, name] of terms) names.add(name);
    return terms.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join(' ');
  };
  const rows = sorted.flatMap((own, i) => {
    const once = sum([
      ...sorted.slice(0, i).map((_, j) => [1, `x${j}_${i}`] as const),
      ...opens(i).map((v) => [1, v] as const),
    ]);
    const held = sorted.slice(i + 1).map((other, k) => [other.width, `x${i}_${i + 1 + k}`] as const);
    const room = opens(i).map((v) => [own.width - width, v] as const);
    return held.length === 0 ? [`${once} = 1`] : [`${once} = 1`, `${sum([...held, ...room])} <= 0`];
  });
  const bought = sorted.map((own, i) => [own.height, `b${i}`] as const);
  if (piece !== undefined) rows.push(`${sum(sorted.map((own, i) => [own.height, `p${i}`] as const))} <= ${piece}`);
  if (step !== undefined) rows.push(`${sum(bought)} - ${step} steps <= 0`);
  const goal = step === undefined ? sum(bought) : `${step} steps`;
  const programme = [
    'Minimize',
    ` goal: ${goal}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    ...(step === undefined ? [] : ['Bounds', ' steps >= 0', 'General', ' steps']),
    'Binary',
    ...[...names].map((name) => ` ${name}`),
    'End',
  ].join('\n');
  const highs = await loadHighs();
  const solution = highs.solve(programme, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  if (solution.Status !== 'Optimal') throw new Error(`HiGHS ended with ${solution.Status}`);
  return solution.ObjectiveValue;
}
