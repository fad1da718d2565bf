/** How each blank may lie on one cloth, and as what a given outline on that cloth may be counted. */
import { type Polygon, subtract } from '../shape/point.ts';
import { anticlockwise, mirrorPolygon, polygonBox, turnPolygon } from '../shape/polygon.ts';
import { sameOutline } from '../shape/same-outline.ts';
import type { ClothChoice, LayoutJob, Placement, TurnRange, Turns } from './layout-job.ts';
import { placedPolygon } from './placed.ts';

export interface ShapeOn {
  readonly blank: string;
  readonly shape: number;
  readonly outline: Polygon;
  readonly turns: Turns;
  readonly mirror: boolean;
}

/** Degrees: the proof-reader's own tolerance. */
const SAME = 1e-6;

/** Every shape of every blank that may be cut from a cloth of the job, with its turns there. */
export function shapesOn(job: LayoutJob, cloth: string): readonly ShapeOn[] {
  return job.blanks.flatMap((blank) => {
    const choices = blank.cloths ?? [cloth];
    const choice = choices.find((each) => (typeof each === 'string' ? each : each.id) === cloth);
    if (choice === undefined) {
      return [];
    }
    const own: Exclude<ClothChoice, string> = typeof choice === 'string' ? { id: choice } : choice;
    return (blank.shapes ?? [blank]).flatMap((shape, index): readonly ShapeOn[] => {
      const { outline } = shape;
      if (outline === undefined) {
        return [];
      }
      const turns = own.turns ?? shape.turns ?? [0];
      return [{ blank: blank.id, shape: index, outline, turns, mirror: own.mirror ?? shape.mirror ?? false }];
    });
  });
}

/** The ways in which exactly this outline, where it lies on the cloth, is one of the shapes at a turn that is allowed. */
export function placementsAs(target: Polygon, shapes: readonly ShapeOn[], within: number): readonly Placement[] {
  return shapes.flatMap((shape) =>
    (shape.mirror ? [false, true] : [false]).flatMap((mirror): readonly Placement[] => {
      const turn = turnTo(shape, anticlockwise(mirror ? mirrorPolygon(target) : target), within);
      if (turn === null) {
        return [];
      }
      const { blank, shape: index, outline } = shape;
      const at = { blank, shape: index, turn, mirror, x: 0, y: 0 };
      const [x, y] = subtract(polygonBox(target).min, polygonBox(placedPolygon(outline, at)).min);
      return [{ ...at, x, y }];
    }),
  );
}

/** The allowed turn that lays a shape onto an anticlockwise outline; null where there is none. */
function turnTo({ outline, turns }: ShapeOn, target: Polygon, within: number): number | null {
  const own = anticlockwise(outline);
  if (own.length !== target.length) {
    return null;
  }
  for (const [i] of target.entries()) {
    const degrees = edgeAngle(target, i) - edgeAngle(own, 0);
    const turn = allowedTurn(turns, degrees, outline);
    if (turn !== null && sameOutline(turnPolygon(own, turn), target, within)) {
      return turn;
    }
  }
  return null;
}

/** The turn as the set has it, if strips may be cut at it: of a range its middle, its ends, and what lays an edge square. */
function allowedTurn(turns: Turns, degrees: number, outline: Polygon): number | null {
  const whole = ((degrees % 360) + 360) % 360;
  const laysAnEdge = () => outline.some((_, i) => between(edgeAngle(outline, i) + whole, 0, 90) <= SAME);
  if (turns === 'any') {
    const round = (Math.round(whole / 15) * 15) % 360;
    return between(whole, round, 360) <= SAME ? round : laysAnEdge() ? whole : null;
  }
  for (const range of turns) {
    const mark = marksOf(range).find((each) => between(each, whole, 360) <= SAME);
    if (mark !== undefined) {
      return mark;
    }
    if (typeof range !== 'number' && between(range.centre, whole, 360) <= range.within && laysAnEdge()) {
      return whole;
    }
  }
  return null;
}

const marksOf = (range: TurnRange): readonly number[] =>
  typeof range === 'number' ? [range] : [range.centre, range.centre - range.within, range.centre + range.within];

function between(a: number, b: number, period: number): number {
  const apart = (((a - b) % period) + period) % period;
  return Math.min(apart, period - apart);
}

function edgeAngle(polygon: Polygon, i: number): number {
  const from = polygon[i]!;
  const to = polygon[(i + 1) % polygon.length]!;
  return (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
}
