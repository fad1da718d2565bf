/** Foundation piecing: each patch is sewn along one straight line against all before it. This finds that line. */

import type { Patch, Unit } from '../quilt/quilt.ts';
import { flatten } from '../shape/flatten.ts';
import { type Edge, edgesOf } from '../shape/outline.ts';
import { outlineArea } from '../shape/outline-measures.ts';
import { cross, dot, length, type Point, scale, subtract } from '../shape/point.ts';
import { reach } from '../shape/polygon.ts';

export interface SewnSide {
  /** Index of the patch's edge that is sewn first; null for the first patch, or where none is shared. */
  readonly edge: number | null;
  /** What is unusual about it, in words for a person; null when nothing is. */
  readonly fault: string | null;
}

/** Edges whose ends lie this near one line, as a part of the longer edge, lie along one another; files round coordinates. */
const ALONG = 1e-3;
/** Less shared than this part of an edge is a touch, not a seam. */
const A_TOUCH = 0.02;

/** For each patch of a paper unit, in sewing order, the edge that is sewn against the patches before it. */
export function sewnSides(unit: Unit): readonly SewnSide[] {
  const before = new EdgeGrid(unit);
  return unit.patches.map((patch, index) => {
    const edges = edgesOf(patch.outline);
    const side = index === 0 ? { edge: null, fault: null } : sewnSide(unit, patch, edges, before);
    for (const edge of edges) {
      before.add(edge);
    }
    return side;
  });
}

/** Straight edges kept by the squares of a grid that they touch, so that a unit of many patches stays quick. */
class EdgeGrid {
  private readonly squares = new Map<string, Edge[]>();
  private readonly size: number;

  constructor(unit: Unit) {
    this.size = Math.max(...unit.patches.flatMap((patch) => edgesOf(patch.outline).map(chord))) || 1;
  }

  add(edge: Edge): void {
    for (const key of edge.arc === undefined ? this.keys(edge) : []) {
      const square = this.squares.get(key);
      if (square === undefined) {
        this.squares.set(key, [edge]);
      } else {
        square.push(edge);
      }
    }
  }

  near(edge: Edge): ReadonlySet<Edge> {
    return new Set(this.keys(edge).flatMap((key) => this.squares.get(key) ?? []));
  }

  private keys({ from, to }: Edge): readonly string[] {
    const slack = ALONG * this.size;
    const span = (a: number, b: number): readonly number[] => {
      const first = Math.floor((Math.min(a, b) - slack) / this.size);
      const last = Math.floor((Math.max(a, b) + slack) / this.size);
      return Array.from({ length: last - first + 1 }, (_, k) => first + k);
    };
    return span(from[0], to[0]).flatMap((x) => span(from[1], to[1]).map((y) => `${x},${y}`));
  }
}

const chord = (edge: Edge): number => length(subtract(edge.to, edge.from));

function sewnSide(unit: Unit, patch: Patch, edges: readonly Edge[], before: EdgeGrid): SewnSide {
  const name = `${unit.id}${patch.number}`;
  const shared = edges
    .map((edge, index) => ({ index, size: chord(edge), run: sharedRun(edge, before) }))
    .filter(({ size, run }) => run > A_TOUCH * size)
    .sort((a, b) => b.run - a.run);
  const first = shared[0];
  if (first === undefined) {
    return {
      edge: null,
      fault: `${name} shares no straight seam with the patches sewn before it on its foundation; change the sewing order, or piece unit ${unit.id} without paper`,
    };
  }
  if (beyondSeam(patch, edges[first.index]!) > ALONG * Math.max(...edges.map(chord))) {
    return {
      edge: null,
      fault: `${name} lies on both sides of the line along which it would be sewn to the patches before it, so it cannot be flipped into place; part it in two, or piece unit ${unit.id} without paper`,
    };
  }
  const fault =
    shared.length === 1
      ? null
      : `${name} meets the patches sewn before it along ${shared.length} lines, and a foundation can sew it along one only; change the sewing order, or part unit ${unit.id} in two`;
  return { edge: first.index, fault };
}

/** How far a patch reaches beyond the line of one of its edges. */
function beyondSeam(patch: Patch, seam: Edge): number {
  const outline = flatten(patch.outline, { side: 'chord', within: 1e-3 });
  const out = scale(subtract(seam.to, seam.from), (outlineArea(patch.outline) >= 0 ? 1 : -1) / chord(seam));
  const normal: Point = [out[1], -out[0]];
  return reach(outline, normal) - dot(seam.from, normal);
}

/** How much of a straight edge runs along straight edges of earlier patches. */
function sharedRun(edge: Edge, before: EdgeGrid): number {
  if (edge.arc !== undefined) {
    return 0;
  }
  return [...before.near(edge)].reduce((sum, other) => sum + overlap(edge, other), 0);
}

function overlap(a: Edge, b: Edge): number {
  const along = subtract(a.to, a.from);
  const size = length(along);
  const within = ALONG * Math.max(size, length(subtract(b.to, b.from)));
  const ends = [subtract(b.from, a.from), subtract(b.to, a.from)];
  if (ends.some((end) => Math.abs(cross(along, end)) / size > within)) {
    return 0;
  }
  const reaches = ends.map((end) => dot(end, along) / size);
  return Math.max(0, Math.min(size, Math.max(...reaches)) - Math.max(0, Math.min(...reaches)));
}
