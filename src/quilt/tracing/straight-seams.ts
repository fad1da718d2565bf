/**
 * Seams that run straight on past corners. Printed straight, they are clicked not quite so, and then no foundation could sew them as
 * the one line that they are.
 */
import { cross, distance, dot, type Point, scale, subtract } from '../../shape/point.ts';
import { bulgeOf } from './line-shape.ts';
import type { Tracing } from './tracing.ts';

/** Beyond this a bend is meant. */
const WIDEST_BEND = (5 * Math.PI) / 180;
/** Corners where seams cross are set on both by turns; this often is more than enough. */
const ROUNDS = 40;
const STILL = 1e-10;

/** Corner ids from one end to the other. */
type Seam = readonly [number, number, number, ...number[]];

/**
 * The tracing with the corners inside of each such seam set on the straight line between its ends.
 * @param within how far off a corner may lie and still be taken to belong on the line
 */
export function straightenSeams(tracing: Tracing, within: number): Tracing {
  const places = new Map(tracing.corners.map((corner) => [corner.id, corner.at]));
  const seams = straightSeams(tracing, places, within);
  if (seams.length === 0) return tracing;
  for (let round = 0; round < ROUNDS; round++) {
    let moved = 0;
    for (const seam of seams) {
      const from = places.get(seam[0])!;
      const along = subtract(places.get(seam.at(-1)!)!, from);
      for (const id of seam.slice(1, -1)) {
        const at = places.get(id)!;
        const part = dot(subtract(at, from), along) / dot(along, along);
        const on: Point = [from[0] + part * along[0], from[1] + part * along[1]];
        moved = Math.max(moved, distance(at, on));
        places.set(id, on);
      }
    }
    if (moved < STILL) break;
  }
  return { ...tracing, corners: tracing.corners.map(({ id }) => ({ id, at: places.get(id)! })) };
}

function straightSeams(tracing: Tracing, places: ReadonlyMap<number, Point>, within: number): readonly Seam[] {
  const ends = tracing.lines
    .filter((line) => bulgeOf(tracing, line) === 0)
    .flatMap(({ id, from, to }) => [
      { line: id, at: from, other: to },
      { line: id, at: to, other: from },
    ]);
  /** From a corner, by way of a line, on to the next corner of the seam. */
  const next = new Map<string, number>();
  for (const { id } of tracing.corners) {
    const here = ends.filter((end) => end.at === id);
    const pairs = here
      .flatMap((a, i) => here.slice(i + 1).map((b) => ({ a, b, bend: bendAt(places, a.other, id, b.other, within) })))
      .filter(({ bend }) => bend !== null)
      .sort((one, other) => one.bend! - other.bend!);
    for (const { a, b } of pairs) {
      if (next.has(`${a.other} ${id}`) || next.has(`${b.other} ${id}`)) continue;
      next.set(`${a.other} ${id}`, b.other);
      next.set(`${b.other} ${id}`, a.other);
    }
  }
  return ends.flatMap(({ at, other }) => {
    // A seam begins where nothing runs on behind it, and is told once, from its lower end.
    if (next.has(`${other} ${at}`) || !next.has(`${at} ${other}`)) return [];
    const seam = [at, other];
    for (let on = next.get(`${at} ${other}`); on !== undefined && !seam.includes(on); ) {
      seam.push(on);
      on = next.get(`${seam.at(-2)} ${on}`);
    }
    return seam.at(-1)! > at ? [seam as unknown as Seam] : [];
  });
}

/** How far, in radians, the way from u by c to v bends; null where that is more than a slip. */
function bendAt(places: ReadonlyMap<number, Point>, u: number, c: number, v: number, within: number): number | null {
  const [from, at, to] = [places.get(u)!, places.get(c)!, places.get(v)!];
  const [a, b] = [subtract(at, from), subtract(to, at)];
  const bend = Math.abs(Math.atan2(cross(a, b), dot(a, b)));
  const chord = subtract(to, from);
  const off = Math.abs(cross(scale(chord, 1 / Math.hypot(...chord)), a));
  return bend <= WIDEST_BEND && off <= within ? bend : null;
}
