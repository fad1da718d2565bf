/** Where the cloth goes: every square unit is put to one account, and each account is reckoned by itself, none as the rest. */
import type { Blank } from '../cutting/cut-list.ts';
import { polygonArea } from '../shape/polygon.ts';
import type { Layout } from './layout-job.ts';
import { filledStrips, placedBlanks } from './placed.ts';
import type { Areas } from './tally.ts';

export const NO_AREA: Areas = {
  used: 0,
  finished: 0,
  seams: 0,
  room: 0,
  spares: 0,
  squaring: 0,
  kept: 0,
  waste: 0,
};

export function addAreas(a: Areas, b: Areas): Areas {
  return {
    used: a.used + b.used,
    finished: a.finished + b.finished,
    seams: a.seams + b.seams,
    room: a.room + b.room,
    spares: a.spares + b.spares,
    squaring: a.squaring + b.squaring,
    kept: a.kept + b.kept,
    waste: a.waste + b.waste,
  };
}

export const sumAreas = (areas: readonly Areas[]): Areas => areas.reduce(addAreas, NO_AREA);

/** Says of each blank that comes off the cloth whether it is a spare: the last ones cut of its kind are. */
export type IsSpare = (blank: Blank) => boolean;

/**
 * The accounts of one layout cut once: its blanks, the strip that squares the end, and what falls off between.
 * @param isSpare asked once for each blank placed, in order
 */
export function areasOfLayout(
  layout: Layout,
  width: number,
  blanks: ReadonlyMap<string, Blank>,
  isSpare: IsSpare,
): Areas {
  const used = layout.length * width;
  const placed = placedBlanks(layout, blanks);
  const cut = placed.map(({ blank, placement }) => ({ blank, whole: cutArea(blank, placement.shape) }));
  const squaring = squaringLength(layout, blanks) * width;
  const covered = cut.reduce((sum, { whole }) => sum + whole, 0);
  return sumAreas([
    ...cut.map(({ blank, whole }) => areasOfBlank(blank, whole, isSpare(blank))),
    { ...NO_AREA, used, squaring, waste: used - squaring - covered },
  ]);
}

/** Area of a blank's shape as cut. */
export const cutArea = (blank: Blank, shape: number): number =>
  Math.abs(polygonArea(blank.shapes[shape]?.outline ?? []));

/** The least area that a blank can be cut with, whichever shape the plan chooses. */
export const leastCutArea = (blank: Blank): number =>
  Math.min(...blank.shapes.map((_, shape) => cutArea(blank, shape)));

/** A spare is all spare; of the others, what is seen, what is sewn under, and what is trimmed away. */
function areasOfBlank(blank: Blank, whole: number, spare: boolean): Areas {
  if (spare) {
    return { ...NO_AREA, spares: whole };
  }
  // A blank whose sharp tips are cut off may be smaller than its patch with full allowance; then nothing is trimmed.
  const sewn = Math.min(blank.sewnArea, whole);
  return { ...NO_AREA, finished: blank.finishedArea, seams: sewn - blank.finishedArea, room: whole - sewn };
}

/** Length lost to squaring a bolt's end, which an answer tells as a strip across that holds no blank. */
export function squaringLength(layout: Layout, blanks: ReadonlyMap<string, Blank>): number {
  if (layout.firstCut === 'along') {
    return 0;
  }
  return filledStrips(layout, blanks)
    .filter((strip) => strip.placed.length === 0)
    .reduce((sum, strip) => sum + strip.height, 0);
}
