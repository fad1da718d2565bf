/** The drawing of a block checked before anything is cut: whether it closes round the centre and its pieces fit each other. */
import { placesOf } from '../quilt/places.ts';
import type { Unit } from '../quilt/quilt.ts';
import { arcOf, onArc } from '../shape/arc.ts';
import { intersection, union } from '../shape/combine.ts';
import { meetings } from '../shape/crossing.ts';
import { type Edge, edgesOf } from '../shape/outline.ts';
import type { Box } from '../shape/outline-measures.ts';
import { distance, dot, type Point, type Polygon, scale, subtract } from '../shape/point.ts';
import { isInside, polygonArea, polygonBox, polygonCentroid, polygonPerimeter } from '../shape/polygon.ts';
import { blockPieces } from './block-pieces.ts';
import { joinedSides } from './joined-sides.ts';
import { type SewingPatch, sewingUnit } from './sewing-unit.ts';

/** Places in the block; lengths in the outlines' unit. Of faults that are alike the worst stands for all. */
export type DrawingFault = { readonly at: Point; readonly times: number } & (
  | { readonly kind: 'turn'; readonly degrees: number }
  /** Sides that are joined to each other and differ. */
  | { readonly kind: 'lengths'; readonly names: readonly [string, string]; readonly sizes: readonly [number, number] }
  /** Corners that nearly meet. */
  | { readonly kind: 'points'; readonly names: readonly [string, string]; readonly apart: number }
  /** Edges that face each other across a gap. */
  | { readonly kind: 'gap'; readonly names: readonly [string, string]; readonly apart: number }
  /** Something left out all round which there are patches. */
  | { readonly kind: 'hole'; readonly area: number }
  | { readonly kind: 'overlap'; readonly names: readonly [string, string]; readonly area: number }
);

export interface Closeness {
  /** What lies so near is one: no fault. */
  readonly tolerance: number;
  /** Corners so near were meant to meet, and edges so near to lie along one another. */
  readonly near: number;
}

/** An angle this far from a full turn shows at the centre. */
const DEGREES = 0.1;

/** @param units as unitsOf gives them; their outlines must be sound */
export function checkDrawing(units: readonly Unit[], closeness: Closeness): readonly DrawingFault[] {
  const pieces = blockPieces(units);
  const placed = pieces.flatMap((piece, index) =>
    piece.patches.map((patch) => ({ ...patch, piece: index, pieceName: piece.name })),
  );
  const ready = sewingUnit(
    placed.map((patch) => patch.outline),
    closeness.tolerance,
    0,
  );
  const patches = placed.map(
    ({ unit, number, piece, pieceName }, index): Placed => ({
      ...ready.patches[index]!,
      name: `${unit}${number}`,
      piece,
      pieceName,
    }),
  );
  const faults = [
    ...turnFaults(units, patches, closeness),
    ...joinedSides(patches, closeness),
    ...cornerFaults(patches, closeness),
    ...gapFaults(patches, closeness),
    ...overlapFaults(patches, closeness),
    ...holeFaults(patches, closeness),
  ];
  return worstOfEach(faults);
}

/** A patch in its place in the block. */
export interface Placed extends SewingPatch {
  readonly name: string;
  /** Index of the foundation that it is on; a patch sewn without one is a piece of its own. */
  readonly piece: number;
  /** "A", or "D1" for a patch that is a piece of its own. */
  readonly pieceName: string;
}

function worstOfEach(faults: readonly DrawingFault[]): readonly DrawingFault[] {
  const worst = new Map<string, DrawingFault>();
  for (const fault of faults) {
    const key = 'names' in fault ? `${fault.kind} ${[...fault.names].sort().join(' ')}` : fault.kind;
    const before = worst.get(key);
    const times = (before?.times ?? 0) + fault.times;
    worst.set(key, { ...(before === undefined || sizeOf(fault) > sizeOf(before) ? fault : before), times });
  }
  return [...worst.values()];
}

