/** The closed shapes between lines: what a line drawing means by its patches. */
import { arcOf } from '../shape/arc.ts';
import type { Edge, Outline, OutlineEntry } from '../shape/outline.ts';
import { outlineArea } from '../shape/outline-measures.ts';
import { type Point, subtract } from '../shape/point.ts';
import { type Link, splitEdges } from './split-edges.ts';

export interface Faces {
  readonly outlines: readonly Outline[];
  /** Lines, or ends of lines, that part nothing. */
  readonly loose: number;
}

/** One of the two directions of a link. */
interface Step {
  readonly from: number;
  readonly to: number;
  readonly edge: Edge;
  readonly back: () => Step;
}

/** @param tolerance how far apart lines may end and still meet */
export function findFaces(edges: readonly Edge[], tolerance: number): Faces {
  const { links } = splitEdges(edges, tolerance);
  const firm = withoutLoose(links);
  const leaving = new Map<number, Step[]>();
  for (const link of firm) {
    const forth: Step = { ...link, back: () => back };
    const back: Step = { from: link.to, to: link.from, edge: reversed(link.edge), back: () => forth };
    for (const step of [forth, back]) leaving.set(step.from, [...(leaving.get(step.from) ?? []), step]);
  }
  const next = new Map<Step, Step>();
  for (const steps of leaving.values()) {
    const round = steps.sort((a, b) => compareDirections(a.edge, b.edge));
    // Come in along one, the face at the left goes on along the one that leaves just clockwise of it.
    round.forEach((step, i) => {
      next.set(step.back(), round.at(i - 1)!);
    });
  }
  const outlines: Outline[] = [];
  const seen = new Set<Step>();
  for (const first of next.keys()) {
    const ring: Step[] = [];
    for (let step = first; !seen.has(step); step = next.get(step)!) {
      seen.add(step);
      ring.push(step);
    }
    const outline = ring.flatMap(({ edge: { from, arc } }): readonly OutlineEntry[] =>
      arc === undefined ? [from] : [from, { arc }],
    );
    // The outside of the whole runs clockwise, and is no patch.
    if (ring.length > 1 && outlineArea(outline) > tolerance ** 2) outlines.push(outline);
  }
  return { outlines, loose: links.length - firm.length };
}

/** Takes off what ends nowhere, again and again. */
function withoutLoose(links: readonly Link[]): readonly Link[] {
  const at = new Map<number, Set<Link>>();
  for (const link of links) {
    for (const place of [link.from, link.to]) at.set(place, (at.get(place) ?? new Set()).add(link));
  }
  const ends = [...at.keys()].filter((place) => at.get(place)!.size === 1);
  const loose = new Set<Link>();
  for (let place = ends.pop(); place !== undefined; place = ends.pop()) {
    for (const link of at.get(place)!) {
      loose.add(link);
      const other = link.from === place ? link.to : link.from;
      at.get(place)!.delete(link);
      at.get(other)!.delete(link);
      if (at.get(other)!.size === 1) ends.push(other);
    }
  }
  return links.filter((link) => !loose.has(link));
}

function reversed({ from, to, arc }: Edge): Edge {
  if (arc === undefined) return { from: to, to: from };
  return { from: to, to: from, arc: { ...arc, turn: arc.turn === 'clockwise' ? 'anticlockwise' : 'clockwise' } };
}

/** Anticlockwise by the way they leave; of two that leave alike, the one that bends to the right comes first. */
function compareDirections(a: Edge, b: Edge): number {
  const [one, other] = [leaves(a), leaves(b)];
  return Math.abs(one.angle - other.angle) > 1e-6 ? one.angle - other.angle : one.bend - other.bend;
}

function leaves(edge: Edge): { readonly angle: number; readonly bend: number } {
  const arc = arcOf(edge);
  if (arc === null) {
    const along = subtract(edge.to, edge.from);
    return { angle: Math.atan2(along[1], along[0]), bend: 0 };
  }
  const spoke: Point = subtract(edge.from, arc.centre);
  const along: Point = arc.sweep > 0 ? [-spoke[1], spoke[0]] : [spoke[1], -spoke[0]];
  return { angle: Math.atan2(along[1], along[0]), bend: Math.sign(arc.sweep) / arc.radius };
}
