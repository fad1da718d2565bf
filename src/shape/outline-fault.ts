/** What is wrong with an outline, in words for a person. */
import { arcFault, arcOf } from './arc.ts';
import { meetings } from './crossing.ts';
import { type Edge, edgesOf, type Outline } from './outline.ts';
import { edgeLength, outlineArea, outlineBox } from './outline-measures.ts';
import { distance, dot, type Point, scale, subtract } from './point.ts';

/** Places this near each other, as a part of the outline's size, are one place. */
const ONE_PLACE = 1e-7;
/** Coordinates are rounded in files, so an arc set tangent to its neighbour may cross it once more near the shared corner. */
const TANGENT_SLACK = 0.05;
const TANGENT_COSINE = Math.cos((2 * Math.PI) / 180);

/**
 * Why an outline cannot be a patch: an arc that cannot exist, edges of no length, edges that cross or touch, no area.
 * null when nothing is wrong. Coordinates are quoted as given.
 */
export function outlineFault(outline: Outline): string | null {
  let edges: readonly Edge[];
  try {
    edges = edgesOf(outline);
  } catch (error) {
    return (error as Error).message;
  }
  return edgeFault(edges) ?? crossingFault(edges, sizeOf(outline)) ?? areaFault(outline);
}

function edgeFault(edges: readonly Edge[]): string | null {
  if (edges.length < 2 || (edges.length === 2 && edges.every((edge) => edge.arc === undefined))) {
    return `an outline of ${edges.length} straight edges encloses nothing; give at least three corners, or an arc`;
  }
  for (const edge of edges) {
    const fault = edge.arc === undefined ? null : arcFault(edge.from, edge.to, edge.arc);
    if (fault !== null) {
      return `${fault} (from ${quote(edge.from)} to ${quote(edge.to)})`;
    }
    if (edge.arc === undefined && distance(edge.from, edge.to) === 0) {
      return `the corner ${quote(edge.from)} is given twice in a row; leave one out`;
    }
  }
  return null;
}

function crossingFault(edges: readonly Edge[], size: number): string | null {
  const within = ONE_PLACE * size;
  for (let i = 0; i < edges.length; i++) {
    for (let j = i + 1; j < edges.length; j++) {
      const shared = sharedCorners(edges, i, j, within);
      const place = meetings(edges[i]!, edges[j]!, within / 10).find(
        (each) => !shared.some((corner) => distance(each, corner.place) <= corner.within),
      );
      if (place !== undefined) {
        return `the outline crosses or touches itself at ${quote(place)}; each edge may meet only its two neighbours`;
      }
    }
  }
  return null;
}

function areaFault(outline: Outline): string | null {
  return Math.abs(outlineArea(outline)) <= ONE_PLACE * sizeOf(outline) ** 2 ? 'the outline encloses no area' : null;
}

interface SharedCorner {
  readonly place: Point;
  readonly within: number;
}

/** Where neighbouring edges may meet. Two edges alone share both their corners. */
function sharedCorners(edges: readonly Edge[], i: number, j: number, within: number): readonly SharedCorner[] {
  const shared: SharedCorner[] = [];
  if (j === i + 1) {
    shared.push(cornerBetween(edges[i]!, edges[j]!, within));
  }
  if (i === 0 && j === edges.length - 1) {
    shared.push(cornerBetween(edges[j]!, edges[i]!, within));
  }
  return shared;
}

function cornerBetween(before: Edge, after: Edge, within: number): SharedCorner {
  const curved = before.arc !== undefined || after.arc !== undefined;
  const smooth = curved && dot(directionAt(before, 'to'), directionAt(after, 'from')) > TANGENT_COSINE;
  const slack = smooth ? TANGENT_SLACK * Math.min(edgeLength(before), edgeLength(after)) : within;
  return { place: after.from, within: slack };
}

/** The way an edge runs at one of its ends, of length 1. */
function directionAt(edge: Edge, end: 'from' | 'to'): Point {
  const arc = arcOf(edge);
  if (arc === null) {
    return scale(subtract(edge.to, edge.from), 1 / distance(edge.from, edge.to));
  }
  const spoke = scale(subtract(edge[end], arc.centre), 1 / arc.radius);
  return arc.sweep > 0 ? [-spoke[1], spoke[0]] : [spoke[1], -spoke[0]];
}

function sizeOf(outline: Outline): number {
  const { min, max } = outlineBox(outline);
  return Math.max(max[0] - min[0], max[1] - min[1]);
}

const quote = ([x, y]: Point): string => `(${Math.round(x * 1e4) / 1e4}, ${Math.round(y * 1e4) / 1e4})`;
