/**
 * The shortest row of convex figures in a given order, by linear programmes. The unknowns are where each figure stands along the
 * strip and, for each but the last, where the cut after it runs: its place and its slope. That a figure lies before a cut and
 * others beyond it is linear in those once it is known how high each figure sits; so the programme is exact over all slopes,
 * and shares nothing with the engine's list of slopes and its paths.
 */
import loadHighs from 'highs';
import type { Ring } from '../../checker/rings.ts';

const highs = await loadHighs();

/**
 * How subcuts are read. `whole`: each runs from the strip's near edge to its far one, and none crosses another. `parted`: as
 * the format words it, each blank is parted from all those after it by a straight line that is not parallel to the strip; like
 * the proof-reader, this asks only that the line meets one edge of the strip between its ends.
 */
export type Reading = 'whole' | 'parted';

export interface RowAsked {
  /** In order, as they sit in the strip: x from 0 on, y from the strip's near edge. */
  readonly rings: readonly Ring[];
  readonly height: number;
  readonly width: number;
  readonly reading: Reading;
}

/** Which edge of the strip each cut is to meet between the strip's ends; nothing: no matter. */
type Meets = ReadonlyMap<number, 'near' | 'far'>;

/** Places along the strip, or null when the row does not fit. */
export function shortestRow(asked: RowAsked, meets: Meets = new Map()): readonly number[] | null {
  const solved = highs.solve(write(asked, meets), { output_flag: false });
  if (solved.Status !== 'Optimal' || solved.ObjectiveValue > asked.width * (1 + 1e-8)) return null;
  const value = (name: string) => solved.Columns[name]!.Primal!;
  const onCloth = (u: number) => u >= -1e-9 && u <= asked.width * (1 + 1e-9);
  for (let i = 0; i < asked.rings.length - 1; i++) {
    const [near, far] = [value(`c${i}`), value(`c${i}`) + asked.height * value(`s${i}`)];
    if (onCloth(near) || onCloth(far)) continue;
    // The two edges are tried in turn.
    return shortestRow(asked, new Map([...meets, [i, 'near']])) ?? shortestRow(asked, new Map([...meets, [i, 'far']]));
  }
  return asked.rings.map((_, i) => value(`x${i}`));
}

function write({ rings, height, width, reading }: RowAsked, meets: Meets): string {
  const rows: string[] = [];
  const say = (terms: readonly (readonly [number, string])[], relation: '<=' | '>=', right: number) => {
    const sum = terms.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join(' ');
    rows.push(` r${rows.length}: ${sum} ${relation} ${right}`);
  };
  // A cut is the line x = c + s·y; this is its place at a height, taken `times`.
  const cutAt = (i: number, y: number, times = 1) =>
    [
      [times, `c${i}`],
      [times * y, `s${i}`],
    ] as const;
  const onCloth = (i: number, y: number) => {
    say(cutAt(i, y), '>=', 0);
    say(cutAt(i, y), '<=', width);
  };
  rings.forEach((ring, i) => {
    say(
      [
        [1, 'reach'],
        [-1, `x${i}`],
      ],
      '>=',
      Math.max(...ring.map(([x]) => x)),
    );
    if (i === rings.length - 1) return;
    for (const [x, y] of ring) say([[1, `x${i}`], ...cutAt(i, y, -1)], '<=', -x);
    for (let j = i + 1; j < rings.length; j++) {
      for (const [x, y] of rings[j]!) say([[1, `x${j}`], ...cutAt(i, y, -1)], '>=', -x);
    }
    const edge = meets.get(i);
    if (edge) onCloth(i, edge === 'near' ? 0 : height);
    if (reading === 'parted') return;
    for (const y of [0, height]) {
      onCloth(i, y);
      if (i > 0) say([...cutAt(i, y), ...cutAt(i - 1, y, -1)], '>=', 0);
    }
  });
  const free = rings.slice(0, -1).flatMap((_: Ring, i) => [` c${i} free`, ` s${i} free`]);
  return ['Minimize', ' goal: reach', 'Subject To', ...rows, 'Bounds', ...free, 'End'].join('\n');
}
