/**
 * A closed outline of straight edges and circular arcs. An entry is a corner, or stands between two corners and says that
 * the edge from the one before to the one after is an arc. The last corner joins the first; an arc may stand last.
 */
import type { Point } from './point.ts';

export interface Arc {
  readonly arc: {
    readonly radius: number;
    /** Which way it turns on its way to the next corner. */
    readonly turn: 'clockwise' | 'anticlockwise';
    /** More than half of the circle. Default false. */
    readonly large?: boolean;
  };
}

export type OutlineEntry = Point | Arc;
export type Outline = readonly OutlineEntry[];
