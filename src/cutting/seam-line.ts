/** The straight line of a seam: measured along it from its start, and off it to its left. */
import { cross, distance, dot, type Point, scale, subtract } from '../shape/point.ts';

export interface SeamLine {
  readonly from: Point;
  readonly to: Point;
  /** Of length 1. */
  readonly along: Point;
  readonly size: number;
}

export function seamLine(from: Point, to: Point): SeamLine {
  const size = distance(from, to);
  return { from, to, size, along: scale(subtract(to, from), 1 / size) };
}

/** Through the two of some places that lie farthest apart. */
export function lineThrough(places: readonly Point[]): SeamLine {
  let ends: readonly [Point, Point] = [places[0]!, places[1]!];
  let most = distance(...ends);
  places.forEach((one, i) => {
    for (const other of places.slice(i + 1)) {
      const apart = distance(one, other);
      if (apart > most) {
        ends = [one, other];
        most = apart;
      }
    }
  });
  return seamLine(...ends);
}

export const turnedRound = (line: SeamLine): SeamLine => seamLine(line.to, line.from);
export const alongLine = (line: SeamLine, place: Point): number => dot(line.along, subtract(place, line.from));
export const offLine = (line: SeamLine, place: Point): number => cross(line.along, subtract(place, line.from));

/**
 * How far off the line a place may lie and still count as on it. Beyond the seam's ends it is more: ends that lie true within the
 * tolerance tell the line's direction the less closely, the shorter the seam.
 */
export function slackAt(line: SeamLine, along: number, tolerance: number): number {
  return tolerance * (1 + Math.max(0, -along, along - line.size) / line.size);
}

/** Whether a place lies on the line, as far as can be told. */
export const isOn = (line: SeamLine, place: Point, tolerance: number): boolean =>
  Math.abs(offLine(line, place)) <= slackAt(line, alongLine(line, place), tolerance);
