/** Where edges meet: straight ones and arcs. */
import { arcOf, type CentredArc, onArc, passes } from './arc.ts';
import type { Edge } from './outline.ts';
import { add, cross, distance, dot, type Point, scale, subtract } from './point.ts';

/**
 * The places where two edges meet, ends included. Where they run along one another, the middle of what they share.
 * @param within how far off an edge a place may be and still count as on it
 */
export function meetings(a: Edge, b: Edge, within: number): readonly Point[] {
  const arcA = arcOf(a);
  const arcB = arcOf(b);
  if (arcA === null) {
    return arcB === null ? linesMeet(a, b, within) : lineMeetsArc(a, arcB, within);
  }
  return arcB === null ? lineMeetsArc(b, arcA, within) : arcsMeet(arcA, arcB, within);
}

function linesMeet(a: Edge, b: Edge, within: number): readonly Point[] {
  const alongA = subtract(a.to, a.from);
  const alongB = subtract(b.to, b.from);
  const sizeA = Math.hypot(...alongA);
  const turn = cross(alongA, alongB);
  const apart = subtract(b.from, a.from);
  if (Math.abs(turn) <= 1e-9 * sizeA * Math.hypot(...alongB)) {
    const offLine = Math.abs(cross(alongA, apart)) / sizeA;
    const ends = [dot(apart, alongA), dot(subtract(b.to, a.from), alongA)].map((value) => value / sizeA);
    const from = Math.max(0, Math.min(...ends));
    const to = Math.min(sizeA, Math.max(...ends));
    return offLine <= within && to >= from - within ? [add(a.from, scale(alongA, (from + to) / 2 / sizeA))] : [];
  }
  const place = add(a.from, scale(alongA, cross(apart, alongB) / turn));
  return onLine(a, place, within) && onLine(b, place, within) ? [place] : [];
}

function lineMeetsArc(line: Edge, arc: CentredArc, within: number): readonly Point[] {
  const along = subtract(line.to, line.from);
  const size = Math.hypot(...along);
  const foot = dot(subtract(arc.centre, line.from), along) / size;
  const off = Math.abs(cross(along, subtract(arc.centre, line.from))) / size;
  if (off > arc.radius + within) {
    return [];
  }
  const half = Math.sqrt(Math.max(0, arc.radius ** 2 - off ** 2));
  return [foot - half, foot + half]
    .map((reach) => add(line.from, scale(along, reach / size)))
    .filter((place) => onLine(line, place, within) && onSweep(arc, place, within));
}

function arcsMeet(a: CentredArc, b: CentredArc, within: number): readonly Point[] {
  const apart = distance(a.centre, b.centre);
  if (apart <= within && Math.abs(a.radius - b.radius) <= within) {
    const marks = [0, 0.5, 1];
    const ofA = marks.map((part) => onArc(a, a.start + part * a.sweep));
    const ofB = marks.map((part) => onArc(b, b.start + part * b.sweep));
    return [...ofA.filter((place) => onSweep(b, place, within)), ...ofB.filter((place) => onSweep(a, place, within))];
  }
  if (apart > a.radius + b.radius + within || apart < Math.abs(a.radius - b.radius) - within) {
    return [];
  }
  const along = scale(subtract(b.centre, a.centre), 1 / apart);
  const foot = (apart ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * apart);
  const half = Math.sqrt(Math.max(0, a.radius ** 2 - foot ** 2));
  return [-half, half]
    .map((side) => add(a.centre, [foot * along[0] - side * along[1], foot * along[1] + side * along[0]]))
    .filter((place) => onSweep(a, place, within) && onSweep(b, place, within));
}

function onLine(line: Edge, place: Point, within: number): boolean {
  const along = subtract(line.to, line.from);
  const size = Math.hypot(...along);
  const gone = dot(subtract(place, line.from), along) / size;
  return gone >= -within && gone <= size + within;
}

function onSweep(arc: CentredArc, place: Point, within: number): boolean {
  const angle = Math.atan2(place[1] - arc.centre[1], place[0] - arc.centre[0]);
  return passes(arc, angle, within / arc.radius);
}
