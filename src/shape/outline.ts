/**
 * A closed outline of straight edges and circular arcs. An entry is a corner, or stands between two corners and says that
 * the edge from the one before to the one after is an arc. The last corner joins the first; an arc may stand last.
 */
import { type Point, reflect } from './point.ts';

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

/** An edge of an outline. Edge i runs from corner i to the next corner, arcs not counted as corners. */
export interface Edge {
  readonly from: Point;
  readonly to: Point;
  /** Absent where the edge is straight. */
  readonly arc?: Arc['arc'];
}

export const isArc = (entry: OutlineEntry): entry is Arc => 'arc' in entry;

/**
 * The edges in the order drawn.
 * @throws RangeError where an arc stands first or two arcs stand together
 */
export function edgesOf(outline: Outline): readonly Edge[] {
  const first = outline[0];
  if (first === undefined || isArc(first)) {
    throw new RangeError('an outline begins with a corner; this one begins with an arc or is empty');
  }
  const edges: Edge[] = [];
  let from: Point = first;
  let arc: Arc['arc'] | undefined;
  for (const entry of [...outline.slice(1), first]) {
    if (!isArc(entry)) {
      edges.push(arc === undefined ? { from, to: entry } : { from, to: entry, arc });
      from = entry;
      arc = undefined;
    } else if (arc !== undefined) {
      throw new RangeError('two arcs stand together in an outline; put the corner where they meet between them');
    } else {
      arc = entry.arc;
    }
  }
  return edges;
}

/** The corners, without the arcs between them. */
export const cornersOf = (outline: Outline): readonly Point[] => outline.filter((entry) => !isArc(entry)) as Point[];

/** Every corner moved by `change`, which keeps distances and hands: a turn or a step. */
export function moveOutline(outline: Outline, change: (corner: Point) => Point): Outline {
  return outline.map((entry) => (isArc(entry) ? entry : change(entry)));
}

/** Reflected in the vertical (x to −x); edge i stays edge i, and arcs turn the other way. */
export function mirrorOutline(outline: Outline): Outline {
  return outline.map((entry) =>
    isArc(entry)
      ? { arc: { ...entry.arc, turn: entry.arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise' } }
      : reflect(entry),
  );
}
