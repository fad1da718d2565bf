/** Plane geometry of outlines with arcs for the tests, by the textbook and independent of src/shape. */
import type { Arc, Outline } from '../../src/shape/outline.ts';
import type { Point } from '../../src/shape/point.ts';

export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly arc: Arc['arc'] | null;
}

export function sides(outline: Outline): readonly Side[] {
  const list: Side[] = [];
  outline.forEach((entry, i) => {
    if ('arc' in entry) {
      return;
    }
    const next = outline[(i + 1) % outline.length]!;
    const to = 'arc' in next ? outline[(i + 2) % outline.length]! : next;
    list.push({ from: entry as Point, to: to as Point, arc: 'arc' in next ? next.arc : null });
  });
  return list;
}

/** The angle that an arc spans about its centre, in radians: 2 asin(chord / 2r), or the rest of the circle. */
export function span(side: Side): number {
  const chord = Math.hypot(side.to[0] - side.from[0], side.to[1] - side.from[1]);
  const small = 2 * Math.asin(chord / 2 / side.arc!.radius);
  return side.arc!.large ? 2 * Math.PI - small : small;
}

/** Signed area, positive anticlockwise: the shoelace formula and a circular segment r²(θ − sin θ)/2 for each arc. */
export function area(outline: Outline): number {
  return sides(outline).reduce((sum, side) => {
    const shoelace = (side.from[0] * side.to[1] - side.from[1] * side.to[0]) / 2;
    if (side.arc === null) {
      return sum + shoelace;
    }
    const angle = span(side);
    const segment = (side.arc.radius ** 2 * (angle - Math.sin(angle))) / 2;
    return sum + shoelace + (side.arc.turn === 'anticlockwise' ? segment : -segment);
  }, 0);
}

/** Corners with `steps` points along each arc, on the arc. For arcs about the block's centre only. */
export function flattenAboutCentre(outline: Outline, steps: number): readonly Point[] {
  return sides(outline).flatMap((side) => {
    if (side.arc === null) {
      return [side.from];
    }
    const start = Math.atan2(side.from[1], side.from[0]);
    const angle = span(side) * (side.arc.turn === 'anticlockwise' ? 1 : -1);
    const { radius } = side.arc;
    return Array.from({ length: steps }, (_, k): Point => {
      const at = start + (angle * k) / steps;
      return [radius * Math.cos(at), radius * Math.sin(at)];
    });
  });
}
