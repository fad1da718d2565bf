/** Where blanks lie: the outlines of a layout as they stand on the cloth, strip by strip. */
import type { Blank } from '../cutting/cut-list.ts';
import { add, type Polygon, reflect, turn } from '../shape/point.ts';
import type { Layout, Placement, Strip } from './layout-job.ts';

export interface Placed {
  readonly placement: Placement;
  readonly blank: Blank;
  /** On the cloth: x across it, y along it. */
  readonly outline: Polygon;
}

/** A strip and what lies in it, in no particular order. */
export interface FilledStrip extends Strip {
  readonly placed: readonly Placed[];
}

/** The outline turned anticlockwise about its origin, then x to −x if turned over, then moved. */
export function placedPolygon(outline: Polygon, placement: Placement): Polygon {
  return outline.map((point) => {
    const turned = turn(point, placement.turn);
    return add(placement.mirror ? reflect(turned) : turned, [placement.x, placement.y]);
  });
}

/**
 * The blanks of a layout as they lie.
 * @throws Error where a placement names a blank or a shape that is not there: then answer and cut list are not a pair
 */
export function placedBlanks(layout: Layout, blanks: ReadonlyMap<string, Blank>): readonly Placed[] {
  return layout.placements.map((placement) => {
    const blank = blanks.get(placement.blank);
    const shape = blank?.shapes[placement.shape];
    if (blank === undefined || shape === undefined) {
      throw new Error(
        `the plan places "${placement.blank}", shape ${placement.shape}, which the cut list does not have`,
      );
    }
    return { placement, blank, outline: placedPolygon(shape.outline, placement) };
  });
}

/** The strips of a layout with the blanks whose middle, by height, lies in each. A strip that squares the end holds none. */
export function filledStrips(layout: Layout, blanks: ReadonlyMap<string, Blank>): readonly FilledStrip[] {
  const across = layout.firstCut === 'along' ? 0 : 1;
  const placed = placedBlanks(layout, blanks).map((one) => {
    const heights = one.outline.map((point) => point[across]);
    return { one, middle: (Math.min(...heights) + Math.max(...heights)) / 2 };
  });
  return (layout.strips ?? []).map(({ from, height }) => ({
    from,
    height,
    placed: placed.filter(({ middle }) => middle > from && middle < from + height).map(({ one }) => one),
  }));
}

/** Blanks by id, for looking up what a placement names. */
export const blanksById = (blanks: readonly Blank[]): ReadonlyMap<string, Blank> =>
  new Map(blanks.map((blank) => [blank.id, blank]));
