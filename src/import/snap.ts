/**
 * Outlines that nearly meet, made to meet: corners within a tolerance of one another become one, and a corner that lies
 * that near to the middle of another outline's edge is set onto it. Drawing programs round, and hands slip.
 */
import { arcOf, onArc, passes } from '../shape/arc.ts';
import { type Edge, edgesOf, isArc, type Outline, type OutlineEntry } from '../shape/outline.ts';
import { add, distance, dot, type Point, scale, subtract } from '../shape/point.ts';
import { PlaceGrid } from './place-grid.ts';

export interface Snapped {
  readonly outlines: readonly Outline[];
  /** How far the farthest corner was moved. */
  readonly farthest: number;
}

/** Hair's-breadth corrections of what a drawing program has rounded (neat-places.ts). */
export interface Neat {
  readonly place: (place: Point) => Point;
  readonly arcs: (outline: Outline) => Outline;
}

export function snap(outlines: readonly Outline[], tolerance: number, neat: Neat): Snapped {
  const corners = outlines.flatMap((outline) => outline.filter((entry) => !isArc(entry)) as Point[]);
  if (corners.length === 0) return { outlines, farthest: 0 };
  const { places: drawn, placeOf } = cluster(corners, tolerance);
  const places = drawn.map(neat.place);
  const starts = startsOf(outlines);
  const together = rebuild(outlines, (index) => places[placeOf[index]!]!).map(neat.arcs);
  const onto = projections(together, starts, places, placeOf, tolerance);
  const final = places.map((place, i) => mean(onto.get(i) ?? [place]));
  const snapped = rebuild(outlines, (index) => final[placeOf[index]!]!).map(neat.arcs);
  const farthest = corners.reduce((most, corner, i) => Math.max(most, distance(corner, final[placeOf[i]!]!)), 0);
  return { outlines: snapped, farthest };
}

/** The first corner in a neighbourhood draws in those within the tolerance of it; the place is the mean of them all. */
function cluster(corners: readonly Point[], tolerance: number): { places: Point[]; placeOf: number[] } {
  const grid = new PlaceGrid(tolerance);
  const members: Point[][] = [];
  const placeOf = corners.map((corner) => {
    const known = grid.near(corner, tolerance);
    if (known !== null) {
      members[known]!.push(corner);
      return known;
    }
    grid.add(corner, members.length);
    members.push([corner]);
    return members.length - 1;
  });
  return { places: members.map(mean), placeOf };
}

const mean = (points: readonly Point[]): Point => scale(points.reduce(add), 1 / points.length);

/** Where each outline's first corner stands in the list of all corners. */
function startsOf(outlines: readonly Outline[]): readonly number[] {
  const starts: number[] = [];
  let next = 0;
  for (const outline of outlines) {
    starts.push(next);
    next += outline.filter((entry) => !isArc(entry)).length;
  }
  return starts;
}

/** The outlines with each corner at its place; edges that have shrunk to nothing fall out. */
function rebuild(outlines: readonly Outline[], at: (corner: number) => Point): readonly Outline[] {
  let index = 0;
  return outlines.map((outline) => {
    const moved = outline.map((entry): OutlineEntry => (isArc(entry) ? entry : at(index++)));
    return withoutNothings(moved);
  });
}

/** An arc's radius is widened where its ends have moved apart beyond its diameter. */
function withoutNothings(outline: Outline): Outline {
  const edges = edgesOf(outline).filter(({ from, to }) => distance(from, to) > 1e-9);
  return edges.flatMap(({ from, to, arc }): readonly OutlineEntry[] =>
    arc === undefined ? [from] : [from, { arc: { ...arc, radius: Math.max(arc.radius, distance(from, to) / 2) } }],
  );
}

/** For each place that lies on the middle of an edge of which it is no end, where on that edge. */
function projections(
  outlines: readonly Outline[],
  starts: readonly number[],
  places: readonly Point[],
  placeOf: readonly number[],
  tolerance: number,
): ReadonlyMap<number, readonly Point[]> {
  const spread = Math.max(...[0, 1].map((axis) => rangeOf(places, axis as 0 | 1)));
  const grid = new PlaceGrid(Math.max(4 * tolerance, spread / 200));
  for (const [i, place] of places.entries()) grid.add(place, i);
  const onto = new Map<number, Point[]>();
  outlines.forEach((outline, i) => {
    if (outline.length === 0) return;
    const own = new Set(placeOf.slice(starts[i]!, starts[i + 1] ?? placeOf.length));
    for (const edge of edgesOf(outline)) {
      for (const place of grid.along(edge, tolerance)) {
        if (own.has(place)) continue;
        const foot = footOn(edge, places[place]!, tolerance);
        if (foot !== null) onto.set(place, [...(onto.get(place) ?? []), foot].slice(0, 8));
      }
    }
  });
  return onto;
}

function rangeOf(places: readonly Point[], axis: 0 | 1): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const place of places) {
    least = Math.min(least, place[axis]);
    most = Math.max(most, place[axis]);
  }
  return most - least;
}

/** The nearest place on an edge, its ends left out; null where that is farther off than the tolerance. */
export function footOn(edge: Edge, place: Point, tolerance: number): Point | null {
  const arc = arcOf(edge);
  if (distance(edge.from, place) <= tolerance || distance(edge.to, place) <= tolerance) return null;
  if (arc !== null) {
    const spoke = subtract(place, arc.centre);
    const off = Math.abs(Math.hypot(...spoke) - arc.radius);
    const angle = Math.atan2(spoke[1], spoke[0]);
    return off <= tolerance && passes(arc, angle) ? onArc(arc, angle) : null;
  }
  const along = subtract(edge.to, edge.from);
  const part = dot(subtract(place, edge.from), along) / dot(along, along);
  const foot = add(edge.from, scale(along, part));
  return part > 0 && part < 1 && distance(foot, place) <= tolerance ? foot : null;
}
