/** Where the pieces of a block meet: seam by seam, and the ways in which a group of them comes apart into two. */
import { type CentredArc, onArc } from '../shape/arc.ts';
import { distance, type Point } from '../shape/point.ts';
import type { BlockPiece } from './block-pieces.ts';
import { isOn, lineThrough, type SeamLine } from './seam-line.ts';
import { type SharedRun, sewingUnit } from './sewing-unit.ts';

/** A stretch along which two pieces meet. */
export interface Joint {
  /** By index. */
  readonly pieces: readonly [number, number];
  /** The patches that meet there, counted through all pieces. */
  readonly patches: readonly [number, number];
  readonly from: Point;
  readonly to: Point;
  readonly size: number;
  /** Joints of the same number lie on one straight line, or on one circle. */
  readonly course: number;
  /** Null where it is straight. It runs from `from` to `to`. */
  readonly arc: CentredArc | null;
}

type Course = SeamLine | { readonly circle: CentredArc };

export function jointsOf(pieces: readonly BlockPiece[], tolerance: number): readonly Joint[] {
  const pieceOf = pieces.flatMap((piece, index) => piece.patches.map(() => index));
  const unit = sewingUnit(
    pieces.flatMap((piece) => piece.patches.map((patch) => patch.outline)),
    tolerance,
    0,
  );
  const courses: Course[] = [];
  return unit.patches.flatMap((_, patch) =>
    unit.patches[patch]!.shared.filter((run) => run.with > patch && pieceOf[run.with] !== pieceOf[patch]).map(
      (run): Joint => {
        const { arc } = run;
        return {
          pieces: [pieceOf[patch]!, pieceOf[run.with]!],
          patches: [patch, run.with],
          from: run.from,
          to: run.to,
          size: arc === null ? distance(run.from, run.to) : arc.radius * Math.abs(arc.sweep),
          course: courseOf(courses, run, tolerance),
          arc,
        };
      },
    ),
  );
}

function courseOf(courses: Course[], run: SharedRun, tolerance: number): number {
  const { arc, from, to } = run;
  const places = arc === null ? [from, to] : [from, onArc(arc, arc.start + arc.sweep / 2), to];
  const isOnCircle = ({ centre, radius }: CentredArc): boolean =>
    places.every((place) => Math.abs(distance(place, centre) - radius) <= tolerance);
  const found = courses.findIndex((course) =>
    'circle' in course
      ? arc !== null && isOnCircle(course.circle)
      : arc === null && places.every((place) => isOn(course, place, tolerance)),
  );
  return found >= 0 ? found : courses.push(arc === null ? lineThrough(places) : { circle: arc }) - 1;
}
