/**
 * Strips of upright rectangles as one compact integer programme for HiGHS: every strip is named after its tallest rectangle, and each
 * rectangle either opens the strip of its own name or lies in the strip of one no lower (Lodi, Martello & Monaci 2002).
 */
import loadHighs from 'highs';
import type { LayoutJob } from '../../src/plan/layout-job.ts';

export interface Solved {
  readonly length: number;
  readonly seconds: number;
  readonly proved: boolean;
}

/** @param seconds time limit; one run */
export async function solveLevels(job: LayoutJob, seconds: number): Promise<Solved> {
  const highs = await loadHighs();
  const text = levelProgramme(job);
  const started = performance.now();
  const solved = highs.solve(text, { output_flag: false, time_limit: seconds, mip_rel_gap: 0, mip_abs_gap: 1e-6 });
  const took = (performance.now() - started) / 1000;
  return { length: solved.ObjectiveValue, seconds: took, proved: solved.Status === 'Optimal' };
}

function levelProgramme({ cloths, blanks }: LayoutJob): string {
  const { width } = cloths[0]!;
  const sizes = blanks.flatMap(({ outline, demand }) => {
    const [xs, ys] = [0, 1].map((axis) => outline!.map((p) => p[axis]!));
    const size = { across: Math.max(...xs!) - Math.min(...xs!), up: Math.max(...ys!) - Math.min(...ys!) };
    return Array.from({ length: demand }, () => size);
  });
  sizes.sort((a, b) => b.up - a.up || b.across - a.across);
  const names: string[] = [];
  const name = (text: string) => {
    names.push(text);
    return text;
  };
  sizes.forEach((_, i) => {
    name(`y${i}`);
    for (let j = i + 1; j < sizes.length; j++) name(`x${i}_${j}`);
  });
  const placed = sizes.map((_, j) => [`y${j}`, ...Array.from({ length: j }, (_, i) => `x${i}_${j}`)].join(' + '));
  const room = sizes.map((own, i) => {
    const held = sizes.slice(i + 1).map((other, k) => `${other.across} x${i}_${i + 1 + k}`);
    return held.length === 0 ? null : `${held.join(' + ')} - ${width - own.across} y${i} <= 0`;
  });
  const rows = [...placed.map((sum) => `${sum} = 1`), ...room.filter((row) => row !== null)];
  return [
    'Minimize',
    ` goal: ${sizes.map((size, i) => `${size.up} y${i}`).join(' + ')}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    'Binary',
    ...names.map((each) => ` ${each}`),
    'End',
  ].join('\n');
}