function sizeOf(fault: DrawingFault): number {
  switch (fault.kind) {
    case 'turn':
      return Math.abs(fault.degrees - 360);
    case 'lengths':
      return Math.abs(fault.sizes[0] - fault.sizes[1]);
    case 'points':
    case 'gap':
      return fault.apart;
    default:
      return fault.area;
  }
}

/** Where what is repeated all round meets at the centre, its angles there must make a full turn. */
function turnFaults(
  units: readonly Unit[],
  patches: readonly Placed[],
  { tolerance }: Closeness,
): readonly DrawingFault[] {
  const degrees = patches.reduce((sum, { polygon }) => sum + angleAtCentre(polygon, tolerance), 0);
  const closes = units.some(
    (unit) =>
      placesOf(unit).length > 1 &&
      (unit.repeat.over ?? 360) === 360 &&
      unit.patches.some((patch) => edgesOf(patch.outline).some((edge) => Math.hypot(...edge.from) <= tolerance)),
  );
  return closes && Math.abs(degrees - 360) > DEGREES ? [{ kind: 'turn', at: [0, 0], degrees, times: 1 }] : [];
}

function angleAtCentre(polygon: Polygon, tolerance: number): number {
  const corner = polygon.findIndex((each) => Math.hypot(...each) <= tolerance);
  if (corner < 0) {
    return 0;
  }
  const here = polygon[corner]!;
  const after = subtract(polygon[(corner + 1) % polygon.length]!, here);
  const before = subtract(polygon.at(corner - 1)!, here);
  const turned = Math.atan2(after[0] * before[1] - after[1] * before[0], dot(after, before));
  return ((turned * 180) / Math.PI + 360) % 360;
}

/** Corners of two pieces that nearly meet, and neither of which meets the other piece otherwise. */
function cornerFaults(patches: readonly Placed[], { tolerance, near }: Closeness): readonly DrawingFault[] {
  const corners = patches.flatMap(({ edges, name, piece }) => edges.map((edge) => ({ at: edge.from, name, piece })));
  const sorted = corners.sort((a, b) => a.at[0] - b.at[0]);
  const faults: DrawingFault[] = [];
  const meets = (at: Point, piece: number): boolean =>
    corners.some((other) => other.piece === piece && distance(other.at, at) <= tolerance);
  sorted.forEach((one, i) => {
    for (let k = i + 1; k < sorted.length && sorted[k]!.at[0] - one.at[0] <= near; k++) {
      const other = sorted[k]!;
      const apart = distance(one.at, other.at);
      const missed = other.piece !== one.piece && apart > tolerance && apart <= near;
      if (missed && !meets(one.at, other.piece) && !meets(other.at, one.piece)) {
        faults.push({ kind: 'points', at: one.at, names: [one.name, other.name], apart, times: 1 });
      }
    }
  });
  return faults;
}

/** Edges that no neighbour shares, seen from some places on them: is there another such edge right across? */
function gapFaults(patches: readonly Placed[], { tolerance, near }: Closeness): readonly DrawingFault[] {
  const bare = patches.flatMap((patch) => bareMarks(patch).map((mark) => ({ ...mark, patch })));
  return bare.flatMap(({ at, outward, patch }) => {
    const across = bare
      .filter((other) => other.patch !== patch && dot(other.outward, outward) < -0.9)
      .map((other) => ({ name: other.patch.name, apart: gapTo(at, outward, other.edge, near) }))
      .filter(({ apart }) => apart > tolerance)
      .sort((a, b) => a.apart - b.apart)[0];
    return across === undefined
      ? []
      : [{ kind: 'gap' as const, at, names: [patch.name, across.name] as const, apart: across.apart, times: 1 }];
  });
}

interface Mark {
  readonly at: Point;
  /** Of length 1. */
  readonly outward: Point;
  readonly edge: Edge;
}

