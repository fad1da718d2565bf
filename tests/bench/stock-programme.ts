/**
 * Upright rectangles cut from equal sheets in two stages, as one integer programme for HiGHS: every fullest strip and every fullest
 * way to part a sheet into strips is listed, and the solver chooses (Gilmore & Gomory 1965, without the generating of columns).
 */
import loadHighs from 'highs';
import type { LayoutJob } from '../../src/plan/layout-job.ts';
import type { Solved } from './level-programme.ts';

interface Size {
  readonly across: number;
  readonly up: number;
  readonly demand: number;
}

interface Listed {
  readonly height: number;
  /** By size. */
  readonly counts: readonly number[];
}

const MOST_LISTED = 50_000;

/** Null where there are too many strips to list. @param seconds time limit; one run, the listing counted */
export async function solveStock(job: LayoutJob, seconds: number): Promise<Solved | null> {
  const highs = await loadHighs();
  const started = performance.now();
  const text = stockProgramme(job);
  if (text === null) return null;
  const solved = highs.solve(text, { output_flag: false, time_limit: seconds, mip_rel_gap: 0, mip_abs_gap: 1e-6 });
  const took = (performance.now() - started) / 1000;
  return { length: solved.ObjectiveValue, seconds: took, proved: solved.Status === 'Optimal' };
}

function stockProgramme({ cloths, blanks }: LayoutJob): string | null {
  const { width, length } = cloths[0]!;
  const sizes: readonly Size[] = blanks.map(({ outline, demand }) => {
    const [xs, ys] = [0, 1].map((axis) => outline!.map((p) => p[axis]!));
    return { across: Math.max(...xs!) - Math.min(...xs!), up: Math.max(...ys!) - Math.min(...ys!), demand };
  });
  const heights = [...new Set(sizes.map((size) => size.up))].sort((a, b) => b - a);
  const strips: Listed[] = heights.flatMap((height) => {
    const held = sizes.map((size) => (size.up <= height ? size.across : Infinity));
    const most = sizes.map((size) => size.demand);
    return fullest(held, most, width)
      .filter((counts) => counts.some((n, i) => n > 0 && sizes[i]!.up === height))
      .map((counts) => ({ height, counts }));
  });
  const sheets = fullest(
    heights,
    heights.map(() => Infinity),
    length!,
  );
  if (strips.length + sheets.length > MOST_LISTED) return null;
  const sum = (terms: readonly string[]) => terms.join(' ');
  const demandRows = sizes.map(
    (size, i) =>
      `${sum(strips.flatMap(({ counts }, s) => (counts[i]! > 0 ? [`+ ${counts[i]} s${s}`] : [])))} >= ${size.demand}`,
  );
  // A lower strip may lie in a higher slot, so slots are counted from the highest down.
  const slotRows = heights.map((height, h) => {
    const slots = sheets.flatMap((counts, k) => {
      const n = counts.slice(0, h + 1).reduce((a, b) => a + b, 0);
      return n > 0 ? [`+ ${n} p${k}`] : [];
    });
    const taken = strips.flatMap((strip, s) => (strip.height >= height ? [`- s${s}`] : []));
    return `${sum([...slots, ...taken])} >= 0`;
  });
  return [
    'Minimize',
    ` goal: ${sum(sheets.map((_, k) => `+ p${k}`))}`,
    'Subject To',
    ...[...demandRows, ...slotRows].map((row, i) => ` r${i}: ${row}`),
    'General',
    ...strips.map((_, s) => ` s${s}`),
    ...sheets.map((_, k) => ` p${k}`),
    'End',
  ].join('\n');
}

/** Every way to fill a length to which nothing more can be added. @param sizes Infinity for what may not be held */
function fullest(sizes: readonly number[], most: readonly number[], room: number): readonly (readonly number[])[] {
  const found: number[][] = [];
  const counts = sizes.map(() => 0);
  const fill = (from: number, left: number): void => {
    if (found.length > MOST_LISTED) return;
    if (from === sizes.length) {
      const isFull = sizes.every((size, i) => size > left || counts[i]! >= most[i]!);
      if (isFull) found.push([...counts]);
      return;
    }
    const top = Math.min(most[from]!, Math.floor(left / sizes[from]!));
    for (let n = 0; n <= top; n++) {
      counts[from] = n;
      fill(from + 1, n === 0 ? left : left - n * sizes[from]!);
    }
    counts[from] = 0;
  };
  fill(0, room);
  return found;
}
