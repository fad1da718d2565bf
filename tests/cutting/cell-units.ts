/**
 * Units whose patches are made of the cells of a grid, so that whether they can be sewn is told exactly, in whole numbers, by
 * trying every order. Shares no code with what it checks.
 */
import type { Polygon } from '../../src/shape/point.ts';

/** For each row from below, for each cell the number of its patch; −1 where there is none. */
export type Cells = readonly (readonly number[])[];

const at = (cells: Cells, x: number, y: number): number => cells[y]?.[x] ?? -1;

/** The outline of a patch, anticlockwise; null where it is more than one loop or touches itself. */
export function outlineOf(cells: Cells, patch: number): Polygon | null {
  const next = new Map<string, readonly [number, number]>();
  let edges = 0;
  const edge = (from: readonly [number, number], to: readonly [number, number]): void => {
    edges++;
    next.set(`${from}`, to);
  };
  cells.forEach((row, y) => {
    row.forEach((which, x) => {
      if (which !== patch) return;
      if (at(cells, x, y - 1) !== patch) edge([x, y], [x + 1, y]);
      if (at(cells, x + 1, y) !== patch) edge([x + 1, y], [x + 1, y + 1]);
      if (at(cells, x, y + 1) !== patch) edge([x + 1, y + 1], [x, y + 1]);
      if (at(cells, x - 1, y) !== patch) edge([x, y + 1], [x, y]);
    });
  });
  const start = [...next.values()][0];
  if (start === undefined || next.size < edges) {
    return null;
  }
  const loop = [start];
  for (let here = next.get(`${start}`)!; `${here}` !== `${start}`; here = next.get(`${here}`)!) {
    loop.push(here);
  }
  const corners = loop.filter((p, i) => {
    const [a, b] = [loop.at(i - 1)!, loop[(i + 1) % loop.length]!];
    return (p[0] - a[0]) * (b[1] - p[1]) !== (p[1] - a[1]) * (b[0] - p[0]);
  });
  return loop.length === edges ? corners : null;
}

/** For each patch whether there is an order that begins with it. */
export function startsByTrying(cells: Cells, patches: number): readonly boolean[] {
  const steps = new Map<string, boolean>();
  const canAdd = (patch: number, before: number): boolean => {
    const key = `${patch},${before}`;
    const known = steps.get(key) ?? sewsOn(cells, patch, before);
    steps.set(key, known);
    return known;
  };
  return Array.from({ length: patches }, (_, start) => {
    let reached = new Set([1 << start]);
    for (let size = 1; size < patches; size++) {
      const grown = new Set<number>();
      for (const before of reached) {
        for (let patch = 0; patch < patches; patch++) {
          if (!(before & (1 << patch)) && canAdd(patch, before)) grown.add(before | (1 << patch));
        }
      }
      reached = grown;
    }
    return reached.size > 0;
  });
}

/** One side of a unit length of a grid line. */
interface Place {
  readonly line: number;
  readonly step: number;
  readonly beyond: boolean;
}

/** @param before the patches sewn already, a bit for each */
function sewsOn(cells: Cells, patch: number, before: number): boolean {
  const isBefore = (which: number): boolean => which >= 0 && (before & (1 << which)) !== 0;
  for (const turned of [false, true]) {
    const grid: Cells = turned ? cells[0]!.map((_, x) => cells.map((row) => row[x]!)) : cells;
    const seams = seamsOf(grid, patch, isBefore);
    const others = seamsOf(turned ? cells : cells[0]!.map((_, x) => cells.map((row) => row[x]!)), patch, isBefore);
    if (seams.length > 0) {
      return others.length === 0 && isOneLine(seams) && foldsBack(grid, patch, isBefore, seams);
    }
  }
  return false;
}

/** Where the patch meets those before across level lines. */
function seamsOf(grid: Cells, patch: number, isBefore: (which: number) => boolean): readonly Place[] {
  return grid.flatMap((row, y) =>
    row.flatMap((which, x) => {
      if (which !== patch) return [];
      const below = isBefore(at(grid, x, y - 1)) ? [{ line: y, step: x, beyond: true }] : [];
      const above = isBefore(at(grid, x, y + 1)) ? [{ line: y + 1, step: x, beyond: false }] : [];
      return [...below, ...above];
    }),
  );
}

const isOneLine = (seams: readonly Place[]): boolean =>
  seams.every((seam) => seam.line === seams[0]!.line && seam.beyond === seams[0]!.beyond);

function foldsBack(grid: Cells, patch: number, isBefore: (which: number) => boolean, seams: readonly Place[]): boolean {
  const { line, beyond } = seams[0]!;
  const isOnItsSide = (y: number): boolean => y >= line === beyond;
  const oneSided = grid.every((row, y) => row.every((which) => which !== patch || isOnItsSide(y)));
  const isPaper = (step: number): boolean => at(grid, step, line - 1) >= 0 || at(grid, step, line) >= 0;
  const isCaught = (step: number): boolean => isBefore(at(grid, step, beyond ? line : line - 1));
  const clear = seams.every(({ step }) => {
    let [left, right] = [step, step];
    while (isPaper(left - 1)) left--;
    while (isPaper(right + 1)) right++;
    return Array.from({ length: right - left + 1 }, (_, k) => left + k).every((each) => !isCaught(each));
  });
  return oneSided && clear;
}