/** Places on edges between which and the outside nothing else lies. */
function bareMarks(patch: Placed): readonly Mark[] {
  return patch.edges.flatMap((edge, index) => {
    const arc = arcOf(edge);
    const runs = patch.shared.filter((run) => run.edge === index);
    const size = distance(edge.from, edge.to);
    return [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((part): readonly Mark[] => {
      const at =
        arc === null
          ? ([0, 1].map((i) => edge.from[i]! + part * (edge.to[i]! - edge.from[i]!)) as unknown as Point)
          : onArc(arc, arc.start + part * arc.sweep);
      const along = scale(subtract(edge.to, edge.from), 1 / size);
      const reach = (place: Point): number => dot(subtract(place, edge.from), along);
      const covered = runs.some((run) => {
        const ends = [reach(run.from), reach(run.to)].sort((a, b) => a - b);
        return reach(at) >= ends[0]! && reach(at) <= ends[1]!;
      });
      if (covered) {
        return [];
      }
      const normal: Point = arc === null ? [along[1], -along[0]] : scale(subtract(at, arc.centre), 1 / arc.radius);
      const out = isOutward(patch.polygon, at, normal, size) ? normal : scale(normal, -1);
      return [{ at, outward: out, edge }];
    });
  });
}

/** Whether a small step the way of the normal leaves the patch. */
function isOutward(polygon: Polygon, at: Point, normal: Point, size: number): boolean {
  const step = size * 1e-3;
  return !isInside(polygon, at[0] + step * normal[0], at[1] + step * normal[1]);
}

/** How far out from a place an edge lies; 0 where it is not met within reach. */
function gapTo(at: Point, outward: Point, edge: Edge, reach: number): number {
  const ray: Edge = { from: at, to: [at[0] + reach * outward[0], at[1] + reach * outward[1]] };
  const met = meetings(ray, edge, 1e-9).map((place) => distance(place, at));
  return met.length === 0 ? 0 : Math.min(...met);
}

function overlapFaults(patches: readonly Placed[], { tolerance }: Closeness): readonly DrawingFault[] {
  const boxes = patches.map(({ polygon }) => polygonBox(polygon));
  return patches.flatMap((one, i) =>
    patches.slice(i + 1).flatMap((other, k): readonly DrawingFault[] => {
      if (!lieOver(boxes[i]!, boxes[i + 1 + k]!, tolerance)) {
        return [];
      }
      const common = intersection(one.polygon, other.polygon).filter(
        (each) => polygonArea(each) > tolerance * polygonPerimeter(each),
      );
      const area = common.reduce((sum, each) => sum + polygonArea(each), 0);
      return common.length === 0
        ? []
        : [{ kind: 'overlap', at: polygonCentroid(common[0]!), names: [one.name, other.name], area, times: 1 }];
    }),
  );
}

const lieOver = (a: Box, b: Box, within: number): boolean =>
  a.min[0] < b.max[0] - within &&
  b.min[0] < a.max[0] - within &&
  a.min[1] < b.max[1] - within &&
  b.min[1] < a.max[1] - within;

/** What lies within a hole without closing it is taken off its area. */
function holeFaults(patches: readonly Placed[], { tolerance }: Closeness): readonly DrawingFault[] {
  const rings = union(patches.map((patch) => patch.polygon));
  const holes = rings.filter((ring) => polygonArea(ring) < 0);
  const islands = rings.filter((ring) => polygonArea(ring) > 0);
  return holes.flatMap((hole): readonly DrawingFault[] => {
    const within = islands.filter((island) => isInside(hole, ...island[0]!));
    const area = -polygonArea(hole) - within.reduce((sum, island) => sum + polygonArea(island), 0);
    return area <= 2 * tolerance * polygonPerimeter(hole)
      ? []
      : [{ kind: 'hole', at: within.length === 0 ? polygonCentroid(hole) : hole[0]!, area, times: 1 }];
  });
}
