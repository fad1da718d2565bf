/** Lines and arcs parted wherever they cross or touch, so that they meet at their ends alone. */
import { arcOf, type CentredArc } from '../shape/arc.ts';
import { meetings } from '../shape/crossing.ts';
import type { Edge } from '../shape/outline.ts';
import { distance, dot, type Point, subtract } from '../shape/point.ts';
import { ImportFault } from './import-fault.ts';
import { PlaceGrid } from './place-grid.ts';
import { footOn } from './snap.ts';

/** An edge between two numbered places. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly edge: Edge;
}

export interface Links {
  readonly places: readonly Point[];
  /** Each once, in one of its two directions. */
  readonly links: readonly Link[];
}

const MOST_EDGES = 4_000;
const MOST_PAIRS = 400_000;

/** @param tolerance how far apart two ends, or an end and an edge, may lie and still meet */
export function splitEdges(edges: readonly Edge[], tolerance: number): Links {
  if (edges.length > MOST_EDGES)
    throw new ImportFault(`The drawing has more than ${MOST_EDGES} lines. Save the block alone.`);
  const cuts: Point[][] = edges.map(() => []);
  for (const [a, b] of pairsThatMayMeet(edges, tolerance)) {
    const [one, other] = [edges[a]!, edges[b]!];
    for (const [edge, into, from] of [
      [one, cuts[a]!, other],
      [other, cuts[b]!, one],
    ] as const) {
      for (const end of [from.from, from.to]) {
        const foot = footOn(edge, end, tolerance);
        if (foot !== null) into.push(foot);
      }
    }
    for (const place of meetings(one, other, 1e-9)) {
      cuts[a]!.push(place);
      cuts[b]!.push(place);
    }
  }
  const grid = new PlaceGrid(tolerance);
  const places: Point[] = [];
  const placeOf = (place: Point): number => {
    const known = grid.near(place, tolerance);
    if (known !== null) return known;
    grid.add(place, places.length);
    return places.push(place) - 1;
  };
  // Where lines end on others or cross them goes first: an end a hair off such a place is drawn to it, not it to the end.
  for (const place of cuts.flat()) placeOf(place);
  const links = new Map<string, Link>();
  edges.forEach((edge, i) => {
    const stops = inOrder(edge, [edge.from, ...cuts[i]!, edge.to]).map(placeOf);
    stops.slice(1).forEach((to, k) => {
      const from = stops[k]!;
      if (from === to) return;
      const part = partOf(edge, places[from]!, places[to]!);
      const key = `${Math.min(from, to)} ${Math.max(from, to)} ${bulge(part, from < to)}`;
      if (!links.has(key)) links.set(key, { from, to, edge: part });
    });
  });
  return { places, links: [...links.values()] };
}

/** By their boxes, swept from left to right. */
function pairsThatMayMeet(edges: readonly Edge[], slack: number): readonly (readonly [number, number])[] {
  const boxes = edges
    .map((edge, index) => {
      // A box round both ends and, for an arc, as far about them as it can bulge.
      const reach = slack + (edge.arc === undefined ? 0 : Math.min(edge.arc.radius, distance(edge.from, edge.to)));
      const span = (axis: 0 | 1) => [
        Math.min(edge.from[axis], edge.to[axis]) - reach,
        Math.max(edge.from[axis], edge.to[axis]) + reach,
      ];
      return { index, x: span(0) as [number, number], y: span(1) as [number, number] };
    })
    .sort((a, b) => a.x[0] - b.x[0]);
  const pairs: [number, number][] = [];
  boxes.forEach((box, i) => {
    for (let k = i + 1; k < boxes.length && boxes[k]!.x[0] <= box.x[1]; k++) {
      const other = boxes[k]!;
      if (other.y[0] <= box.y[1] && box.y[0] <= other.y[1]) pairs.push([box.index, other.index]);
      if (pairs.length > MOST_PAIRS)
        throw new ImportFault('The drawing has too many lines that cross. Save the block alone.');
    }
  });
  return pairs;
}

function inOrder(edge: Edge, places: readonly Point[]): readonly Point[] {
  const arc = arcOf(edge);
  const along = subtract(edge.to, edge.from);
  const gone = (place: Point): number => {
    if (place === edge.from) return Number.NEGATIVE_INFINITY;
    if (place === edge.to) return Number.POSITIVE_INFINITY;
    return arc === null ? dot(subtract(place, edge.from), along) : turned(arc, place);
  };
  return [...places].sort((a, b) => gone(a) - gone(b));
}

/** Radians along the arc, from its start. */
function turned(arc: CentredArc, place: Point): number {
  const angle = Math.atan2(place[1] - arc.centre[1], place[0] - arc.centre[0]);
  const whole = 2 * Math.PI;
  const gone = (((arc.sweep > 0 ? angle - arc.start : arc.start - angle) % whole) + whole) % whole;
  // A place a hair before the start would come out a whole turn on.
  return gone > whole - 1e-6 ? gone - whole : gone;
}

function partOf({ arc }: Edge, from: Point, to: Point): Edge {
  return arc === undefined
    ? { from, to }
    : { from, to, arc: { ...arc, radius: Math.max(arc.radius, distance(from, to) / 2) } };
}

/** Which of the edges between two places it is: straight, or how far to which side, roughly, as seen from the lower number. */
function bulge({ from, to, arc }: Edge, forward: boolean): number {
  if (arc === undefined) return 0;
  const half = distance(from, to) / 2;
  const depth = arc.radius - Math.sqrt(Math.max(0, arc.radius ** 2 - half ** 2));
  const side = (arc.turn === 'anticlockwise') === forward ? 1 : -1;
  return side * Math.round(depth * 50);
}
