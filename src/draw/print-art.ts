/** What stands for a print where it is drawn at its true size: stripes, a check, sprigs that grow one way or lie about. */
import type { PrintKind } from '../quilt/quilt.ts';
import { lineRun, polygonRun, type Run, rectangle } from './display-list.ts';

export interface PrintArt {
  /** Filled. */
  readonly bands: readonly Run[];
  /** Drawn as lines. */
  readonly lines: readonly Run[];
}

const NOTHING: PrintArt = { bands: [], lines: [] };

/** One repeat, in a square from 0 to 1 whose up is the print's. */
export function printArt(print: PrintKind): PrintArt {
  switch (print) {
    case 'one-way':
      return SPRIG;
    case 'two-way':
      return { bands: [polygonRun(rectangle(0.12, 0, 0.3, 1)), polygonRun(rectangle(0.62, 0, 0.1, 1))], lines: [] };
    case 'check':
      return { bands: [polygonRun(rectangle(0, 0, 0.3, 1)), polygonRun(rectangle(0.3, 0, 0.7, 0.3))], lines: [] };
    case 'tossed':
      return { bands: LEAVES, lines: [] };
    case 'solid':
      return NOTHING;
  }
}

const SPRIG: PrintArt = {
  bands: [
    polygonRun([
      [0.5, 0.94],
      [0.35, 0.7],
      [0.5, 0.58],
      [0.65, 0.7],
    ]),
    polygonRun([
      [0.5, 0.22],
      [0.3, 0.46],
      [0.27, 0.32],
    ]),
    polygonRun([
      [0.5, 0.34],
      [0.7, 0.58],
      [0.73, 0.44],
    ]),
  ],
  lines: [lineRun([0.5, 0.08], [0.5, 0.6])],
};

const LEAVES: readonly Run[] = [
  polygonRun([
    [0.14, 0.16],
    [0.34, 0.2],
    [0.36, 0.36],
    [0.2, 0.32],
  ]),
  polygonRun([
    [0.62, 0.5],
    [0.74, 0.36],
    [0.9, 0.4],
    [0.78, 0.52],
  ]),
  polygonRun([
    [0.3, 0.9],
    [0.28, 0.7],
    [0.4, 0.62],
    [0.44, 0.8],
  ]),
];

/** The same at a size. */
export function scaledRuns(runs: readonly Run[], size: number): readonly Run[] {
  return runs.map((run) => ({
    ...run,
    start: [run.start[0] * size, run.start[1] * size],
    steps: run.steps.map(({ to }) => ({ to: [to[0] * size, to[1] * size] })),
  }));
}
