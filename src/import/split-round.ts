/** A round drawing parted where nothing crosses: along circles about the centre, and along rays from it. */

import { arcOf } from '../shape/arc.ts';
import { flatten } from '../shape/flatten.ts';
import { edgesOf, moveOutline } from '../shape/outline.ts';
import { edgeLength } from '../shape/outline-measures.ts';
import { degreesFromUp, distance, length, modulo, type Point, type Polygon, subtract } from '../shape/point.ts';
import { isInside } from '../shape/polygon.ts';
import { type FoundPatch, motionsOnto } from './found-patch.ts';

/** About the block's centre; where that parts nothing, about the centre of most of its arcs, as a quarter block needs. */
export function splitRound(
  patches: readonly FoundPatch[],
  within: number,
  sewable: (patches: readonly FoundPatch[]) => boolean,
): readonly (readonly FoundPatch[])[] {
  const parts = splitAbout(patches, within, sewable);
  const other = parts.length > 1 ? null : centreOfArcs(patches, within);
  if (other === null) return parts;
  const moved = patches.map((patch) => ({
    ...patch,
    outline: moveOutline(patch.outline, (corner) => subtract(corner, other)),
    middle: subtract(patch.middle, other),
  }));
  return splitAbout(moved, within, sewable).map((part) => part.map((patch) => patches[moved.indexOf(patch)]!));
}

/** The centre that the most length of arcs shares, if it is not the block's own. */
function centreOfArcs(patches: readonly FoundPatch[], within: number): Point | null {
  const centres: { readonly at: Point; size: number }[] = [];
  for (const edge of patches.flatMap(({ outline }) => edgesOf(outline))) {
    const arc = arcOf(edge);
    if (arc === null || length(arc.centre) <= 4 * within) continue;
    // A short arc tells its centre but roughly.
    const known = centres.find(({ at }) => distance(at, arc.centre) <= 8 * within);
    if (known !== undefined) {
      known.size += edgeLength(edge);
    } else if (centres.length < 50) {
      centres.push({ at: arc.centre, size: edgeLength(edge) });
    }
  }
  const best = centres.sort((a, b) => b.size - a.size)[0];
  return best === undefined ? null : best.at;
}

/** Rings from the inside out, each as its sectors in order round the centre. One list of one where nothing parts it. */
function splitAbout(
  patches: readonly FoundPatch[],
  within: number,
  sewable: (patches: readonly FoundPatch[]) => boolean,
): readonly (readonly FoundPatch[])[] {
  const shapes = patches.map((patch) => ({ patch, ...reachOf(patch, within) }));
  const rings = parted(
    shapes.map((shape) => ({ item: shape, from: shape.nearest, to: shape.farthest })),
    2 * within,
  );
  return rings.flatMap((ring) => joinHalves(sectorsOf(ring, within), within, sewable));
}

interface Reach {
  readonly nearest: number;
  readonly farthest: number;
  /** Degrees anticlockwise from up; null where it goes all round the centre. */
  readonly sector: { readonly from: number; readonly to: number } | null;
}

function reachOf({ outline }: FoundPatch, within: number): Reach {
  const polygon = flatten(outline, { side: 'chord', within: 1e-3 });
  return {
    nearest: isInside(polygon, 0, 0) ? 0 : nearestOf(polygon),
    farthest: Math.max(...polygon.map(length)),
    sector: sectorOf(polygon, within),
  };
}

function nearestOf(polygon: Polygon): number {
  return Math.min(
    ...polygon.map((a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const part = Math.max(0, Math.min(1, -(a[0] * dx + a[1] * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(a[0] + part * dx, a[1] + part * dy);
    }),
  );
}

function sectorOf(polygon: Polygon, within: number): Reach['sector'] {
  const seen = polygon.filter((point) => length(point) > 2 * within).map(degreesFromUp);
  let at = seen[0] ?? 0;
  let [from, to] = [at, at];
  for (const next of [...seen.slice(1), seen[0] ?? 0]) {
    at += modulo(next - at + 180, 360) - 180;
    from = Math.min(from, at);
    to = Math.max(to, at);
  }
  const round = Math.abs(at - (seen[0] ?? 0)) > 180;
  return round || to - from >= 359 ? null : { from: modulo(from, 360), to: modulo(from, 360) + to - from };
}

interface Span<Item> {
  readonly item: Item;
  readonly from: number;
  readonly to: number;
}

/** Gathers what overlaps by more than `slack`; parts lie in order. */
function parted<Item>(spans: readonly Span<Item>[], slack: number): readonly (readonly Item[])[] {
  const parts: Item[][] = [];
  let reached = Number.NEGATIVE_INFINITY;
  for (const { item, from, to } of [...spans].sort((a, b) => a.from - b.from)) {
    if (parts.length === 0 || from >= reached - slack) {
      parts.push([item]);
    } else {
      parts.at(-1)!.push(item);
    }
    reached = Math.max(reached, to);
  }
  return parts;
}

type Seen = Reach & { readonly patch: FoundPatch };

function sectorsOf(ring: readonly Seen[], within: number): readonly (readonly FoundPatch[])[] {
  if (ring.some(({ sector }) => sector === null)) return [ring.map(({ patch }) => patch)];
  const farthest = Math.max(...ring.map((seen) => seen.farthest));
  const slack = (4 * within * 180) / (Math.PI * farthest);
  const start = clearRay(ring, slack);
  if (start === null) return [ring.map(({ patch }) => patch)];
  return parted(
    ring.map(({ patch, sector }) => {
      const from = modulo(sector!.from - start + slack, 360) - slack;
      return { item: patch, from, to: from + sector!.to - sector!.from };
    }),
    slack,
  );
}

/** A direction in which a patch begins and that no patch lies across. */
function clearRay(ring: readonly Seen[], slack: number): number | null {
  const starts = ring.map(({ sector }) => sector!.from);
  const clear = starts.find((start) =>
    ring.every(({ sector }) => {
      const into = modulo(start - sector!.from, 360);
      return into <= slack || into >= Math.min(360 - slack, sector!.to - sector!.from - slack);
    }),
  );
  return clear ?? null;
}

/** Neighbours that are each other's mirror image and can be sewn together were one unit, drawn with a seam down its middle. */
function joinHalves(
  sectors: readonly (readonly FoundPatch[])[],
  within: number,
  sewable: (patches: readonly FoundPatch[]) => boolean,
): readonly (readonly FoundPatch[])[] {
  const done = new Set<number>();
  const joined = new Map<number, readonly FoundPatch[]>();
  sectors.forEach((sector, i) => {
    const next = (i + 1) % sectors.length;
    const other = sectors[next]!;
    if (next === i || done.has(i) || done.has(next) || sector.length < 2) return;
    const halves =
      motionsOnto(sector, other, true, 2 * within, false) !== null &&
      motionsOnto(sector, other, false, 2 * within, false) === null;
    const both = [...sector, ...other];
    if (halves && sewable(both)) {
      done.add(i).add(next);
      joined.set(i, both);
    }
  });
  return sectors.flatMap((sector, i) => (joined.has(i) ? [joined.get(i)!] : done.has(i) ? [] : [sector]));
}
